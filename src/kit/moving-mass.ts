/** What really moves with a mount's arm, measured on the solids; the leaf was solved with an estimate. */

import type { Layout } from '../layout/layout.js';
import { centreOfRotation } from '../layout/leaf-shape.js';
import { drawArm } from '../parts/tilt-mount.js';
import type { MeasuringKernel } from '../solid/kernel.js';
import { meshCentroid, meshVolume } from '../solid/mesh-measures.js';
import { TONNES_PER_GRAM } from '../units.js';
import type { Kit } from './types.js';

/** Mass of arm, barrel, collar, screws and nuts [t], and the distance of their centre from the leaf's [mm], at level. */
export function movingMass(
  { spec, mount }: Layout,
  { kit, kernel }: { readonly kit: Kit; readonly kernel: MeasuringKernel },
): { readonly movingMass: number; readonly massLever: number } {
  const arm = kernel.mesh(drawArm(kernel, spec, { mount, flex: mount.leaf.bias }));
  const armCentre = meshCentroid(arm);
  const density = spec.material.plastic.densityGcm3.value / 1000;
  const of = (id: string | undefined) => {
    const part = id === undefined ? undefined : kit.parts.get(id);
    return part ? (kernel.volume(part.solid) * part.densityGcm3) / 1000 : 0;
  };
  const partOf = (suffix: string) => kit.placements.find(({ name }) => name.endsWith(suffix))?.part;
  const barrelMiddle = mount.barrel.front - (mount.sleeve?.body ?? mount.barrel).length / 2;
  const collarMiddle = mount.sleeve
    ? mount.barrel.front - mount.barrel.length / 2
    : mount.collar.front - mount.collar.length / 2;
  const masses: readonly (readonly [grams: number, u: number, w: number])[] = [
    [meshVolume(arm) * density, armCentre[0], armCentre[1]],
    [of(partOf('-barrel')), barrelMiddle, mount.axis],
    [of(partOf('-collar')), collarMiddle, mount.axis],
    [of(partOf('-clamp-screw')) + of(partOf('-clamp-nut')), mount.clamp.at, mount.seat.nutFloor],
    [of(partOf('-adjust-screw')) + of(partOf('-adjust-nut')), mount.adjust.at, mount.arm.neckTop],
  ];
  const total = masses.reduce((sum, [g]) => sum + g, 0);
  const centre = [1, 2].map((i) => masses.reduce((sum, m) => sum + m[0] * m[i]!, 0) / total);
  const pivot = centreOfRotation(mount.leaf);
  const lever = Math.hypot(centre[0]! - mount.origin[0] - pivot[0], centre[1]! - mount.origin[1] - pivot[1]);
  return { movingMass: total * TONNES_PER_GRAM, massLever: lever };
}

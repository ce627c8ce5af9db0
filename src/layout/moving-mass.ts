/** What moves with a mount's arm, estimated from the layout's rectangles: on the heavy side, as nut pockets are not taken off. */
import { threads } from '../components/index.js';
import type { Spec } from '../spec/spec.js';
import { TONNES_PER_GRAM } from '../units.js';
import { leafEnd } from './leaf-place.js';
import { centreOfRotation } from './leaf-shape.js';
import type { MountLayout } from './mount.js';
import { collarRadius } from './mount-room.js';

type Weight = readonly [grams: number, u: number, w: number];

const STEEL = 7.85e-3;

/** @returns mass [t] and the distance of its centre from the leaf's [mm], at level */
export function estimateMass(
  spec: Spec,
  mount: MountLayout,
): { readonly movingMass: number; readonly massLever: number } {
  const { arm, seat, base, barrel, collar, width, axis, length } = mount;
  const density = spec.material.plastic.densityGcm3.value / 1000;
  const block = (u0: number, u1: number, w0: number, w1: number): Weight => [
    Math.abs((u1 - u0) * (w1 - w0)) * width * density,
    (u0 + u1) / 2,
    (w0 + w1) / 2,
  ];
  const minus = ([g, u, w]: Weight): Weight => [-g, u, w];
  const bore = Math.PI * barrel.radius ** 2 * seat.length * density;
  const { sleeve } = mount;
  const body = sleeve?.body ?? barrel;
  const tube = sleeve ? Math.PI * (barrel.radius ** 2 - sleeve.rearBore ** 2) * barrel.length * density : 0;
  const ring = Math.PI * (collarRadius(spec) ** 2 - barrel.radius ** 2) * collar.length * density;
  const screw = (size: keyof typeof threads, long: number) =>
    (Math.PI / 4) * threads[size].diameter.value ** 2 * long * STEEL +
    threads[size].nutFlats.value ** 2 * 0.6 * threads[size].nutHeight.value * STEEL;
  const head =
    (Math.PI / 4) * threads[spec.screws.adjust].capHead.value ** 2 * threads[spec.screws.adjust].capHeight.value;
  const kind = leafEnd(mount.leaf);
  const low = kind === 'rear' ? arm.under : arm.footBottom;
  const weights: readonly Weight[] = [
    block(-length, base.rearFrom, arm.rearBottom, arm.neckTop),
    block(base.rearFrom, 0, low, arm.neckTop),
    ...(kind === 'front' ? [minus(block(base.rearFrom, arm.free[1], low, Math.min(arm.free[3], arm.under)))] : []),
    block(-seat.length, 0, arm.neckTop, seat.top),
    [-bore, -seat.length / 2, axis],
    [spec.emitters.part.massG.value, barrel.front - body.length / 2, axis],
    [tube, barrel.front - barrel.length / 2, axis],
    [ring, collar.front - collar.length / 2, axis],
    [screw(spec.screws.clamp, mount.clamp.screwLength), mount.clamp.at, seat.nutFloor],
    [screw(spec.screws.adjust, mount.adjust.screwLength) + head * STEEL, mount.adjust.at, arm.neckTop],
  ];
  const total = weights.reduce((sum, [g]) => sum + g, 0);
  const [u, w] = [1, 2].map((i) => weights.reduce((sum, one) => sum + one[0] * one[i]!, 0) / total) as [number, number];
  const pivot = centreOfRotation(mount.leaf);
  return {
    movingMass: total * TONNES_PER_GRAM,
    massLever: Math.hypot(u - mount.origin[0] - pivot[0], w - mount.origin[1] - pivot[1]),
  };
}

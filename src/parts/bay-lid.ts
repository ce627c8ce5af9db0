/**
 * Lid of a tray, and door of a battery's: a plate with holes for what is seen and touched through it. Tray coordinates with z = 0
 * at its underside; the file holds it turned over (x, −y, −z): it prints on its top.
 */
import { BATTERY } from '../layout/bay/footprint.js';
import type { Unit } from '../layout/bay/types.js';
import type { LayoutWithBay } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { asHoles, circle, rectangle, together } from '../solid/outlines.js';
import { atPlaces, box, prism } from '../solid/shapes.js';
import { sunkHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;
/** Between a lid and the rail's cover beside it, at least. */
const BESIDE = 0.15;
/** Bars under a door that hold the battery down, and what it may swell by. */
const PAD = { breadth: 4, air: 0.8, inset: 4 } as const;

/** From the lid's file to its tray. */
export const lidMatrix = ({ bay }: LayoutWithBay): Matrix =>
  frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, bay.height + bay.lid]);

export function drawBayLid(k: Kernel, layout: LayoutWithBay, unit: Unit): Solid {
  const { bay, spec } = layout;
  const [x, y] = unit.size;
  const holes = unit.lid.map((hole) =>
    asHoles(hole.kind === 'round' ? circle(hole.at, hole.radius, { fit: 'hole' }) : rectangle(...hole.rect)),
  );
  const beside = Math.max(BESIDE, spec.printer.machine.gapTolerance.value / 2);
  const plate = prism(k, together(rectangle(0, beside, x, y), ...holes), { axis: 'z', from: 0, to: bay.lid });
  const pads = unit.modules
    .filter(({ module }) => module.part.cell)
    .flatMap(({ outline: [x0, y0, x1, y1], z, module }) => {
      const low = z + module.part.thickness.value + PAD.air - bay.height;
      if (low > -1) return [];
      const [a, b] = [x0 + BATTERY.rib + PAD.inset, x1 - BATTERY.rib - PAD.inset - PAD.breadth];
      return [a, b].map((at) => box(k, [at, y0 + PAD.inset, low], [at + PAD.breadth, y1 - PAD.inset, INTO]));
    });
  const screw = sunkHole(k, spec, { at: [0, 0, bay.lid], way: '-z', depth: bay.lid + OVER });
  const solid = k.subtract(pads.length > 0 ? k.union([plate, ...pads]) : plate, [
    ...atPlaces(
      k,
      screw,
      unit.bosses.map(([bx, by]) => [bx, by, 0]),
    ),
  ]);
  return k.move(solid, frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, bay.lid]));
}

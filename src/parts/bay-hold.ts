/** What a rail has for the bay that hangs on it: bosses for its screws inside the outer wall, and a notch for wires in that wall's top. */
import { JOINT, NOTCH } from '../layout/bay/sizes.js';
import type { Layout } from '../layout/layout.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';
import { atPlaces, box } from '../solid/shapes.js';
import { pilotHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;

export function bayHold(
  k: Kernel,
  { bay, frame, spec }: Layout,
  segment: RailSegment,
): { readonly add: readonly Solid[]; readonly cut: readonly Solid[] } {
  if (bay === null || segment.bay === undefined) return { add: [], cut: [] };
  const { width, wall, floor, height } = frame.section;
  const { bosses, notch } = segment.bay;
  const { engaged, heights } = bay.screw;
  const face = width - engaged - JOINT.behind;
  const half = frame.boss.width / 2;
  const pilot = pilotHole(k, spec, { at: [0, width, 0], way: '-y', depth: engaged + JOINT.tip, up: '+z' });
  return {
    // Wires of the rail pass over them.
    add: bosses.map((x) => box(k, [x - half, face, floor - INTO], [x + half, width - wall + INTO, frame.tab.plateTop])),
    cut: [
      ...atPlaces(
        k,
        pilot,
        bosses.flatMap((x) => heights.map((z): Vec3 => [x, 0, z])),
      ),
      ...(notch === null
        ? []
        : [box(k, [notch[0], width - wall - OVER, height - NOTCH], [notch[1], width + OVER, height + OVER])]),
    ],
  };
}

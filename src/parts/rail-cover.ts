/**
 * Cover of a rail segment: a plate with holes over every screw that is turned in alignment, and over the collar. Rail
 * coordinates, z = 0 at its top, which is down in print: the file holds it turned over (x, −y, −z).
 */

import type { Layout } from '../layout/layout.js';
import { mountOpenings, socketOpenings } from '../layout/openings.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Vec2 } from '../solid/mesh.js';
import { box, prism } from '../solid/shapes.js';
import { sunkHole } from './holes.js';
import { coverScrews } from './rail.js';

const OVER = 1;
export function drawRailCover(k: Kernel, layout: Layout, segment: RailSegment): Solid {
  const { section } = layout.frame;
  const [from, to] = segment.cover;
  const front = segment.kind === 'emitter' ? section.mountFront : section.socketFront;
  const openings = segment.kind === 'emitter' ? mountOpenings({ ...layout, section }) : socketOpenings(layout);
  const plate = box(k, [from, 0, 0], [to, section.width, section.cover]);
  const cuts = [
    ...segment.beams.flatMap((x) =>
      openings.map(({ outline }) =>
        prism(
          k,
          outline.map((points) => points.map(([px, py]): Vec2 => [px + x, py + front])),
          { axis: 'z', from: -OVER, to: section.cover + OVER },
        ),
      ),
    ),
    ...coverScrews(layout, segment).map(([x, y]) =>
      sunkHole(k, layout.spec, {
        at: [x, y, section.cover],
        way: '-z',
        depth: section.cover + OVER,
      }),
    ),
  ];
  return k.move(k.subtract(plate, cuts), frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, section.cover]));
}

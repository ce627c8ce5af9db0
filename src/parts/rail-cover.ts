/**
 * Cover of a rail segment: a plate with holes over every screw that is turned in alignment, and over the collar. Rail
 * coordinates, z = 0 at its top, which is down in print: the file holds it turned over (x, −y, −z).
 */
import type { Layout } from '../layout/layout.js';
import { mountOpenings, socketOpenings } from '../layout/openings.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import { asHoles, rectangle, shift, together } from '../solid/outlines.js';
import { atPlaces, prism } from '../solid/shapes.js';
import { sunkHole } from './holes.js';
import { coverScrews } from './rail.js';

const OVER = 1;

export function drawRailCover(k: Kernel, layout: Layout, segment: RailSegment): Solid {
  const { section } = layout.frame;
  const [from, to] = segment.cover;
  const front = segment.kind === 'emitter' ? section.mountFront : section.socketFront;
  const openings = segment.kind === 'emitter' ? mountOpenings({ ...layout, section }) : socketOpenings(layout);
  // The openings go straight through and lie apart: they are part of the figure, not cuts.
  const holes = segment.beams.flatMap((x) => openings.map(({ outline }) => asHoles(shift(outline, [x, front]))));
  const plate = prism(k, together(rectangle(from, 0, to, section.width), ...holes), {
    axis: 'z',
    from: 0,
    to: section.cover,
  });
  const screw = sunkHole(k, layout.spec, { at: [0, 0, section.cover], way: '-z', depth: section.cover + OVER });
  const screws = atPlaces(
    k,
    screw,
    coverScrews(layout, segment).map(([x, y]) => [x, y, 0]),
  );
  return k.move(k.subtract(plate, screws), frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, section.cover]));
}

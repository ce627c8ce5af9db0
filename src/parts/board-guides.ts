/** Posts on a rail's floor that hold the lower edges of boards: two cheeks with a slot between, closed toward a corner. */
import { GUIDE } from '../layout/boards/sizes.js';
import { side } from '../layout/fits.js';
import type { Layout } from '../layout/layout.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { polygon } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';

const INTO = 0.2;

export function boardGuides(k: Kernel, { spec, frame }: Layout, { kind, guides = [] }: RailSegment): Solid[] {
  const { board, section } = frame;
  if (!board) return [];
  const front = board.front[kind];
  const play = side(spec, 'slide');
  const [inner, outer] = [front - play, front + board.thickness + play];
  const [low, high, floor] = [board.low, board.low + GUIDE.up, section.floor - INTO];
  const [first, last] = [inner - GUIDE.cheek, outer + GUIDE.cheek];
  const slotted = polygon([
    [first, floor],
    [last, floor],
    [last, high],
    [outer, high],
    [outer, low],
    [inner, low],
    [inner, high],
    [first, high],
  ]);
  // The end wall runs into the cheeks: its faces flush with theirs would leave slivers.
  const wall = polygon([
    [first, floor],
    [last, floor],
    [last, high],
    [first, high],
  ]);
  return guides.flatMap(({ from, to, closed }) => [
    prism(k, slotted, { axis: 'x', from, to }),
    ...(closed === 'first' ? [prism(k, wall, { axis: 'x', from: from - GUIDE.cheek, to: from })] : []),
    ...(closed === 'last' ? [prism(k, wall, { axis: 'x', from: to, to: to + GUIDE.cheek })] : []),
  ]);
}

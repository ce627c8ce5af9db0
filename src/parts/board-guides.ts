/** Posts on a rail's floor that hold the lower edges of boards: two cheeks with a slot between, closed beyond a board's end. */
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
  const wall = polygon([
    [first, floor],
    [last, floor],
    [last, high],
    [first, high],
  ]);
  return guides.flatMap(({ from, to, walls: [before, after] }) => [
    prism(k, slotted, { axis: 'x', from, to }),
    ...(before > 0 ? [prism(k, wall, { axis: 'x', from: from - before, to: from })] : []),
    ...(after > 0 ? [prism(k, wall, { axis: 'x', from: to, to: to + after })] : []),
  ]);
}

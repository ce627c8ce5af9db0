import { expect, test } from 'vitest';
import { guidesOf } from '../../src/layout/boards/guides.js';
import type { BoardsLayout } from '../../src/layout/boards/types.js';
import type { RailRun, RailSegment } from '../../src/layout/runs.js';

/** Guides of boards of 40 (and one of 230) that begin where said, on a piece of rail from 100 on. */
function guides(length: number, ...boards: readonly (readonly [from: number, board: 'short' | 'long'])[]) {
  const laid = {
    boards: [
      { id: 'short', length: 40 },
      { id: 'long', length: 230 },
    ],
    places: boards.map(([from, board]) => ({ board, side: 'near', from: from + 100, beams: [] })),
  } as unknown as BoardsLayout;
  const found = guidesOf(laid, {
    run: { side: 'near' } as RailRun,
    segment: { from: 100, length } as RailSegment,
  });
  return found.map(({ from, to, walls }) => [from, to, ...walls]);
}

// A post reaches 3 along its board, its slot 0.3 beyond; walls are 1.6 thick.
test.for([
  {
    what: 'alone: closed at both ends',
    boards: [[10, 'short']],
    want: [
      [9.7, 13, 1.6, 0],
      [47, 50.3, 0, 1.6],
    ],
  },
  {
    what: 'two that all but meet share an open post',
    boards: [
      [10, 'short'],
      [50.6, 'short'],
    ],
    want: [
      [9.7, 13, 1.6, 0],
      [47, 53.6, 0, 0],
      [87.6, 90.9, 0, 1.6],
    ],
  },
  {
    what: 'a gap for one wall: one, as thick as the gap',
    boards: [
      [10, 'short'],
      [54, 'short'],
    ],
    want: [
      [9.7, 13, 1.6, 0],
      [47, 50.3, 0, 3.4],
      [53.7, 57, 0, 0],
      [91, 94.3, 0, 1.6],
    ],
  },
  {
    what: 'a gap for two',
    boards: [
      [10, 'short'],
      [60, 'short'],
    ],
    want: [
      [9.7, 13, 1.6, 0],
      [47, 50.3, 0, 1.6],
      [59.7, 63, 1.6, 0],
      [97, 100.3, 0, 1.6],
    ],
  },
  {
    what: 'at the rail’s ends there is no room for walls',
    boards: [[0.3, 'short']],
    length: 40.6,
    want: [
      [0, 3.3, 0, 0],
      [37.3, 40.6, 0, 0],
    ],
  },
  {
    what: 'a long board is held at thirds',
    boards: [[10, 'long']],
    want: [
      [9.7, 13, 1.6, 0],
      [83.667, 89.667, 0, 0],
      [160.333, 166.333, 0, 0],
      [237, 240.3, 0, 1.6],
    ],
  },
] as const)('$what', ({ boards, want, ...rest }) => {
  expect(guides('length' in rest ? rest.length : 260, ...boards)).toEqual(want);
});

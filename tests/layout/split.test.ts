import { expect, test } from 'vitest';
import { piecesFor, split } from '../../src/layout/split.js';

test.for([
  {
    what: 'a rail as long as a bed of 90.46 less twice 5.1, which is 80.25999… in binary',
    length: 80.26,
    longest: 90.46 - 2 * 5.1,
    pieces: 1,
  },
  { what: 'two halves that fit exactly', length: 160.52, longest: 90.46 - 2 * 5.1, pieces: 2 },
  { what: 'a hundredth more', length: 80.27, longest: 90.46 - 2 * 5.1, pieces: 2 },
  { what: 'ten times ten and a third', length: 103.1, longest: 10.3, pieces: 11 },
])('$what: $pieces', ({ length, longest, pieces }) => {
  expect(piecesFor(length, longest)).toBe(pieces);
  // Cuts allowed at every hundredth of the length.
  const at = Array.from({ length: 99 }, (_, i) => ((i + 1) * length) / 100);
  const seams = split({ length, at, longest, shortest: 1 });
  expect(seams?.length).toBeGreaterThanOrEqual(pieces - 1);
  const ends = [0, ...seams!, length];
  for (const [i, end] of ends.slice(1).entries()) expect(end - ends[i]!).toBeLessThanOrEqual(longest + 1e-9);
});

test('fewest and as even as the places allow', () => {
  // By hand: 100 by at most 55 needs two pieces, cut nearest to 50: at 48; by at most 51 that leaves 52, so three: near 33.3 and 66.7.
  const at = [10, 30, 48, 70, 90];
  expect(split({ length: 100, at, longest: 55, shortest: 5 })).toEqual([48]);
  expect(split({ length: 100, at, longest: 51, shortest: 5 })).toEqual([30, 70]);
  expect(split({ length: 100, at: [48], longest: 51, shortest: 5 })).toBeNull();
});

test('where cuts nearest to even do not fit, others that do are found', () => {
  // By hand: nearest to 33.3 and 66.7 are 30.5 and 72, 41.5 apart; from 36.5 it is 35.5.
  expect(split({ length: 100, at: [30.5, 36.5, 72], longest: 40, shortest: 20 })).toEqual([36.5, 72]);
});

test('a piece between two seams may have to be longer than those at the ends', () => {
  expect(split({ length: 100, at: [35, 65], longest: 40, shortest: 25 })).toEqual([35, 65]);
  expect(split({ length: 100, at: [35, 65], longest: 40, shortest: 25, shortestBetween: 31 })).toBeNull();
  expect(split({ length: 100, at: [33, 35, 65], longest: 40, shortest: 25, shortestBetween: 31 })).toEqual([33, 65]);
});

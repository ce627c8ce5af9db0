import { expect, test } from 'vitest';
import type { Beam, Placement } from '../../src/kit/types.js';
import { wireLengths } from '../../src/kit/wire-lengths.js';
import { translation } from '../../src/solid/matrix.js';

const beam = (
  line: 'column' | 'row',
  from: readonly [number, number, number],
  to: readonly [number, number, number],
): Beam => ({
  name: line,
  line,
  index: 0,
  from,
  to,
  diameter: 2,
  corridor: 3,
  emitter: '',
  receiver: '',
});
const post = (name: string, x: number, y: number): Placement => ({
  name: `${name}-post`,
  part: 'corner-post',
  matrix: translation([x, y, -20]),
  rides: null,
  touches: [],
  overlaps: [],
});

test('wires run along the walls to the nearer corner, with 150 mm over at each end; the longest of a side counts', () => {
  const posts = [
    post('far-left', 0, 100),
    post('far-right', 200, 100),
    post('near-left', 0, 0),
    post('near-right', 200, 0),
  ];
  const beams = [beam('column', [40, 110, 0], [40, -10, 0]), beam('column', [90, 110, 0], [90, -10, 0])];
  // By hand: the second column's emitter is 90 + 10 from the far left corner, its receiver as far from the near left one.
  expect(wireLengths({ beams, placements: posts }).map(({ id, number, length }) => [id, number, length])).toEqual([
    ['wires-emitter-column', 2, 400],
    ['wires-receiver-column', 2, 400],
  ]);
});

test('into a bay: along its own rail straight to the notch, from elsewhere round the corner between; through a cable what that is long', () => {
  const posts = [
    post('far-left', 0, 60),
    post('far-right', 200, 60),
    post('near-left', 0, 0),
    post('near-right', 200, 0),
  ];
  const beams = [beam('column', [40, 70, 0], [40, -10, 0])];
  const lengths = (more: object) => wireLengths({ beams, placements: posts, ...more }).map(({ length }) => length);
  // Notch at 150, 105: emitter 110 along and 35 out; receiver 40 + 10 to the near left corner, then 150 + 105.
  expect(lengths({ wiresEnd: [150, 105, 0] })).toEqual([110 + 35 + 300, 50 + 255 + 300]);
  // Nearer corners 40 + 10 away, and a cable of 500.
  expect(lengths({ bay: { cable: 500 } })).toEqual([850, 850]);
});

test('to boards: a pair for each supply board; for each carrier a pair, and a signal for each of its lines', () => {
  const posts = [
    post('far-left', 0, 100),
    post('far-right', 200, 100),
    post('near-left', 0, 0),
    post('near-right', 200, 0),
  ];
  const beams = [40, 90, 140].map((x) => beam('column', [x, 110, 0], [x, -10, 0]));
  const place = (board: string, own: readonly string[]) => ({ board, placement: board, beams: own });
  const boards = {
    boards: [
      { id: 'supply', kind: 'emitter', holes: [{ use: 'pad', label: 'ground' }] },
      { id: 'carrier', kind: 'receiver', holes: [] },
    ],
    places: [
      place('supply', ['column-0', 'column-1', 'column-2']),
      place('carrier', ['column-0', 'column-1']),
      place('carrier', ['column-2']),
    ],
  } as unknown as NonNullable<Parameters<typeof wireLengths>[0]['boards']>;
  expect(wireLengths({ beams, placements: posts, boards }).map(({ what, number }) => [what, number])).toEqual([
    ['pair of wires to a supply board of columns', 1],
    ['wire to a carrier of columns', 3 + 2 * 2],
  ]);
});

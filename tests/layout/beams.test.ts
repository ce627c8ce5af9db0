/** Where the beams run, for every choice of sides, against positions worked out by hand. */
import { beforeAll, describe, expect, test } from 'vitest';
import { apply, applyDirection } from '../../src/solid/matrix.js';
import { draw, openWorkshop, type Workshop } from '../kit/make.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

// Cells 30, 24, 40 wide; 22 and 28 deep; margin 40: middles at 40, 40 + 27, 40 + 59; 40, 40 + 25. Field 139 × 105.
const COLUMNS = [40, 67, 99];
const ROWS = [40, 65];
const [WIDTH, DEPTH] = [139, 105];
const preset = (columns: string, rows: string) => `grid: { rows: [22, 28], columns: [30, 24, 40], pitch: 30 }
beam: { height: 7 }
emitters: { columns_from: ${columns}, rows_from: ${rows} }
frame: { margin: 40 }
`;

describe.each([
  ['far', 'left'],
  ['far', 'right'],
  ['near', 'left'],
  ['near', 'right'],
] as const)('columns from %s, rows from %s', (columnsFrom, rowsFrom) => {
  const made = () => draw(shop, preset(columnsFrom, rowsFrom));

  test('a column’s beam runs along y at its cell’s middle and the beam’s height, from outside the field across it', () => {
    const beams = made().kit.beams.filter(({ line }) => line === 'column');
    expect(beams.map(({ index }) => index).sort()).toEqual([0, 1, 2]);
    for (const { index, from, to } of beams) {
      for (const end of [from, to]) {
        expect(end[0]).toBeCloseTo(COLUMNS[index]!, 6);
        expect(end[2]).toBeCloseTo(7, 6);
      }
      const [start, stop] = columnsFrom === 'far' ? [from[1], to[1]] : [DEPTH - from[1], DEPTH - to[1]];
      expect(start).toBeGreaterThan(DEPTH);
      expect(stop).toBeLessThan(0);
    }
  });

  test('a row’s beam runs along x at its cell’s middle and the beam’s height, from outside the field across it', () => {
    const beams = made().kit.beams.filter(({ line }) => line === 'row');
    expect(beams.map(({ index }) => index).sort()).toEqual([0, 1]);
    for (const { index, from, to } of beams) {
      for (const end of [from, to]) {
        expect(end[1]).toBeCloseTo(ROWS[index]!, 6);
        expect(end[2]).toBeCloseTo(7, 6);
      }
      const [start, stop] = rowsFrom === 'left' ? [from[0], to[0]] : [WIDTH - from[0], WIDTH - to[0]];
      expect(start).toBeLessThan(0);
      expect(stop).toBeGreaterThan(WIDTH);
    }
  });

  test('barrels look along their beams, apertures lie on them', () => {
    const { kit } = made();
    const matrixOf = (name: string) => kit.placements.find((one) => one.name === name)!.matrix;
    for (const { emitter, from, to } of kit.beams) {
      const barrel = matrixOf(emitter);
      // A barrel's file: front face at the origin, body toward −z.
      expect(
        apply(barrel, [0, 0, 0])
          .map((x, i) => Math.abs(x - from[i]!))
          .every((d) => d < 1e-6),
      ).toBe(true);
      const way = applyDirection(barrel, [0, 0, 1]);
      const length = Math.hypot(...to.map((x, i) => x - from[i]!));
      for (const i of [0, 1, 2]) expect(way[i]).toBeCloseTo((to[i]! - from[i]!) / length, 9);
    }
  });

  test('emitters stand on their sides, receivers across: rails of the kind that was asked for', () => {
    const { runs } = made().layout;
    for (const { side, kind } of runs)
      expect(kind).toBe(side === columnsFrom || side === rowsFrom ? 'emitter' : 'receiver');
    for (const { kind, beams } of runs) expect(beams.length, kind).toBeGreaterThan(0);
  });
});

test('along each rail: far and left count with the grid, near and right against it', () => {
  const { runs } = draw(shop, preset('far', 'left')).layout;
  const at = (side: string) => runs.find((run) => run.side === side)!.beams.map((beam) => [beam.index, beam.at]);
  expect(at('far')).toEqual([
    [0, 40],
    [1, 67],
    [2, 99],
  ]);
  expect(at('near')).toEqual([
    [2, 40],
    [1, 72],
    [0, 99],
  ]);
  expect(at('left')).toEqual([
    [0, 40],
    [1, 65],
  ]);
  expect(at('right')).toEqual([
    [1, 40],
    [0, 65],
  ]);
});

test('labels: the first row is the far one, letters stand over their own crossing', () => {
  const { kit, layout } = draw(
    shop,
    'grid: { rows: 2, columns: 2, pitch: 30, labels: [["", "I"], ["", ""]] }\nmaterial: petg\n',
  );
  const tile = kit.parts.get('deck-tile')!.solid;
  // The file lies face down with y mirrored: letters are cut from z 0 to .6.
  const letters = shop.kernel
    .section(tile, 0.3)
    .map((points) => points.map(([x, y]) => [x + layout.deck.tiles[0]!.x[0], -y + layout.deck.tiles[0]!.y[0]] as const))
    .filter((points) => {
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      const size = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
      // Inside the grid, where no screw holds the deck.
      const inGrid = Math.min(...ys) > layout.grid.rowEdges[0]! && Math.max(...ys) < layout.grid.rowEdges[2]!;
      return size < 8 && inGrid;
    });
  expect(letters).toHaveLength(1);
  const [xs, ys] = [letters[0]!.map(([x]) => x), letters[0]!.map(([, y]) => y)];
  expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(layout.grid.columns[1]!, 3);
  expect((Math.min(...ys) + Math.max(...ys)) / 2).toBeCloseTo(layout.grid.rows[1]!, 3);
});

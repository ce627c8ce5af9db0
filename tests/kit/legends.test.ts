/** Labels as engraved, measured on the deck: every groove and every web between two is at least a printed line wide. */
import { beforeAll, describe, expect, test } from 'vitest';
import { labels } from '../../src/checks/labels.js';
import { writeLegends } from '../../src/kit/legends.js';
import { text } from '../../src/solid/text.js';
import { draw, findingsOf, openWorkshop, shipped, type Workshop } from './make.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

/** Lengths of grooves and webs along y through the middle of the first key, inside its boundary lines. */
function alongFirstKey(preset: string): { readonly grooves: readonly number[]; readonly webs: readonly number[] } {
  return shop.kernel.scope(() => {
    const { kit, layout } = draw(shop, preset);
    const deck = [...kit.parts.values()].find(({ id }) => id.startsWith('deck-tile'))!;
    // It prints face down: .3 up is in the middle of the grooves, .6 deep. Its y is mirrored, its x from its own left.
    const cut = shop.kernel.section(deck.solid, 0.3);
    const tile = layout.deck.tiles[0]!;
    const { grid } = layout;
    const y = -(grid.rows[0]! - tile.y[0]);
    const crossings = cut
      .flatMap((points) =>
        points.flatMap((p, i) => {
          const q = points[(i + 1) % points.length]!;
          return p[1] < y === q[1] < y ? [] : [p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0]) + tile.x[0]];
        }),
      )
      .filter((x) => x > grid.columnEdges[0]! + 0.3 && x < grid.columnEdges[1]! - 0.3)
      .sort((a, b) => a - b);
    const gaps = crossings.slice(1).map((x, i) => x - crossings[i]!);
    // From the first boundary line's edge on: web, groove, web …
    return {
      keep: [],
      value: { webs: gaps.filter((_, i) => i % 2 === 0), grooves: gaps.filter((_, i) => i % 2 === 1) },
    };
  });
}

const LINE = { 'bed-220': 0.45, 'bed-220-fine': 0.28 } as const;

describe.each([
  // Upright strokes alone: I, l, H, N, M and a bar.
  ['IIIIII', 22, 'bed-220', 6],
  ['Illll', 22, 'bed-220', 5],
  ['IIII', 11, 'bed-220-fine', 4],
  ['HH', 11, 'bed-220-fine', null],
  ['MMMM', 22, 'bed-220', null],
] as const)('%s in a cell of %d on %s', (label, pitch, printer, strokes) => {
  const preset = `grid: { rows: 1, columns: 1, pitch: ${pitch}, labels: [[${label}]] }\nprinter: ${printer}\n`;

  test('strokes and webs are at least a line wide', () => {
    const { grooves, webs } = alongFirstKey(preset);
    if (strokes !== null) expect(grooves).toHaveLength(strokes);
    expect(grooves.length).toBeGreaterThan(1);
    expect(Math.min(...grooves)).toBeGreaterThan(LINE[printer] - 0.005);
    expect(Math.min(...webs)).toBeGreaterThan(LINE[printer] - 0.005);
  });
});

test.each(['greenhouse-bench', 'glaze-selector', 'tight-cue-strip', 'foyer-row', 'seed-library'])(
  '%s: no label is too fine for its printer',
  (name) => {
    shop.kernel.scope(() => {
      const { kit, layout } = draw(shop, shipped(name));
      expect(kit.legends!.length).toBeGreaterThan(0);
      expect(labels.run({ kit, spec: layout.spec })).toEqual([]);
      return { keep: [], value: null };
    });
  },
  60_000,
);

test('a label too long for its cell is named with its place, and left out', () => {
  const preset = (label: string) => `grid: { rows: 2, columns: 2, pitch: 22, labels: [["", "${label}"], ["", ""]] }\n`;
  const [found, ...more] = findingsOf(shop, preset('a word of twenty letters')).filter(({ code }) =>
    code.startsWith('label/'),
  );
  expect(more).toEqual([]);
  // The first row of labels is the far one: row 1 of 0 and 1.
  expect(found).toMatchObject({
    code: 'label/too-fine',
    severity: 'warning',
    subject: 'label of row 1, column 1',
    limit: 0.45,
  });
  expect(found!.measured).toBeLessThan(0.45);
  expect(found!.message).toContain('"a word of twenty letters" at row 1, column 1');
  expect(found!.remedies[0]).toBe('grid.labels');
  shop.kernel.scope(() => {
    const volume = (text: string) => shop.kernel.volume(draw(shop, text).kit.parts.get('deck-tile')!.solid);
    expect(volume(preset('a word of twenty letters'))).toBeCloseTo(volume(preset('')), 3);
    expect(volume(preset('word'))).toBeLessThan(volume(preset('')) - 1);
    return { keep: [], value: null };
  });
}, 60_000);

test('words with and without tails stand on one line: their letters’ feet are at one height', () => {
  const { layout } = draw(shop, 'grid: { rows: 1, columns: 4, pitch: 30, labels: [[moss, plug, HALT, gap]] }\n');
  const written = writeLegends(layout, (line, options) => text(shop.profiles, line, options));
  const [moss, plug, halt, gap] = written.map(({ outlines }) => Math.min(...outlines.flat().map(([, y]) => y)));
  expect(written.map(({ stroke }) => stroke)).toEqual(Array.from({ length: 4 }, () => written[0]!.stroke));
  // Round feet reach a hundredth lower or higher than straight ones; tails end below both.
  expect(moss).toBeCloseTo(halt!, 1);
  expect(plug).toBeCloseTo(gap!, 1);
  expect(moss! - plug!).toBeGreaterThan(1);
});

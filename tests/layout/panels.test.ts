import { describe, expect, test } from 'vitest';
import { packPanel } from '../../src/layout/boards/pack.js';
import { solvePanels } from '../../src/layout/boards/panels.js';
import { longestOn, pieces } from '../../src/layout/boards/pieces.js';
import { fits, type Kind, leastPanels } from './panels-brute-force.js';

const kinds = (...rows: readonly (readonly [length: number, quantity: number])[]): Kind[] =>
  rows.map(([length, quantity], i) => ({ id: 'abcdefghij'[i]!, length, height: 22.4, quantity }));
const told = (all: readonly Kind[], limit: { readonly x: number; readonly y: number }) => {
  const { designs } = solvePanels(all, limit)!;
  return [designs.length, designs.reduce((sum, { order }) => sum + order, 0)];
};

describe('as few designs, then as few panels, as trying everything finds', () => {
  // The first six need a board that lies on two designs.
  const rows: readonly (readonly [readonly (readonly [number, number])[], number, number])[] = [
    [
      [
        [71, 3],
        [62, 3],
        [77, 1],
      ],
      96,
      64,
    ],
    [
      [
        [58, 3],
        [30, 1],
        [53, 3],
        [64, 1],
      ],
      67,
      75,
    ],
    [
      [
        [27, 1],
        [46, 3],
        [73, 1],
        [59, 2],
      ],
      81,
      51,
    ],
    [
      [
        [49, 1],
        [32, 1],
        [70, 3],
        [60, 2],
      ],
      91,
      55,
    ],
    [
      [
        [68, 2],
        [40, 1],
        [51, 3],
      ],
      75,
      49,
    ],
    [
      [
        [43, 2],
        [41, 3],
        [84, 2],
        [45, 3],
      ],
      92,
      63,
    ],
    [
      [
        [81.2, 1],
        [59.2, 2],
      ],
      100,
      100,
    ],
    [
      [
        [30, 3],
        [47, 2],
      ],
      79,
      46.8,
    ],
    // Upright beside lying ones: rows alone would need another panel.
    [
      [
        [60, 2],
        [46.8, 1],
      ],
      84.4,
      46.8,
    ],
    [[[90, 1]], 22.4, 90],
    [
      [
        [50, 3],
        [40, 3],
      ],
      92,
      22.4,
    ],
    [
      [
        [50, 2],
        [49, 2],
        [48, 1],
      ],
      74,
      50,
    ],
  ];
  test.for(rows)('%j on %d × %d', ([lengths, x, y]) => {
    const all = kinds(...lengths);
    expect(told(all, { x, y })).toEqual(leastPanels(all, { x, y }));
  });

  test('by hand: eighteen strips of two kinds, two of each on a panel, five panels of one design', () => {
    const set = solvePanels(kinds([75.2, 9], [75.3, 9]), { x: 100, y: 100 })!;
    expect(set.designs.map(({ order, spots }) => [order, spots.map(({ id }) => id).join('')])).toEqual([[5, 'bbaa']]);
    expect(set.spare).toBe(2);
    // 1 − 9 · (75.2 + 75.3) · 22.4 / (5 · 75.3 · 95.6)
    expect(set.waste).toBeCloseTo(1 - (9 * 150.5 * 22.4) / (5 * 75.3 * 95.6), 9);
  });

  test('every board lies within the limit, apart by the cut, and often enough', () => {
    const all = kinds([81.2, 2], [59.2, 3], [33, 5], [72, 1], [48, 2], [47, 2], [46, 1], [90, 1], [12, 4]);
    const limit = { x: 100, y: 80 };
    const { designs } = solvePanels(all, limit)!;
    for (const { id, quantity } of all) {
      const made = designs.reduce((sum, { order, spots }) => sum + order * spots.filter((s) => s.id === id).length, 0);
      expect(made, id).toBeGreaterThanOrEqual(quantity);
    }
    for (const { spots, width, height } of designs) {
      const boxes = spots.map(({ id, x, y, turned }) => {
        const { length, height: up } = all.find((kind) => kind.id === id)!;
        return { x, y, right: x + (turned ? up : length), top: y + (turned ? length : up) };
      });
      expect(Math.max(...boxes.map(({ right }) => right))).toBeCloseTo(width, 6);
      expect(Math.max(...boxes.map(({ top }) => top))).toBeCloseTo(height, 6);
      expect([width <= limit.x, height <= limit.y]).toEqual([true, true]);
      for (const [i, a] of boxes.entries())
        for (const b of boxes.slice(i + 1)) {
          const gap = Math.max(b.x - a.right, a.x - b.right, b.y - a.top, a.y - b.top);
          expect(gap).toBeGreaterThanOrEqual(2 - 1e-6);
        }
    }
  });

  test('a board larger than the limit has no panel', () => {
    expect(solvePanels(kinds([40, 1], [101, 1]), { x: 100, y: 100 })).toBeNull();
  });
});

test('the brute force itself, by hand: what fills a panel to the hair fits, a hair more does not', () => {
  const strips = (count: number) => Array.from({ length: count }, () => ({ w: 50, h: 22.4 }));
  expect([fits(strips(2), { x: 50, y: 46.8 }), fits(strips(2), { x: 50, y: 46.7 })]).toEqual([true, false]);
  expect([fits(strips(2), { x: 46.8, y: 50 }), fits(strips(3), { x: 46.8, y: 50 })]).toEqual([true, false]);
});

test('strips packed: a panel of 100 takes four rows of 22.4 with cuts of 2, not five', () => {
  const strip = { id: 'a', length: 90, height: 22.4 };
  expect(packPanel([strip, strip, strip, strip], { x: 100, y: 95.6 })?.map(({ y }) => y)).toEqual([
    0, 24.4, 48.8, 73.19999999999999,
  ]);
  expect(packPanel([strip, strip, strip, strip], { x: 90, y: 95.5 })).toBeNull();
});

describe('beams shared among boards', () => {
  const even = Array.from({ length: 12 }, (_, i) => 18 + 20 * i);
  test.for([
    {
      what: 'twelve at 20 on 100: 79.4 holds four',
      beams: even,
      end: 9.7,
      longest: 100,
      want: [
        [0, 3],
        [4, 7],
        [8, 11],
      ],
    },
    { what: 'to the hair', beams: even.slice(0, 4), end: 9.7, longest: 79.4, want: [[0, 3]] },
    {
      what: 'a hair too long: evenly in two',
      beams: even.slice(0, 4),
      end: 9.7,
      longest: 79.3,
      want: [
        [0, 1],
        [2, 3],
      ],
    },
    // 0–10–20–80: even halves would be 20 and 60 long; three and one keep to 30.
    {
      what: 'uneven where even does not fit',
      beams: [0, 10, 20, 80],
      end: 5,
      longest: 30,
      want: [
        [0, 2],
        [3, 3],
      ],
    },
  ])('$what', ({ beams, end, longest, want }) => expect(pieces({ beams, end, longest })).toEqual(want));

  test('the longest board lies along a panel’s longer side as long as its height goes across', () => {
    expect([30, 40, 40.1, 60, 60.1].map((height) => longestOn({ x: 60, y: 40 }, height))).toEqual([60, 60, 40, 40, 0]);
  });
});

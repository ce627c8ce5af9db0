/** Narrow places of a section, and sections through a window, against figures by hand. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { rectangle, signedArea } from '../../src/solid/outlines.js';
import { box, cylinder } from '../../src/solid/shapes.js';

let k: MeasuringKernel;
beforeAll(async () => {
  k = await loadManifoldKernel();
});

const LIMITS = { wall: 0.8, gap: 0.4, shallow: 0.45 };

describe('narrow', () => {
  test('a square has none, and its area is told', () => {
    expect(k.narrow(box(k, [0, 0, 0], [7, 3, 2]), 1, LIMITS)).toEqual({ area: 21, walls: [], gaps: [] });
  });

  test('a wall between two blocks, by its thickness and its box', () => {
    const solid = k.union([
      box(k, [0, 0, 0], [5, 5, 2]),
      box(k, [4, 2, 0], [11, 2.6, 2]),
      box(k, [10, 0, 0], [15, 5, 2]),
    ]);
    const { walls, gaps } = k.narrow(solid, 1, LIMITS);
    expect(gaps).toEqual([]);
    expect(walls).toHaveLength(1);
    expect(walls[0]!.width).toBeCloseTo(0.6, 2);
    expect([walls[0]!.box.min, walls[0]!.box.max].flat().map((x) => Math.round(x * 100) / 100)).toEqual([
      5, 2, 10, 2.6,
    ]);
  });

  test('a hole is closed, a slit that runs out is not, and a shallow notch is none', () => {
    const block = box(k, [0, 0, 0], [10, 10, 2]);
    const hole = cylinder(k, { from: [5, 5, -1], to: [5, 5, 3], radius: 0.15, fit: 'hole' });
    const slit = (deep: number) => box(k, [-1, 2, -1], [deep, 2.3, 3]);
    const gaps = (cut: typeof block) => k.narrow(k.subtract(block, [cut]), 1, LIMITS).gaps;
    expect(gaps(hole)).toMatchObject([{ closed: true }]);
    expect(gaps(hole)[0]!.width).toBeCloseTo(0.3, 1);
    expect(gaps(slit(4))).toMatchObject([{ closed: false }]);
    expect(gaps(slit(4))[0]!.width).toBeCloseTo(0.3, 2);
    expect(gaps(slit(0.4))).toEqual([]);
  });

  test('refuses widths and heights that are no numbers', () => {
    const block = box(k, [0, 0, 0], [1, 1, 1]);
    expect(() => k.narrow(block, Number.NaN, LIMITS)).toThrow(RangeError);
    expect(() => k.narrow(block, 0.5, { ...LIMITS, wall: 0 })).toThrow('wall');
  });
});

test('a section through a window is what lies within it', () => {
  const solid = k.subtract(box(k, [0, 0, 0], [10, 10, 2]), [box(k, [2, 2, -1], [4, 4, 3])]);
  const area = (window?: ReturnType<typeof rectangle>) =>
    k.section(solid, 1, window).reduce((sum, outline) => sum + signedArea(outline), 0);
  expect(area()).toBeCloseTo(96, 6);
  expect(area(rectangle(0, 0, 3, 3))).toBeCloseTo(8, 6);
  expect(area(rectangle(20, 20, 30, 30))).toBe(0);
  expect(() => k.section(solid, 1, [[[0, 0]]])).toThrow('window');
});

/** Walls, gaps and holes of known width, on horizontal sections. */
import { beforeAll, describe, expect, test } from 'vitest';
import { walls } from '../../src/checks/printability/walls.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { rotation } from '../../src/solid/matrix.js';
import { polygon } from '../../src/solid/outlines.js';
import { box, cylinder, prism } from '../../src/solid/shapes.js';
import { ask } from './printability.js';

let k: MeasuringKernel;
beforeAll(async () => {
  k = await loadManifoldKernel();
});

const found = (solid: Solid, figures = {}) => ask(walls, k, solid, figures);

/** Two lines of .4215 in layers of .2 are .4215 + .4215 − .2 (1 − π/4) = .8001 thick (by hand). */
const EIGHT_TENTHS = { lineWidth: 0.4215 };
/** A slab with a wall on it: thick, long, high. */
const wall = (thickness: number, height = 10) =>
  k.union([box(k, [0, 0, 0], [30, 20, 3]), box(k, [3, 8, 2], [27, 8 + thickness, 3 + height])]);

test('a block passes, and so does a plate thinner than relief', () => {
  expect(found(box(k, [0, 0, 0], [20, 10, 8]))).toEqual([]);
  expect(found(box(k, [0, 0, 0], [20, 10, 0.8]))).toEqual([]);
});

describe('walls', () => {
  test('of .79 is too thin where two lines are .8, of .81 is not', () => {
    const [one, ...more] = found(wall(0.79), EIGHT_TENTHS);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/thin-wall', severity: 'warning', subject: 'block', limit: 0.8 });
    expect(one!.measured).toBeCloseTo(0.79, 2);
    expect(one!.message).toMatch(/at \(15\.0, 8\.4, \d/);
    expect(found(wall(0.81), EIGHT_TENTHS)).toEqual([]);
  });

  test('of less than one line is left out: an error', () => {
    const [one, ...more] = found(wall(0.4));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/thin-wall', severity: 'error' });
    expect(one!.measured).toBeCloseTo(0.4, 2);
  });

  test('is found at any angle, and with thinner lines it prints', () => {
    const turned = k.move(wall(0.6), rotation('z', 0.4));
    expect(found(turned)).toMatchObject([{ code: 'print/thin-wall' }]);
    expect(found(turned)[0]!.measured).toBeCloseTo(0.6, 2);
    expect(found(turned, { lineWidth: 0.28, layer: 0.12 })).toEqual([]);
  });

  test('between two holes is a wall, too', () => {
    const pair = (apart: number) =>
      k.subtract(box(k, [0, 0, 0], [20, 10, 6]), [
        box(k, [4, 2, -1], [9, 8, 7]),
        box(k, [9 + apart, 2, -1], [15, 8, 7]),
      ]);
    expect(found(pair(0.7))).toMatchObject([{ code: 'print/thin-wall' }]);
    expect(found(pair(0.9))).toEqual([]);
  });

  test('lower than a millimetre it is relief', () => {
    expect(found(wall(0.5, 0.6))).toEqual([]);
    expect(found(wall(0.5, 2))).toMatchObject([{ code: 'print/thin-wall' }]);
  });

  test('a tooth that stands out by less than a line is none, a fin is', () => {
    const tooth = (out: number) => k.union([box(k, [0, 0, 0], [10, 10, 10]), box(k, [9, 4, 0], [10 + out, 4.5, 10])]);
    expect(found(tooth(0.4))).toEqual([]);
    expect(found(tooth(3))).toMatchObject([{ code: 'print/thin-wall' }]);
  });

  test('corners are not walls: a wedge of 40°', () => {
    const wedge = polygon([
      [0, 0],
      [20, 0],
      [20, 20 * Math.tan((40 * Math.PI) / 180)],
    ]);
    expect(found(prism(k, wedge, { axis: 'z', from: 0, to: 6 }))).toEqual([]);
  });
});

describe('gaps', () => {
  const split = (gap: number) =>
    k.union([box(k, [0, 0, 0], [20, 20, 3]), box(k, [0, 0, 2], [20, 9, 12]), box(k, [0, 9 + gap, 2], [20, 20, 12])]);

  test('of .15 may close where gaps are off by .2, of .25 stays open', () => {
    const [one, ...more] = found(split(0.15));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/small-gap', severity: 'error', limit: 0.2 });
    expect(one!.measured).toBeCloseTo(0.15, 2);
    expect(found(split(0.25))).toEqual([]);
    expect(found(split(0.25), { gapTolerance: 0.3 })).toMatchObject([{ code: 'print/small-gap' }]);
  });
});

describe('holes', () => {
  const bored = (diameter: number) =>
    k.subtract(box(k, [0, 0, 0], [10, 10, 6]), [
      cylinder(k, { from: [4, 5, -1], to: [4, 5, 7], radius: diameter / 2, fit: 'hole' }),
    ]);

  test('of .3 closes where holes close by .2 and may be off by .2, of .6 does not', () => {
    const [one, ...more] = found(bored(0.3));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/small-hole', severity: 'error' });
    expect(one!.limit).toBeCloseTo(0.4, 9);
    expect(one!.measured).toBeCloseTo(0.3, 1);
    expect(one!.message).toContain('at (4.0, 5.0, ');
    expect(found(bored(0.6))).toEqual([]);
  });

  test('a dimple no deeper than relief is left alone', () => {
    const dimple = k.subtract(box(k, [0, 0, 0], [10, 10, 6]), [
      cylinder(k, { from: [4, 5, 5.4], to: [4, 5, 7], radius: 0.15, fit: 'hole' }),
    ]);
    expect(found(dimple)).toEqual([]);
  });
});

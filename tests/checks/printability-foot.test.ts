/** What stays on the bed, and how a part lies, on solids worked out by hand. */
import { beforeAll, describe, expect, test } from 'vitest';
import { firstLayer } from '../../src/checks/printability/first-layer.js';
import { orientation } from '../../src/checks/printability/orientation.js';
import type { Part } from '../../src/kit/types.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { multiply, rotation, translation } from '../../src/solid/matrix.js';
import type { Profiles } from '../../src/solid/profiles.js';
import { box, cone, cylinder } from '../../src/solid/shapes.js';
import { draw, shipped } from '../kit/make.js';
import { ask } from './printability.js';
import { part } from './sound-kit.js';

let k: MeasuringKernel;
let profiles: Profiles;
beforeAll(async () => {
  ({ kernel: k, profiles } = await loadManifold());
});

describe('first layer', () => {
  const found = (solid: Solid, figures = {}) => ask(firstLayer, k, solid, figures);

  test('a block stays where it is', () => expect(found(box(k, [0, 0, 0], [20, 10, 8]))).toEqual([]));

  test('a tip touches the bed with nothing, a small foot with little', () => {
    const tip = cone(k, { from: [0, 0, 0], to: [0, 0, 5], radii: [0, 4], fit: 'pin' });
    expect(found(tip).find(({ code }) => code === 'print/first-layer')).toMatchObject({
      severity: 'error',
      measured: 0,
    });
    // By hand: π · 1.5² = 7.07 mm², under 10.
    const small = cone(k, { from: [0, 0, 0], to: [0, 0, 5], radii: [1.5, 4], fit: 'pin' });
    const [one, ...more] = found(small);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/first-layer', severity: 'warning', limit: 10, unit: 'mm²' });
    expect(one!.measured).toBeCloseTo(7.07, 1);
  });

  test('a post 4 × 6 and 60 high is knocked over, 24 high takes a brim, 18 high stands', () => {
    const post = (height: number) => box(k, [0, 0, 0], [6, 4, height]);
    expect(found(post(60))).toMatchObject([{ code: 'print/tipping', severity: 'error', limit: 10, measured: 15 }]);
    expect(found(post(24))).toMatchObject([{ code: 'print/tipping', severity: 'warning', limit: 5, measured: 6 }]);
    expect(found(post(18))).toEqual([]);
  });

  test('a head that stands out tips its stem', () => {
    // By hand: stem 4 × 10 × 10 = 400 mm³ about x = 2, head 26 × 10 × 4 = 1040 mm³ about x = 13: centre at x = 9.944, 5.944 beside.
    const solid = k.union([box(k, [0, 0, 0], [4, 10, 10]), box(k, [0, 0, 10], [26, 10, 14])]);
    const [one, ...more] = found(solid);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/tipping', severity: 'error', limit: 0, unit: 'mm' });
    expect(one!.measured).toBeCloseTo((400 * 2 + 1040 * 13) / 1440 - 4, 3);
  });

  test('long parts may curl: .15 in 100 is .6 in 200 and .34 in 150', () => {
    const [one, ...more] = found(box(k, [0, 0, 0], [200, 12, 10]));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/warp', severity: 'warning', limit: 0.5 });
    expect(one!.measured).toBeCloseTo(0.6, 2);
    expect(found(box(k, [0, 0, 0], [150, 12, 10]))).toEqual([]);
    expect(found(box(k, [0, 0, 0], [200, 12, 10]), { warpPer100: 0.1 })).toEqual([]);
  });
});

describe('orientation', () => {
  const found = (of: Part | Solid, figures = {}) => ask(orientation, k, of, figures);

  test('a block on its broad face lies best; on edge it would be lower lying down', () => {
    expect(found(box(k, [0, 0, 0], [40, 30, 8]))).toEqual([]);
    const [one, ...more] = found(box(k, [0, 0, 0], [40, 8, 30]));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/orientation', severity: 'warning', measured: 30, limit: 8, unit: 'mm' });
    expect(one!.message).toMatch(/[+-]y upright/);
  });

  test('a mushroom stands better on its cap: the ring under it hangs', () => {
    const cap = (z: number) => cylinder(k, { from: [0, 0, z], to: [0, 0, z + 4], radius: 10, fit: 'pin' });
    const stem = (z: number) => cylinder(k, { from: [0, 0, z], to: [0, 0, z + 11], radius: 5, fit: 'pin' });
    const [one, ...more] = found(k.union([stem(0), cap(10)]));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/orientation', unit: 'mm²', limit: 0 });
    // By hand: π (10² − 5.2²) = 229 mm² reach beyond what a layer of .2 may.
    expect(one!.measured! / (Math.PI * (10 ** 2 - 5.2 ** 2))).toBeCloseTo(1, 1);
    expect(one!.message).toContain('-z upright');
    expect(found(k.union([cap(0), stem(3)]))).toEqual([]);
  });

  test('what would not fit or stand is no better way', () => {
    // Lying down it is lower, and longer than the bed.
    const tall = box(k, [0, 0, 0], [60, 60, 240]);
    expect(found(tall)).toEqual([]);
    expect(found(tall, { bedX: 260, bedY: 260 })).toMatchObject([{ limit: 60 }]);
  });

  test('a mount lies with its layers along the leaf; turned it is refused', () => {
    const { kit } = draw({ kernel: k, profiles }, shipped('greenhouse-bench'));
    const mount = kit.parts.get('tilt-mount')!;
    expect(found(mount)).toEqual([]);
    const { min } = k.box(k.move(mount.solid, rotation('x', Math.PI / 2)));
    const turn = multiply(translation([0, 0, -min[2]]), rotation('x', Math.PI / 2));
    const turned = {
      ...mount,
      solid: k.move(mount.solid, turn),
      posed: {
        lowest: k.move(mount.posed!.lowest, turn),
        level: k.move(mount.posed!.level, turn),
        highest: k.move(mount.posed!.highest, turn),
      },
    };
    const [one, ...more] = found(turned);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/orientation', severity: 'error', subject: 'tilt-mount' });
    expect(one!.message).toContain('y axis upright');
    expect(found(part('stiff', mount.solid))).toEqual([]);
  });
});

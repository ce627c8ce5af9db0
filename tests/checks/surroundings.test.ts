/** What has been measured in one bay of a rail stands for the others only where they are alike. */
import { beforeAll, describe, expect, test } from 'vitest';
import { makeScene, type Standing } from '../../src/checks/scene.js';
import { sameSurroundings, surroundingsIn } from '../../src/checks/surroundings.js';
import { plantTree } from '../../src/checks/tree.js';
import type { Kit } from '../../src/kit/types.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { invertRigid, multiply, rotation, translation } from '../../src/solid/matrix.js';
import { IDENTITY, type Matrix, type Vec3 } from '../../src/solid/mesh.js';
import { box, cylinder } from '../../src/solid/shapes.js';
import { part, placement } from './sound-kit.js';

let k: MeasuringKernel;
beforeAll(async () => {
  k = await loadManifoldKernel();
});

const hole = ([x, y]: readonly [number, number], radius: number) =>
  cylinder(k, { from: [x, y, -1], to: [x, y, 9], radius, fit: 'hole' });

/** A bar of bays 20 wide, each with one hole, the radii as given; a slot at one end so that no two bays are cut alike. */
const bar = (radii: readonly number[]): Solid =>
  k.subtract(box(k, [0, 0, 0], [20 * radii.length, 14, 8]), [
    box(k, [1, 5, 3], [3, 9, 9]),
    ...radii.map((radius, i) => hole([20 * i + 10, 7], radius)),
  ]);

const around = { min: [-5, -5, -5], max: [5, 5, 5] } as const;
const seen = (solid: Solid, place: Matrix) =>
  surroundingsIn(plantTree(k.mesh(solid)), { box: around, place, back: invertRigid(place) });
const reach = Math.hypot(5, 5, 5);

describe('surroundings', () => {
  test('of a plane face: by hand', () => {
    // A block's top at z = 1 over all of the box, 10 × 10: area 100, ∫ z = 100, ∫ x² = 100 · 100 / 12, all with normal z.
    const at = seen(box(k, [-30, -30, -30], [30, 30, 1]), IDENTITY);
    expect(at[0]).toBeCloseTo(100, 4);
    expect(at[3]).toBeCloseTo(100, 4);
    expect(at[4]).toBeCloseTo(833.3333, 3);
    expect([at[10], at[20], at[30]].map((x) => Math.round(x!))).toEqual([0, 0, 100]);
  });

  test('are the same in each bay, however its faces are cut into triangles, and from part to part', () => {
    const four = bar([2, 2, 2, 2]);
    const bay = (i: number) => seen(four, translation([-20 * i - 10, -7, -4]));
    expect(sameSurroundings(bay(1), bay(2), reach)).toBe(true);
    expect(sameSurroundings(bay(1), seen(bar([3, 2]), translation([-30, -7, -4])), reach)).toBe(true);
    expect(sameSurroundings(bay(1), seen(four, multiply(rotation('x', 0.02), translation([-30, -7, -4]))), reach)).toBe(
      false,
    );
  });

  test('tell a hole that is a fiftieth larger, or stands a hundredth aside', () => {
    const bay = (radii: readonly number[], v: Vec3 = [0, 0, 0]) =>
      seen(bar(radii), translation([-30 + v[0], -7 + v[1], -4 + v[2]]));
    expect(sameSurroundings(bay([2, 2, 2]), bay([2, 2.02, 2]), reach)).toBe(false);
    expect(sameSurroundings(bay([2, 2, 2]), bay([2, 2, 2], [0.01, 0, 0]), reach)).toBe(false);
    expect(sameSurroundings(bay([2, 2, 2]), bay([2, 2, 2], [0, 0, 0.01]), reach)).toBe(false);
  });
});

test('a scene measures like bays once, and an unlike one anew', () => {
  const radii = [1.5, 1.5, 1.5, 1.6, 1.5, 1.5, 1.5];
  const plug = cylinder(k, { from: [0, 0, 0], to: [0, 0, 6], radius: 1.9, fit: 'pin' });
  const kit: Kit = {
    parts: new Map([
      ['bar', part('bar', bar(radii))],
      ['plug', part('plug', plug)],
    ]),
    placements: [
      placement('bar', 'bar', IDENTITY),
      ...radii.map((_, i) => placement(`plug-${i}`, 'plug', translation([20 * i + 10, 7, 1]))),
    ],
    beams: [],
    screws: [],
    fits: [],
    assembly: [],
  };
  let measured = 0;
  const counting: MeasuringKernel = {
    ...k,
    overlap(a, b) {
      measured++;
      return k.overlap(a, b);
    },
  };
  const scene = makeScene(kit, counting);
  const [first, ...plugs] = scene.bodies.map(({ at }) => at.level) as [Standing, ...Standing[]];
  const volumes = plugs.map((one) => scene.overlap(first, one));
  // Each plug fills a ring between its hole and its own radius, 6 high: by hand, for smooth circles.
  volumes.forEach((volume, i) => {
    const ring = Math.PI * (1.9 ** 2 - radii[i]! ** 2) * 6;
    expect(Math.abs(volume - ring)).toBeLessThan(0.03 * ring);
  });
  expect(volumes[2]! - volumes[3]!).toBeGreaterThan(5);
  // Two kinds of bay; a bay may lie in two slices of the bar.
  expect(measured).toBeGreaterThanOrEqual(2);
  expect(measured).toBeLessThanOrEqual(4);
});

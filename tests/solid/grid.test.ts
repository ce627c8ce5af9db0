import { beforeAll, describe, expect, test } from 'vitest';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { translation } from '../../src/solid/matrix.js';
import type { Mesh } from '../../src/solid/mesh.js';
import { triangleArea, triangleCount } from '../../src/solid/mesh-measures.js';
import { rectangle } from '../../src/solid/outlines.js';
import { box, prism } from '../../src/solid/shapes.js';

let k: MeasuringKernel;
beforeAll(async () => {
  ({ kernel: k } = await loadManifold());
});

/** How many different places corners have along each axis, rounding to float32 aside. */
function places(solid: Solid) {
  const { positions } = k.mesh(solid);
  const along = (axis: number) => new Set(positions.filter((_, i) => i % 3 === axis)).size;
  // A seam of two planes leaves slivers between them, which float32 would hide.
  expect(least(k.mesh(solid))).toBeGreaterThan(0.05);
  return { x: along(0), y: along(1), z: along(2) };
}

/** Area of the smallest triangle [mm²]. */
const least = (mesh: Mesh) => Math.min(...Array.from({ length: triangleCount(mesh) }, (_, t) => triangleArea(mesh, t)));

describe('what is meant to lie in one plane does, however it was drawn', () => {
  // No decimal fraction here is a binary one: each way of drawing rounds it for itself.
  test.for([33.6, 16.57, 9.3, 0.1])(
    'tops at %d of walls drawn upward and across lie in one plane, and ends meet',
    (top) => {
      const upward = box(k, [0, 0, 0], [10.3, 2.4, top]);
      const across = prism(k, rectangle(10.3, 0, 24.7, top), { axis: 'y', from: 0, to: 2.4 });
      const along = prism(k, rectangle(0, 0, 2.4, top), { axis: 'x', from: 24.7, to: 31.1 });
      const wall = k.union([upward, across, along]);
      expect(places(wall)).toEqual({ x: 4, y: 2, z: 2 });
      expect(k.volume(wall)).toBeCloseTo(31.1 * 2.4 * top, 5);
    },
  );
  test('a block moved to its place stands where one drawn there does', () => {
    const drawn = box(k, [7.1, 0.3, 1.9], [9.1, 2.3, 3.9]);
    const moved = k.move(box(k, [0, 0, 0], [2, 2, 2]), translation([7.1, 0.3, 1.9]));
    expect(k.box(moved).min).toEqual(k.box(drawn).min);
  });
  test('many moves in a row end where their sum does', () => {
    const start = box(k, [0, 0, 0], [2, 3, 4]);
    const moved = Array.from({ length: 50 }).reduce<typeof start>(
      (s) => k.move(s, translation([0.1, -0.2, 0.3])),
      start,
    );
    const { min, max } = k.box(moved);
    [5, -10, 15].forEach((c, i) => {
      expect(min[i]).toBeCloseTo(c, 6);
      expect(max[i]! - min[i]!).toBeCloseTo([2, 3, 4][i]!, 9);
    });
  });
});

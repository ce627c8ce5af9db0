import { beforeAll, describe, expect, test } from 'vitest';
import { drawCapScrew, drawSunkScrew } from '../../src/parts/bought.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { expectSolid } from '../solid/expect-solid.js';

let k: MeasuringKernel;
beforeAll(async () => {
  ({ kernel: k } = await loadManifold());
});

/** A polygon of 36 corners or more within a circle covers at least this much of it: sin(2π/36) / (2π/36). */
const COVERED = 0.9949;

describe('screws as simple solids: one turned figure, no larger than the true one and hardly smaller', () => {
  test('ISO 4762 M3 × 10 (knurled head 5.68 × 3): by hand π 2.84² 3 + π 1.5² 10', () => {
    const screw = drawCapScrew(k, { size: 'M3', length: 10 });
    expectWithin(k.volume(screw), Math.PI * (2.84 ** 2 * 3 + 1.5 ** 2 * 10));
    expectSolid(k.mesh(screw), {
      genus: 0,
      volume: k.volume(screw),
      box: { min: [-2.84, -2.84, -13], max: [2.84, 2.84, 0] },
    });
  });
  test('a countersunk M3 × 8: rim, cone of 90° and shank by hand', () => {
    const screw = drawSunkScrew(k, { size: 'M3', length: 8 });
    const { min, max } = k.box(screw);
    expect(min[2]).toBeCloseTo(-8, 6);
    expect(max[2]).toBeCloseTo(0, 6);
    const rim = max[0];
    // The cone falls from the rim to the shank at 45°; above it a cylinder, below it the shank.
    const outside = [...verticesOf(screw)]
      .filter(([r]) => r > 1e-6)
      .map(([r, z]) => `${r.toFixed(3)} ${(-z).toFixed(3)}`);
    const corners = [...new Set(outside)].map((corner) => corner.split(' ').map(Number) as [number, number]);
    const land = Math.max(...corners.filter(([r]) => r > 1.6).map(([, depth]) => depth));
    const foot = Math.min(...corners.filter(([r]) => r < 1.6).map(([, depth]) => depth));
    expect(foot - land).toBeCloseTo(rim - 1.5, 2);
    const frustum = ((foot - land) / 3) * (rim ** 2 + rim * 1.5 + 1.5 ** 2);
    expectWithin(k.volume(screw), Math.PI * (rim ** 2 * land + frustum + 1.5 ** 2 * (8 - foot)));
  });
});

function expectWithin(volume: number, whole: number) {
  expect(volume).toBeLessThan(whole);
  expect(volume).toBeGreaterThan(COVERED * whole);
}

function* verticesOf(solid: ReturnType<typeof drawCapScrew>): Generator<[radius: number, z: number]> {
  const { positions } = k.mesh(solid);
  for (let i = 0; i < positions.length; i += 3) yield [Math.hypot(positions[i]!, positions[i + 1]!), positions[i + 2]!];
}

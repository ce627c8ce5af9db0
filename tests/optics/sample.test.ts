import { describe, expect, test } from 'vitest';
import { channelChance } from '../../src/optics/chance.js';
import { canAlign, drawChannel, drawsOf, landingOf, leastMiss, sampleChannels } from '../../src/optics/sample.js';
import { rad } from '../../src/units.js';
import { random } from './random.js';

const bench = { distance: 300, exit: [5, 8], range: [rad(-3), rad(3)], tolerance: 0.5, slide: 1.5 } as const;

describe('true rotations', () => {
  test('worked by hand: each error alone', () => {
    const at = (channel: { error?: number; yaw?: number; tilt?: number }, roll = 0, tilt = 0) =>
      landingOf({ error: 0, yaw: 0, tilt: 0, ...channel }, bench)(roll, tilt);
    expect(at({})).toEqual([0, 0]);
    // The beam turns about its exit with the barrel: 300 tan 2°.
    expect(at({ error: rad(2) })[0]).toBeCloseTo(300 * Math.tan(rad(2)), 9);
    expect(at({ error: rad(2) }, Math.PI / 2)[1]).toBeCloseTo(300 * Math.tan(rad(2)), 9);
    // Yaw turns it about the mount's axis: 305 tan 1°; tilt as well, with the exit 8 above: 8 (1/cos − 1) more.
    expect(Math.abs(at({ yaw: rad(1) })[0])).toBeCloseTo(305 * Math.tan(rad(1)), 9);
    expect(at({}, 0, rad(1))[1]).toBeCloseTo(305 * Math.tan(rad(1)) + 8 * (1 / Math.cos(rad(1)) - 1), 9);
  });
});

test('the least miss is no more than a fine search finds, and hardly less', () => {
  const next = random(21);
  const draws = drawsOf(4);
  for (let i = 0; i < 60; i += 1) {
    const channel = drawChannel(draws, { boresight: rad(1), wedge: 0, yaw: rad(0.8), tilt: rad(0.8) });
    const narrow = { ...bench, tolerance: 0, slide: next(), range: [rad(-1), rad(0.5)] as const };
    const lands = landingOf(channel, narrow);
    let fine = Infinity;
    for (let r = 0; r < 720; r += 1)
      for (let t = 0; t <= 150; t += 1) {
        const [x, z] = lands((r * Math.PI) / 360, rad(-1 + t / 100));
        fine = Math.min(fine, Math.hypot(Math.max(0, Math.abs(x) - narrow.slide), z));
      }
    const found = leastMiss(channel, narrow);
    // Half a step of roll and of tilt: 300 · 2.5° · .25° and 305 · .005°.
    expect(found).toBeLessThan(fine + 1e-6);
    expect(fine - found).toBeLessThan(0.09);
  }
});

describe('drawn channels and the integral', () => {
  // Boresight acts from the beam's exit, mount and tilt from the axis, 5 mm further back.
  test.for([
    { slide: 1.5, tilt: 3, distance: 165, tolerance: 0.5 },
    { slide: 0, tilt: 3, distance: 300, tolerance: 1.5 },
    { slide: 1.5, tilt: 1, distance: 165, tolerance: 0.5 },
  ])('slide $slide, ±$tilt°, $distance mm: within four standard errors', ({ slide, tilt, distance, tolerance }) => {
    const lever = distance + 5;
    const drawn = sampleChannels(
      {
        draws: drawsOf(7),
        scatter: { boresight: rad(1), wedge: 0, yaw: rad(0.5), tilt: rad(0.5) },
        bench: { distance, exit: [5, 8], range: [rad(-tilt), rad(tilt)], tolerance, slide },
      },
      60_000,
    );
    const chance = channelChance(
      { kind: 'rayleigh', sigma: (rad(1) * distance) / lever },
      { yaw: rad(0.5), tilt: rad(0.5) },
      { tilt: [rad(-tilt), rad(tilt)], tolerance: tolerance / lever, slide: slide / lever },
    );
    expect(Math.abs(drawn.share - chance)).toBeLessThan(4 * drawn.error);
  });
  test('the same seed draws the same channels, another one others', () => {
    const scatter = { boresight: 1, wedge: 0, yaw: 1, tilt: 1 };
    expect(drawChannel(drawsOf(1), scatter)).toEqual(drawChannel(drawsOf(1), scatter));
    expect(drawChannel(drawsOf(1), scatter)).not.toEqual(drawChannel(drawsOf(2), scatter));
  });
});

test('no channel is given up early that a full search aligns', () => {
  const draws = drawsOf(12);
  let saved = 0;
  for (let i = 0; i < 4000; i += 1) {
    const channel = drawChannel(draws, { boresight: rad(2), wedge: 0, yaw: rad(1.5), tilt: rad(1.5) });
    const narrow = { ...bench, range: [rad(-1), rad(2)] as const };
    const can = leastMiss(channel, narrow) <= narrow.tolerance;
    expect(canAlign(channel, narrow)).toBe(can);
    if (!can) saved += 1;
  }
  expect(saved).toBeGreaterThan(400);
});

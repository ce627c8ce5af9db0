import { describe, expect, test } from 'vitest';
import {
  alignable,
  borePlay,
  effectiveError,
  missBy,
  rollRing,
  screwStep,
  settings,
  worstTilt,
} from '../../src/optics/aim.js';
import { passedShare } from '../../src/optics/aperture.js';
import { deg, rad } from '../../src/units.js';
import { random } from './random.js';

describe('worked by hand: error 2°, mount 0.5° yaw and −0.3° tilt', () => {
  const [first, second] = settings(2, [0.5, -0.3]);
  test('two ways, the smaller tilt first', () => {
    // h = √(4 − .25) = 1.936492; cos φ = −.25; t = .3 ∓ h.
    expect(first!.tilt).toBeCloseTo(-1.636492, 6);
    expect(second!.tilt).toBeCloseTo(2.236492, 6);
    expect(Math.abs(deg(first!.roll))).toBeCloseTo(104.477512, 6);
    expect(second!.roll).toBeCloseTo(-first!.roll, 12);
  });
  test('each brings the beam to the receiver', () => {
    for (const { roll, tilt } of settings(2, [0.5, -0.3])) {
      expect(0.5 + 2 * Math.cos(roll)).toBeCloseTo(0, 12);
      expect(-0.3 + 2 * Math.sin(roll) + tilt).toBeCloseTo(0, 12);
    }
  });
});

test('error 0.3°, yaw 0.5° at 300 mm: a miss of 1.047 mm, which keeps .7856 of the power (R 1.5, w 2.5)', () => {
  expect(settings(0.3, [0.5, 0])).toEqual([]);
  const miss = 300 * rad(missBy(0.3, [0.5, 0]));
  expect(miss).toBeCloseTo(1.047198, 5);
  const kept = passedShare({ radius: 1.5, w: 2.5, offset: miss }) / passedShare({ radius: 1.5, w: 2.5, offset: 0 });
  expect(kept).toBeCloseTo(0.785556, 5);
});

describe('exactly when a channel can be aligned', () => {
  /** Least distance over a fine grid of rolls; tilt and slide are taken at their best for each. */
  function searched(
    error: number,
    [mx, my]: readonly [number, number],
    [t0, t1]: readonly [number, number],
    slide: number,
  ): number {
    let least = Infinity;
    for (let i = 0; i < 20_000; i += 1) {
      const roll = (2 * Math.PI * i) / 20_000;
      const x = mx + error * Math.cos(roll);
      const y = my + error * Math.sin(roll);
      const dy = y + t0 > 0 ? y + t0 : y + t1 < 0 ? -(y + t1) : 0;
      least = Math.min(least, Math.hypot(Math.max(0, Math.abs(x) - slide), dy));
    }
    return least;
  }
  test('2000 cases with tilts of either kind, slide and tolerance agree with a search', () => {
    const next = random(11);
    let [yes, no] = [0, 0];
    for (let i = 0; i < 2000; i += 1) {
      const mount = [3 * (next() - 0.5), 3 * (next() - 0.5)] as const;
      const error = 4 * next();
      const t0 = -2.5 * next() + (i % 3 === 0 ? 1 : 0);
      const tilt = [t0, t0 + 3 * next()] as const;
      const slide = i % 2 === 0 ? 0 : next();
      const tolerance = 0.5 * next();
      const { from, to } = alignable(mount, { tilt, tolerance, slide });
      const found = searched(error, mount, tilt, slide);
      // The grid of rolls is right to ε π/20 000.
      if (Math.abs(found - tolerance) < 1e-3) continue;
      const can = error >= from && error <= to;
      expect(can, JSON.stringify({ mount, error, tilt, slide, tolerance, found })).toBe(found < tolerance);
      if (can) yes += 1;
      else no += 1;
    }
    expect(yes).toBeGreaterThan(200);
    expect(no).toBeGreaterThan(200);
  });
  test('too true a barrel fails too: its error can’t undo the mount’s yaw', () => {
    const reach = { tilt: [-3, 3], tolerance: 0.1 } as const;
    expect(alignable([1, 0], reach).from).toBeCloseTo(0.9, 12);
    expect(alignable([1, 0], { ...reach, slide: 0.95 }).from).toBe(0);
  });
  test('the worst tilt is the greater of the two errors, not their sum', () => {
    expect(worstTilt(2, -0.7)).toBe(2);
    expect(worstTilt(0.3, -0.7)).toBe(0.7);
  });
});

test('decentre turns with the barrel and adds to its error', () => {
  // 1° at 300 mm is 5.236 mm; .5 mm beside it, the same way, across, against.
  const error = rad(1);
  const at = (turn: number) => effectiveError(error, { decentre: 0.5, turn, distance: 300 });
  expect(at(0)).toBeCloseTo(error + 0.5 / 300, 12);
  expect(at(Math.PI)).toBeCloseTo(error - 0.5 / 300, 12);
  expect(at(Math.PI / 2)).toBeCloseTo(Math.hypot(error, 0.5 / 300), 12);
});

test('screw, roll and bore play, worked by hand', () => {
  // M2.5 (ISO 261: .45), arm 20, 300 mm; M3 (.5), arm 15.
  const fine = screwStep({ pitch: 0.45, arm: 20, distance: 300 });
  expect(deg(fine.angle)).toBeCloseTo(1.288938, 6);
  expect(fine.perTurn).toBeCloseTo(6.75, 12);
  expect(fine.perDegree).toBeCloseTo(0.01875, 12);
  const coarse = screwStep({ pitch: 0.5, arm: 15, distance: 300 });
  expect(deg(coarse.angle)).toBeCloseTo(1.909152, 6);
  expect(coarse.perTurn).toBeCloseTo(10, 12);
  expect(coarse.perDegree).toBeCloseTo(0.027778, 6);
  const ring = rollRing(rad(3), 300);
  expect(ring.radius).toBeCloseTo(15.722334, 6);
  expect(ring.perDegree).toBeCloseTo(0.274406, 6);
  // .2 over 10: as large as a usual boresight error, 6 mm at 300.
  expect(deg(borePlay(0.2, 10))).toBeCloseTo(1.145763, 6);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AimError, landing, type Patch, stopCondition, uncovered } from '../../src/optics/safety-cone.js';
import { rad } from '../../src/units.js';

const errors = (yawDeg: number, lowDeg: number, highDeg: number, boresightDeg: number): AimError => ({
  yaw: rad(yawDeg),
  tilt: [rad(lowDeg), rad(highDeg)],
  boresight: rad(boresightDeg),
});
const at300 = { distance: 300, radius: 0 };

/** Where one beam lands: rotate (1, 0, 0) off its body, then tilt, then yaw: matrices, not the closed form. */
function spot(yaw: number, tilt: number, boresight: number, roll: number, distance: number): readonly [number, number] {
  const off = [
    Math.cos(boresight),
    Math.sin(boresight) * Math.cos(roll),
    Math.sin(boresight) * Math.sin(roll),
  ] as const;
  const tilted = [
    off[0] * Math.cos(tilt) - off[2] * Math.sin(tilt),
    off[1],
    off[0] * Math.sin(tilt) + off[2] * Math.cos(tilt),
  ] as const;
  const x = tilted[0] * Math.cos(yaw) - tilted[1] * Math.sin(yaw);
  const y = tilted[0] * Math.sin(yaw) + tilted[1] * Math.cos(yaw);
  return [(distance * y) / x, (distance * tilted[2]) / x];
}

describe('where beams land', () => {
  test.for([
    {
      row: 'boresight alone',
      of: errors(0, 0, 0, 3),
      u: 15.722334,
      bottom: -15.722334,
      top: 15.722334,
      from: 'aim table: ring of 3° at 300',
    },
    {
      row: 'tilt adds upward',
      of: errors(0, -1, 3, 3),
      u: 15.744,
      bottom: -20.978,
      top: 31.531,
      from: 'by hand: 300 tan 6°, 300 tan 4°; across asin(sin 3°/cos 3°)',
    },
    { row: 'yaw alone', of: errors(2, 0, 0, 0), u: 10.476, bottom: 0, top: 0, from: 'by hand: 300 tan 2°' },
  ])('$row; $from', ({ of, u, bottom, top }) => {
    const patch = landing(of, at300)!;
    expect(patch.right).toBeCloseTo(u, 2);
    expect(patch.left).toBe(-patch.right);
    expect(patch.bottom).toBeCloseTo(bottom, 2);
    expect(patch.top).toBeCloseTo(top, 2);
  });

  test('radius and play come on top', () => {
    const patch = landing(errors(0, 0, 0, 3), { distance: 300, radius: 1.2, play: [0.4, 0.7] })!;
    expect(patch.right).toBeCloseTo(15.722334 + 1.2 + 0.4, 5);
    expect(patch.bottom).toBeCloseTo(-(15.722334 + 1.2 + 0.7), 5);
    expect(patch.top).toBeCloseTo(15.722334 + 1.2 + 0.7, 5);
  });

  test('no beam drawn at random lands outside, and the edges are reached', () => {
    const degrees = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
    fc.assert(
      fc.property(
        degrees(0, 12),
        degrees(-14, 10),
        degrees(0, 12),
        degrees(0.1, 10),
        degrees(20, 700),
        (yaw, low, span, boresight, distance) => {
          const of = errors(yaw, low, low + span, boresight);
          const patch = landing(of, { distance, radius: 0 })!;
          const reached = { left: 0, right: 0, bottom: Infinity, top: -Infinity };
          for (const psi of [-1, -0.5, 0, 0.3, 1])
            for (const t of [0, 0.2, 0.5, 1])
              for (let k = 0; k < 180; k += 1) {
                const tilt = of.tilt[0] + t * (of.tilt[1] - of.tilt[0]);
                const [u, v] = spot(psi * of.yaw, tilt, of.boresight, (k * Math.PI) / 90, distance);
                reached.left = Math.min(reached.left, u);
                reached.right = Math.max(reached.right, u);
                reached.bottom = Math.min(reached.bottom, v);
                reached.top = Math.max(reached.top, v);
              }
          const slack = 1e-9 * distance;
          expect(reached.left).toBeGreaterThanOrEqual(patch.left - slack);
          expect(reached.right).toBeLessThanOrEqual(patch.right + slack);
          expect(reached.bottom).toBeGreaterThanOrEqual(patch.bottom - slack);
          expect(reached.top).toBeLessThanOrEqual(patch.top + slack);
          // 2° apart on the rim: within 1 − cos 1° of the spot's size.
          const near = 2e-3 * (patch.right + Math.abs(patch.top) + Math.abs(patch.bottom));
          expect(patch.right - reached.right).toBeLessThan(near);
          expect(patch.top - reached.top).toBeLessThan(near);
          expect(reached.bottom - patch.bottom).toBeLessThan(near);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });

  test('a beam that still reaches the wall has one, however flat', () => {
    expect(landing(errors(0, 0, 80, 5), at300)!.top).toBeCloseTo(300 * Math.tan(rad(85)), 6);
    expect(landing(errors(0, 0, 0, 70), at300)!.right).toBeCloseTo(300 * Math.tan(rad(70)), 6);
  });
  test('a beam that can run along the wall has no rectangle', () => {
    expect(landing(errors(60, 0, 0, 35), at300)).toBeNull();
    expect(landing(errors(0, 0, 60, 35), at300)).toBeNull();
    expect(landing(errors(0, 0, 0, 95), at300)).toBeNull();
    expect(landing(errors(0, 0, 85, 6), at300)).toBeNull();
  });
  test('refuses figures out of order', () => {
    expect(() => landing(errors(0, 3, -3, 1), at300)).toThrow('low to high');
    expect(() => landing(errors(-1, 0, 0, 1), at300)).toThrow('yaw');
    expect(() => landing(errors(0, 0, 0, 1), { ...at300, play: [-0.1, 0] })).toThrow(
      'playAcross must be ≥ 0, got -0.1',
    );
    expect(() => landing(errors(0, 0, 0, 1), { ...at300, play: [0, -0.2] })).toThrow('playUp must be ≥ 0, got -0.2');
    expect(() => landing(errors(0, 0, 0, 1), { distance: 0, radius: 0 })).toThrow('distance');
  });
});

describe('opaque rectangles', () => {
  const wall: Patch = { left: -40, right: 40, bottom: -9, top: 12 };
  const spotOf: Patch = { left: -17, right: 17, bottom: -8, top: 31 };

  test('a wall too low leaves a strip, a hood on it closes it', () => {
    expect(uncovered(spotOf, [wall])).toEqual([{ left: -17, right: 17, bottom: 12, top: 31 }]);
    expect(uncovered(spotOf, [wall, { left: -20, right: 20, bottom: 10, top: 33 }])).toEqual([]);
  });
  test('a gap of a window stays open', () => {
    const around = [
      { left: -40, right: -1.5, bottom: -9, top: 40 },
      { left: 1.5, right: 40, bottom: -9, top: 40 },
      { left: -2, right: 2, bottom: 1.5, top: 40 },
      { left: -2, right: 2, bottom: -9, top: -1.5 },
    ];
    expect(uncovered(spotOf, around)).toEqual([{ left: -1.5, right: 1.5, bottom: -1.5, top: 1.5 }]);
  });
  test('two walls that meet but for a rounding cover it; a tenth of a millimetre apart they do not', () => {
    const meeting = (gap: number): Patch[] => [
      { left: -99, right: 0.3, bottom: -99, top: 99 },
      { left: 0.1 + 0.2 + gap, right: 99, bottom: -99, top: 99 },
    ];
    expect(uncovered(spotOf, meeting(0))).toEqual([]);
    expect(uncovered(spotOf, meeting(0.1))).toHaveLength(1);
  });
  test('nothing opaque: all of it', () => expect(uncovered(spotOf, [])).toEqual([spotOf]));

  test('area left over is what points on a fine grid say', () => {
    const whole = fc.integer({ min: -8, max: 8 });
    const box = fc.tuple(whole, whole, whole, whole).map(([a, b, c, d]) => ({
      left: Math.min(a, b),
      right: Math.max(a, b) + 1,
      bottom: Math.min(c, d),
      top: Math.max(c, d) + 1,
    }));
    fc.assert(
      fc.property(box, fc.array(box, { maxLength: 5 }), (patch, opaque) => {
        let open = 0;
        for (let u = patch.left + 0.5; u < patch.right; u += 1)
          for (let v = patch.bottom + 0.5; v < patch.top; v += 1)
            if (!opaque.some((r) => r.left < u && u < r.right && r.bottom < v && v < r.top)) open += 1;
        const area = uncovered(patch, opaque).reduce((sum, r) => sum + (r.right - r.left) * (r.top - r.bottom), 0);
        expect(area).toBe(open);
      }),
    );
  });
});

describe('stop condition', () => {
  const wall: Patch = { left: -60, right: 60, bottom: -12, top: 11 };
  const hood: Patch = { left: -60, right: 60, bottom: 10, top: 40 };
  const whole = errors(1, -3, 3, 3);
  const aimed = errors(0, 0, 0, 0.3);
  const to = { distance: 300, radius: 1.5 };

  test('before it is aimed a beam passes over the wall: the hood ends it; aimed, the wall does', () => {
    const without = stopCondition(
      { before: { error: whole, opaque: [wall] }, after: { error: aimed, opaque: [wall] } },
      to,
    );
    expect(without.before.stopped).toBe(false);
    expect(without.before.uncovered.some(({ top }) => Math.abs(top - (300 * Math.tan(rad(6)) + 1.5)) < 0.1)).toBe(true);
    expect(without.after).toMatchObject({ stopped: true, uncovered: [] });
    // Downward it is as wide: 33 mm below the axis, where only table and deck are; the wall reaches −12.
    const low: Patch = { ...wall, bottom: -40 };
    const hooded = stopCondition(
      { before: { error: whole, opaque: [low, hood] }, after: { error: aimed, opaque: [wall] } },
      to,
    );
    expect(hooded.before.stopped).toBe(true);
  });
  test('a beam that can miss the wall altogether is not stopped', () => {
    const wild = stopCondition(
      { before: { error: errors(0, 0, 89, 5), opaque: [wall] }, after: { error: aimed, opaque: [] } },
      to,
    );
    expect(wild.before).toEqual({ patch: null, uncovered: [], stopped: false });
    expect(wild.after.stopped).toBe(false);
  });
});

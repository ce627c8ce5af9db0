import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  beamsTogether,
  estimateEmission,
  hazardDistance,
  hazardDistanceAtPeak,
  throughAperture,
} from '../../src/optics/safety-emission.js';
import { classLimits, exposureLimit } from '../../src/optics/safety-limits.js';

const limitsAt = (nm: number) => {
  const answer = classLimits(nm);
  if (!answer.estimated) throw new Error(answer.why);
  return answer.limits;
};
const barrel = { powerMw: 5, diameter: 2, divergenceMrad: 1 };

describe('power through an aperture', () => {
  // Beam table: share through radius R at radius w: 1 − exp(−2 R²/w²).
  test.for([
    { R: 1, w: 1, want: 0.86466472 },
    { R: 1.5, w: 2.5, want: 0.51324774 },
  ])('R $R, w $w: $want of the power', ({ R, w, want }) => {
    const share =
      throughAperture({ powerMw: 3, diameter: 2 * w, divergenceMrad: 0 }, { diameter: 2 * R, distance: 700 }) / 3;
    expect(share).toBeCloseTo(want, 8);
  });
  test('by hand: d 3, φ 40 mrad at 100: w = ½ hypot(3, 4) = 2.5', () => {
    const seen = throughAperture({ powerMw: 7, diameter: 3, divergenceMrad: 40 }, { diameter: 3, distance: 100 });
    expect(seen).toBeCloseTo(7 * 0.51324774, 6);
  });
  test('never more than there is, never more from farther off or through less', () => {
    const figure = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
    fc.assert(
      fc.property(
        figure(0.1, 9),
        figure(0.5, 8),
        figure(0, 900),
        figure(1, 50),
        figure(0, 3000),
        (powerMw, diameter, divergenceMrad, D, z) => {
          const source = { powerMw, diameter, divergenceMrad };
          const seen = throughAperture(source, { diameter: D, distance: z });
          expect(seen).toBeLessThanOrEqual(powerMw);
          expect(throughAperture(source, { diameter: D, distance: z + 50 })).toBeLessThanOrEqual(seen);
          expect(throughAperture(source, { diameter: D / 2, distance: z })).toBeLessThanOrEqual(seen);
        },
      ),
    );
  });
  test('refuses nonsense', () => {
    expect(() => throughAperture({ ...barrel, powerMw: 0 }, { diameter: 7, distance: 100 })).toThrow('powerMw');
    expect(() => throughAperture({ ...barrel, divergenceMrad: -1 }, { diameter: 7, distance: 100 })).toThrow(
      'divergence',
    );
    expect(() => throughAperture(barrel, { diameter: 0, distance: 100 })).toThrow('aperture');
  });
});

/** Beams at one pitch. */
const row = (pitch: number, beams: number) => Array.from({ length: beams }, (_, i) => 18 + i * pitch);

describe('an array', () => {
  test.for([
    { at: row(19, 6), want: 3, from: 'by hand: ⌊50 / 19⌋ + 1' },
    { at: row(19, 2), want: 2, from: 'no more than there are' },
    { at: row(25, 9), want: 3, from: 'by hand: 0, 25, 50: both ends on the rim' },
    { at: row(60, 9), want: 1, from: 'by hand' },
    { at: [0, 34, 62, 84, 106, 140], want: 3, from: 'by hand, unequal: 62, 84, 106' },
    { at: [], want: 0, from: 'none' },
  ])('beams at $at: $want through 50 mm; $from', ({ at, want }) => {
    expect(beamsTogether(50, at)).toBe(want);
    expect(beamsTogether(50, at.toReversed())).toBe(want);
  });

  test('at one pitch it is ⌊D / p⌋ + 1, and as many as a sliding window sees', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 70 }), fc.integer({ min: 1, max: 12 }), (pitch, beams) => {
        const at = row(pitch, beams);
        let most = 0;
        for (let start = -50; start <= 18 + pitch * beams; start += 1)
          most = Math.max(most, at.filter((x) => start <= x && x <= start + 50).length);
        expect(beamsTogether(50, at)).toBe(most);
        expect(most).toBe(Math.min(beams, Math.floor(50 / pitch) + 1));
      }),
    );
  });

  test('5 mW red barrels at 22: 3R alone, three through a lens are 15 mW and 3B', () => {
    const { alone, eye, lens } = estimateEmission(barrel, [row(22, 6), row(22, 4)], limitsAt(650));
    expect(alone).toMatchObject({ beams: 1, class: '3R' });
    expect(alone.powerMw).toBeCloseTo(5, 6);
    expect(eye).toEqual(alone);
    expect(lens).toMatchObject({ beams: 3, class: '3B' });
    expect(lens.powerMw).toBeCloseTo(15, 6);
  });
  test('at a pitch under 7 a bare eye takes in two', () => {
    expect(estimateEmission(barrel, [row(30, 4), row(6, 4)], limitsAt(650)).eye).toMatchObject({
      beams: 2,
      class: '3B',
    });
  });
  test('a wide LED is judged by what enters a pupil 100 mm off', () => {
    // By hand: w = ½ hypot(5, 61.1) = 30.652; 1 − exp(−2 · 3.5² / 939.56) = .0257386; · 19 mW = .48903.
    const led = { powerMw: 19, diameter: 5, divergenceMrad: 611 };
    const { alone, lens } = estimateEmission(led, [row(19, 6)], limitsAt(850));
    expect(alone.powerMw).toBeCloseTo(0.489, 3);
    expect(alone.class).toBe('1');
    expect(lens.powerMw).toBeLessThan(alone.powerMw);
    // Independent: 80 mW/sr at most on the axis (datasheets) times the pupil's π 3.5²/100² sr = .3079 mW lies below the estimate.
    expect(alone.powerMw).toBeGreaterThan(80 * Math.PI * 0.035 ** 2);
  });
});

describe('nominal hazard distance', () => {
  test('5 mW, 0.25 s, 3 mm, 1 mrad: 12.814167 m (worked out by hand)', () => {
    const seen = { wavelengthNm: 650, time: 0.25 };
    expect(hazardDistanceAtPeak({ powerMw: 5, diameter: 3, divergenceMrad: 1 }, seen)).toBeCloseTo(12.814167, 5);
    // The same beam by its 1/e² figures, both √2 larger.
    const wide = { powerMw: 5, diameter: 3 * Math.SQRT2, divergenceMrad: Math.SQRT2 };
    expect(hazardDistance(wide, seen)).toBeCloseTo(12.814167, 5);
  });
  test('1 W, 0 mm, 1 mrad: 223.646 m (published: about 225 m)', () => {
    const far = hazardDistanceAtPeak(
      { powerMw: 1000, diameter: 0, divergenceMrad: 1 },
      { wavelengthNm: 532, time: 0.25 },
    );
    expect(far).toBeCloseTo(223.646, 3);
    expect(Math.abs(far - 225)).toBeLessThan(2);
  });
  test('none where the limit is kept at the emitter, no end for a beam that does not spread', () => {
    const seen = { wavelengthNm: 650, time: 0.25 };
    expect(hazardDistance({ powerMw: 0.2, diameter: 9, divergenceMrad: 1 }, seen)).toBe(0);
    expect(hazardDistance({ powerMw: 5, diameter: 2, divergenceMrad: 0 }, seen)).toBe(Infinity);
  });
  test('at that distance the middle of the beam has the limit’s irradiance', () => {
    const figure = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
    fc.assert(
      fc.property(
        figure(1, 400),
        figure(1, 4),
        figure(0.3, 3),
        figure(500, 1400),
        figure(0.1, 30),
        (powerMw, diameter, divergenceMrad, wavelengthNm, time) => {
          const far = hazardDistance({ powerMw, diameter, divergenceMrad }, { wavelengthNm, time });
          fc.pre(far > 0);
          // Gauss: the peak is 2 P / (π w²).
          const w = (diameter + divergenceMrad * far) / 2;
          const peak = (2 * powerMw * 1e-3) / (Math.PI * (w * 1e-3) ** 2);
          expect(peak / exposureLimit(wavelengthNm, time)).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});

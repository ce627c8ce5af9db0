import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  c4,
  c7,
  classLimits,
  classOf,
  exposureLimit,
  exposureTime,
  PUPIL_AREA,
  warns,
} from '../../src/optics/safety-limits.js';

const limitsAt = (wavelengthNm: number) => {
  const answer = classLimits(wavelengthNm);
  if (!answer.estimated) throw new Error(answer.why);
  return answer.limits;
};

describe('class limits, IEC 60825-1:2014 through public restatements; 3R beyond 700 nm and 3B from memory', () => {
  test.for([
    { nm: 500, class1: 0.39, class2: 1, class3R: 5, from: 'restated table, 500–700 nm' },
    { nm: 650, class1: 0.39, class2: 1, class3R: 5, from: 'restated table, 500–700 nm' },
    { nm: 780, class1: 0.563722, class2: null, class3R: 2.890884, from: 'by hand: .39 and 2 · 10^.16 = 1.445440' },
    { nm: 850, class1: 0.778152, class2: null, class3R: 3.990525, from: 'by hand: .39 and 2 · 10^.3 = 1.995262' },
    { nm: 940, class1: 1.177781, class2: null, class3R: 6.039903, from: 'by hand: .39 and 2 · 10^.48 = 3.019952' },
    { nm: 1064, class1: 1.95, class2: null, class3R: 10, from: 'by hand: C4 = 5, C7 = 1' },
    { nm: 1175, class1: 5.495847, class2: null, class3R: 28.18383, from: 'by hand: C4 = 5, C7 = 10^.45 = 2.818383' },
    { nm: 1310, class1: 15.6, class2: null, class3R: 80, from: 'by hand: C4 = 5, C_C = 8 (Directive 2006/25/EC)' },
  ])('$nm nm: class 1 to $class1, 2 to $class2, 3R to $class3R mW; $from', ({ nm, class1, class2, class3R }) => {
    const limits = limitsAt(nm);
    expect(limits.class1).toBeCloseTo(class1, 5);
    expect(limits.class2).toBe(class2);
    expect(limits.class3R).toBeCloseTo(class3R, 4);
    expect(limits.class3B).toBe(500);
  });

  // Law: class 1 is the exposure limit for long times over the 7 mm aperture, 10 C4 C7 W/m² · 3.848451e-5 m² = .385 mW, rounded.
  test.for([520, 650, 780, 850, 940, 1064, 1175, 1310])('class 1 at %d nm is the long limit through 7 mm', (nm) => {
    const through = 1e3 * exposureLimit(nm, 100) * PUPIL_AREA;
    expect(limitsAt(nm).class1 / through).toBeCloseTo(0.39 / 0.3848451, 5);
  });

  test('the 2014 edition allows more than the directive beyond 1200 nm: the lower is taken', () => {
    for (const nm of [1200, 1250, 1310, 1400]) expect(c7(nm)).toBeLessThan(8 + 10 ** (0.04 * (nm - 1250)));
  });

  test.for([405, 450, 499.9])('%d nm is not estimated: the retina is harmed photochemically', (nm) => {
    const answer = classLimits(nm);
    expect(answer.estimated).toBe(false);
    expect(answer).toHaveProperty('why', expect.stringMatching(/below 500 nm.*photochemical/));
  });
  test('beyond 1400 nm is not estimated: cornea and lens stop the light', () => {
    expect(classLimits(1550)).toMatchObject({ estimated: false, why: expect.stringMatching(/cornea/) });
  });
  test('refuses what is no wavelength', () => {
    for (const nm of [0, -650, Number.NaN, Infinity]) expect(() => classLimits(nm)).toThrow('wavelengthNm');
    expect(() => c4(450)).toThrow('500 to 1400');
    expect(() => c7(1500)).toThrow('500 to 1400');
  });

  test('limits do not fall with wavelength from 700 to 1400 nm, and classes nest', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 700.01, max: 1400, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (nm, d) => {
          const [one, two] = [limitsAt(nm), limitsAt(Math.min(1400, nm + d))];
          expect(two.class1).toBeGreaterThanOrEqual(one.class1);
          expect(one.class1).toBeLessThan(one.class3R);
          expect(one.class3R).toBeLessThan(one.class3B);
        },
      ),
    );
  });
});

describe('exposure limits, Directive 2006/25/EC Annex II through a public restatement', () => {
  test('0.25 s, visible: 25.455844 W/m², .979656 mW through 7 mm', () => {
    expect(PUPIL_AREA).toBeCloseTo(3.848451e-5, 11);
    expect(exposureLimit(650, 0.25)).toBeCloseTo(25.455844, 6);
    expect(1e3 * exposureLimit(650, 0.25) * PUPIL_AREA).toBeCloseTo(0.979656, 6);
  });
  test.for([
    { nm: 650, time: 10, want: 10, from: 'table: 10 W/m²' },
    { nm: 650, time: 3e4, want: 10, from: 'table: constant' },
    { nm: 850, time: 100, want: 19.952623, from: 'by hand: 10 · 10^.3' },
    { nm: 1064, time: 100, want: 50, from: 'table: 50 C_C with C_C = 1' },
    { nm: 1310, time: 100, want: 400, from: 'table: 50 C_C with C_C = 8' },
    { nm: 850, time: 1, want: 35.914722, from: 'by hand: 18 · 10^.3' },
    { nm: 1064, time: 1, want: 90, from: 'table: 90 t^.75 J/m²' },
  ])('$nm nm, $time s: $want W/m²; $from', ({ nm, time, want }) => {
    expect(exposureLimit(nm, time)).toBeCloseTo(want, 6);
  });
  test('falls with time, and only by a percent at 10 s', () => {
    expect(exposureLimit(650, 9.999999)).toBeCloseTo(10.1221, 3);
    for (const [a, b] of [
      [1e-4, 1e-3],
      [0.25, 1],
      [1, 10],
    ] as const)
      expect(exposureLimit(780, a)).toBeGreaterThan(exposureLimit(780, b));
  });
  test('refuses shorter times than the law holds for', () => {
    expect(() => exposureLimit(650, 1e-6)).toThrow('time');
    expect(() => exposureLimit(650, Number.NaN)).toThrow('time');
    expect(() => exposureLimit(450, 1)).toThrow('500 to 1400');
  });
});

test('classes by power: the limit itself still counts', () => {
  expect([0.39, 0.391, 1, 1.001, 5, 5.001, 500, 501].map((power) => classOf(power, limitsAt(650)))).toEqual([
    '1',
    '2',
    '2',
    '3R',
    '3R',
    '3B',
    '3B',
    '4',
  ]);
  // No class 2 where nothing is seen.
  expect([0.7, 0.9, 3.9, 5].map((power) => classOf(power, limitsAt(850)))).toEqual(['1', '3R', '3R', '3B']);
});

test('only visible light makes the eye turn away', () => {
  expect([390, 400, 650, 700, 701, 850].map(warns)).toEqual([false, true, true, true, false, false]);
  expect([650, 850].map(exposureTime)).toEqual([0.25, 10]);
});

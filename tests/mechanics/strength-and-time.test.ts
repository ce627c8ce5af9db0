import { describe, expect, test } from 'vitest';
import { dent, dentPressure, frictionAim, STEEL_EXPANSION, thermalDrift } from '../../src/mechanics/aim-error.js';
import { creepGrowth, forceLeft, setAfter } from '../../src/mechanics/creep.js';
import { foldPath, pathCompliance } from '../../src/mechanics/fold.js';
import { barInertia, firstFrequency } from '../../src/mechanics/frequency.js';
import { preloadFlex, shockMoment } from '../../src/mechanics/preload.js';
import { leastFormedEngagement, leastNutEngagement } from '../../src/mechanics/thread.js';
import { deg, rad } from '../../src/units.js';

describe('creep, Findley, Lai & Onaran (1976)', () => {
  test.for([
    { row: 'PLA planning values', a: 0.2, n: 0.25, left: 0.47 },
    { row: 'PETG planning values', a: 0.12, n: 0.22, left: 0.65 },
  ])('$row: $left left at 1000 h', ({ a, n, left }) => expect(forceLeft({ a, n }, 1000)).toBeCloseTo(left, 2));

  test('by hand: 1 + .3 · 81^.5 = 3.7, set 8.2° (1 − 1/3.7)', () => {
    expect(creepGrowth({ a: 0.3, n: 0.5 }, 81)).toBeCloseTo(3.7, 12);
    expect(deg(setAfter({ a: 0.3, n: 0.5 }, 81, rad(8.2)) as ReturnType<typeof rad>)).toBeCloseTo(5.98378, 5);
  });
  test('a year at 8.2°: 5.4° of set in PLA, 3.8° in PETG (planning values)', () => {
    expect(deg(setAfter({ a: 0.2, n: 0.25 }, 8760, rad(8.2)) as ReturnType<typeof rad>)).toBeCloseTo(5.4, 1);
    expect(deg(setAfter({ a: 0.12, n: 0.22 }, 8760, rad(8.2)) as ReturnType<typeof rad>)).toBeCloseTo(3.8, 1);
  });
  test('refuses time before the start', () => expect(() => forceLeft({ a: 0.2, n: 0.25 }, -1)).toThrow('hours'));
});

describe('preload and frequency', () => {
  // By hand: 8e-6 t · 9806.65 · 17 mm = 1.3337 N·mm per g; over 323: .2366°.
  test('8 g at 17 mm on K 323: .24° per g', () => {
    const perG = preloadFlex(shockMoment(1, 8e-6, 17), 323, 1);
    expect(deg(perG as ReturnType<typeof rad>)).toBeCloseTo(0.23658, 4);
    expect(deg(preloadFlex(shockMoment(1, 8e-6, 17), 83.333, 1) as ReturnType<typeof rad>)).toBeCloseTo(0.92, 2);
  });
  test('half left asks for twice the flex', () => expect(preloadFlex(2.3, 170, 0.5)).toBeCloseTo((2 * 2.3) / 170, 12));
  // An arm 24 long of 8 g whose centre stands 12 + l/2 from the leaf's middle; nonlinear computation printed to whole Hz.
  test.for([
    { K: 168, l: 10, want: 40 },
    { K: 323, l: 10, want: 55 },
    { K: 227, l: 14, want: 42 },
    { K: 549, l: 10, want: 72 },
    { K: 83.333, l: 10, want: 28 },
  ])('K $K with 8 g: $want Hz', ({ K, l, want }) =>
    expect(Math.abs(firstFrequency(K, barInertia(8e-6, 12 + l / 2, 24)) - want)).toBeLessThan(0.5),
  );
  test('a bar about its end: m s² / 3', () => expect(barInertia(7e-6, 10.5, 21)).toBeCloseTo((7e-6 * 21 ** 2) / 3, 15));
});

describe('aim errors', () => {
  // Johnson, Contact Mechanics: ball R 1.5 on PLA (E 3000, ν .36) under 2.6 N: E* = 3446.7; δ = (60.84 / (16 · 1.18797e7 · 1.5))^⅓.
  const ball = { force: 2.6, radius: 1.5, modulus: 3000, poisson: 0.36 };
  test('dent by hand .0059757 mm: .43 mrad at a lever of 14', () => {
    expect(dent(ball)).toBeCloseTo(0.0059757, 7);
    expect((1000 * dent(ball)) / 14).toBeCloseTo(0.43, 2);
  });
  test('pressure: 3 F / 2 π a² with a² = R δ (Hertz’s other form)', () =>
    expect(dentPressure(ball)).toBeCloseTo((3 * 2.6) / (2 * Math.PI * 1.5 * dent(ball)), 9));
  test('10 mm of steel screw in PLA at 14: .06 mrad/K', () =>
    expect(1000 * thermalDrift({ plastic: 96e-6, screw: STEEL_EXPANSION, length: 10, lever: 14 })).toBeCloseTo(
      0.06,
      9,
    ));

  // By hand for a straight leaf, tip at a behind its middle and h off its line: dead band μ F h (l/EI) (l²/12)/(a² + l²/12).
  test('friction: in line by hand', () => {
    const [l, a, h, EI] = [13, 17, 4.5, (2600 * 11 * 1.3 ** 3) / 12];
    const path = foldPath({ legs: 1, length: l, pitch: 1 });
    const tip = pathCompliance(path, { width: 11, thickness: 1.3, modulus: 2600 }, { at: [-l / 2 - a, -h] });
    const want = (0.27 * 1.9 * h * l * (l ** 2 / 12)) / EI / (a ** 2 + l ** 2 / 12);
    expect(frictionAim(tip, 1.9, 0.27)).toBeCloseTo(want, 12);
  });
  test('friction: none with an upright leaf, whose moment is even', () => {
    const tip = { xx: 1, xy: 0.3 * 17, yy: 0.2 * 17, xm: 0.3, ym: 0.2, mm: 1 };
    expect(frictionAim(tip, 1.9, 0.27)).toBeCloseTo(0, 12);
  });
});

// Common practice: 1.5 d formed in plastic; ISO 4032 M2.5 nut height 2, ISO 261 pitch .45.
test('threads: M2.5 formed 3.75, through its nut 2.45', () => {
  expect(leastFormedEngagement(2.5)).toBeCloseTo(3.75, 12);
  expect(leastNutEngagement(2, 0.45)).toBeCloseTo(2.45, 12);
});

import { expect, test } from 'vitest';
import { notchStiffness, notchStrain, thinNotchStiffness } from '../../src/mechanics/notch.js';
import { rad } from '../../src/units.js';

/** 1/K = ∫ 12 / (E b h³) ds, h = t + 2 (R − √(R² − s²)), by the midpoint rule in s = R sin φ. */
function integrated(R: number, t: number, b: number, E: number): number {
  const n = 20000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const phi = -Math.PI / 2 + (Math.PI * (i + 0.5)) / n;
    const h = t + 2 * R * (1 - Math.cos(phi));
    sum += ((12 / (E * b * h ** 3)) * R * Math.cos(phi) * Math.PI) / n;
  }
  return 1 / sum;
}

// Paros & Weisbord, Machine Design, 25 November 1965 (equation from memory); values by an independent computation and by
// integrating the beam of varying height.
test.for([
  { R: 3, t: 1, b: 12, E: 3000, want: 1536.084597 },
  { R: 4.2, t: 1.3, b: 11, E: 2600, want: 1981.018937 },
])('round notch R $R, t $t: $want N·mm/rad', ({ R, t, b, E, want }) => {
  const K = notchStiffness({ radius: R, thickness: t, width: b }, E);
  expect(K).toBeCloseTo(want, 5);
  expect(K / integrated(R, t, b, E)).toBeCloseTo(1, 6);
});

test('simplified: 1470.210388, 4 % low at t = R/3', () =>
  expect(thinNotchStiffness({ radius: 3, thickness: 1, width: 12 }, 3000)).toBeCloseTo(1470.210388, 5));

test('a notch can’t do 7°: 3.1 % surface strain at R 3, t 1', () => {
  // Hand: M = 1536.0846 · .122173 = 187.67; 6 M/(12 · 1) = 93.83 MPa; / 3000.
  expect(notchStrain({ radius: 3, thickness: 1, width: 12 }, rad(7))).toBeCloseTo(0.03128, 5);
});

test('refuses a notch without radius', () =>
  expect(() => notchStiffness({ radius: 0, thickness: 1, width: 12 }, 3000)).toThrow('radius'));

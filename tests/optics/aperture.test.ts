import { describe, expect, test } from 'vitest';
import { marcumQ, offsetFor, passedShare } from '../../src/optics/aperture.js';
import { normals, random } from './random.js';

describe('power through a circle that stands off the beam', () => {
  // Worked out for this project with Marcum's Q.
  test.for([
    [1, 1, 0, 0.86466472],
    [1.5, 2.5, 0, 0.51324774],
    [1, 1, 0.5, 0.73098794],
    [1, 1, 2, 0.0147234641],
    [1.5, 2.5, 1.5, 0.311691891],
    [2.5, 1, 3.5, 0.0185555138],
  ] as const)('R %f, w %f, off by %f: %f', ([radius, w, offset, want]) => {
    expect(passedShare({ radius, w, offset })).toBeCloseTo(want, 8);
  });

  test('noncentral χ² of 2 degrees of freedom: a Poisson mix of central ones, summed', () => {
    // P(χ'² ≤ x; λ) = Σ e^(−λ/2) (λ/2)^j / j! · P(χ²(2 + 2j) ≤ x) (Abramowitz & Stegun 26.4.25), P(χ²(2 + 2j) ≤ x) = 1 − e^(−x/2) Σ (x/2)^i / i!, i ≤ j.
    const chi = (x: number, lambda: number) => {
      let [sum, weight, inner, term] = [0, Math.exp(-lambda / 2), 0, 1];
      for (let j = 0; j < 400; j += 1) {
        inner += term;
        term *= x / 2 / (j + 1);
        sum += weight * (1 - Math.exp(-x / 2) * inner);
        weight *= lambda / 2 / (j + 1);
      }
      return sum;
    };
    for (const [radius, w, offset] of [
      [0.5, 1.1, 0.4],
      [1.5, 2.5, 2],
      [3, 1, 2.9],
      [0.2, 2, 3],
    ] as const)
      expect(passedShare({ radius, w, offset })).toBeCloseTo(
        chi((4 * radius ** 2) / w ** 2, (4 * offset ** 2) / w ** 2),
        10,
      );
  });

  test('drawn rays land in the circle as often', () => {
    const [next, n] = [random(5), 200_000];
    let inside = 0;
    for (let i = 0; i < n; i += 1) {
      const [x, y] = normals(next);
      if (Math.hypot(1.2 * x - 1.5, 1.2 * y) < 1.5) inside += 1;
    }
    const want = passedShare({ radius: 1.5, w: 2.4, offset: 1.5 });
    expect(Math.abs(inside / n - want)).toBeLessThan(4 * Math.sqrt((want * (1 - want)) / n));
  });

  test('a wide aperture over a narrow beam keeps all of it until its edge cuts it in half', () => {
    expect(passedShare({ radius: 50, w: 0.2, offset: 40 })).toBeCloseTo(1, 12);
    expect(passedShare({ radius: 50, w: 0.2, offset: 50 })).toBeCloseTo(0.5, 2);
    expect(passedShare({ radius: 50, w: 0.2, offset: 60 })).toBe(0);
  });
});

test('Marcum’s Q', () => {
  expect(marcumQ(1, 1)).toBeCloseTo(0.732879804, 9);
  expect(marcumQ(2, 1)).toBeCloseTo(0.918107696, 9);
  // Q(0, b) = exp(−b²/2).
  expect(marcumQ(0, 1)).toBeCloseTo(Math.exp(-0.5), 12);
  expect(marcumQ(3, 0)).toBe(1);
});

test.for([
  [1, 0.9, 0.768121],
  [1, 0.5, 1.419526],
  [2.5, 0.9, 0.693272],
  [2.5, 0.5, 1.763934],
] as const)('R 1.5, w %f: %f of the centred power is left at %f mm off', ([w, share, want]) => {
  expect(offsetFor(share, { radius: 1.5, w })).toBeCloseTo(want, 6);
});

test('figures out of range are named', () => {
  expect(() => passedShare({ radius: 0, w: 1, offset: 0 })).toThrow('radius');
  expect(() => passedShare({ radius: 1, w: 1, offset: -1 })).toThrow('offset');
  expect(() => offsetFor(1, { radius: 1, w: 1 })).toThrow('share');
});

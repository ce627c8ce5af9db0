import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { erf, erfc, normalAbove, normalBelow, normalBetween, normalDensity } from '../../src/optics/normal.js';
import { GAUSS_64, gaussLegendre, integrate } from '../../src/optics/quadrature.js';

describe('error function and normal distribution', () => {
  // Abramowitz & Stegun, tables 7.1 and 7.3 as widely reprinted (from memory for the last digits).
  test.for([
    { x: 0.5, want: 0.5204998778130465 },
    { x: 1, want: 0.8427007929497149 },
    { x: 2, want: 0.9953222650189527 },
    { x: 3, want: 0.9999779095030014 },
  ])('erf($x) = $want', ({ x, want }) => {
    expect(erf(x)).toBeCloseTo(want, 14);
    expect(erf(-x)).toBeCloseTo(-want, 14);
    expect(erfc(x) + erf(x)).toBeCloseTo(1, 14);
  });
  test.for([
    { x: 3, want: 2.209049699858544e-5 },
    { x: 5, want: 1.537459794428035e-12 },
    { x: 10, want: 2.088487583762545e-45 },
  ])('erfc($x) = $want', ({ x, want }) => expect(Math.abs(erfc(x) / want - 1)).toBeLessThan(1e-13));
  // The quantiles of every statistics table.
  test.for([
    { z: 1.2815515655446004, want: 0.1 },
    { z: 1.6448536269514722, want: 0.05 },
    { z: 1.959963984540054, want: 0.025 },
    { z: 3.090232306167813, want: 0.001 },
    { z: 4.753424308822899, want: 1e-6 },
  ])('Q($z) = $want', ({ z, want }) => {
    expect(Math.abs(normalAbove(z) / want - 1)).toBeLessThan(1e-12);
    expect(normalBelow(-z)).toBe(normalAbove(z));
  });
  test('ends and nonsense', () => {
    expect([erf(0), erf(Infinity), erf(-Infinity), erfc(Infinity), erfc(-Infinity)]).toEqual([0, 1, -1, 0, 2]);
    expect(erf(Number.NaN)).toBeNaN();
    expect(erfc(Number.NaN)).toBeNaN();
    expect(erfc(40)).toBe(0);
  });
  test('Φ is the integral of φ, piece by piece and across the join of series and fraction', () => {
    const z = fc.double({ min: -8, max: 8, noNaN: true });
    fc.assert(
      fc.property(z, z, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const want = integrate(normalDensity, [low, high]);
        expect(Math.abs(normalBetween(low, high) - want)).toBeLessThan(1e-14 + 1e-10 * want);
      }),
    );
    for (const join of [2.5, -2.5]) expect(erf(join + 1e-13)).toBeCloseTo(erf(join), 13);
  });
  test('a far piece keeps its digits', () => {
    // Mills: Q(z) ≈ φ(z)/z (1 − 1/z² + 3/z⁴ − 15/z⁶).
    const mills = (z: number) => (normalDensity(z) / z) * (1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6 + 105 / z ** 8);
    expect(normalBetween(20, 21) / (mills(20) - mills(21))).toBeCloseTo(1, 9);
  });
});

describe('Gauss–Legendre', () => {
  // Abramowitz & Stegun, table 25.4.
  test('n = 2, 3, 5 as tabled', () => {
    expect(gaussLegendre(1)).toEqual({ nodes: [0], weights: [2] }); // exact: the midpoint rule
    expect(gaussLegendre(2).nodes[1]).toBeCloseTo(0.577350269189626, 14);
    expect(gaussLegendre(3).weights).toEqual([
      expect.closeTo(0.555555555555556, 14),
      expect.closeTo(0.888888888888889, 14),
      expect.closeTo(0.555555555555556, 14),
    ]);
    expect(gaussLegendre(5).nodes[4]).toBeCloseTo(0.906179845938664, 14);
    expect(gaussLegendre(5).weights[4]).toBeCloseTo(0.236926885056189, 14);
  });
  test('64 points: weights sum to 2, x¹²⁶ is exact, halves mirror', () => {
    expect(GAUSS_64.weights.reduce((a, b) => a + b)).toBeCloseTo(2, 13);
    expect(integrate((x) => x ** 126, [-1, 1])).toBeCloseTo(2 / 127, 14);
    for (let i = 0; i < 32; i += 1) expect(GAUSS_64.nodes[i]).toBeCloseTo(-GAUSS_64.nodes[63 - i]!, 14);
  });
  test('∫ cos over [.3, 2.1] = sin 2.1 − sin .3; nothing over nothing', () => {
    expect(integrate(Math.cos, [0.3, 2.1])).toBeCloseTo(Math.sin(2.1) - Math.sin(0.3), 14);
    expect(integrate(Math.exp, [1.7, 1.7])).toBe(0);
  });
  test('refuses no points', () => expect(() => gaussLegendre(0)).toThrow('whole'));
});

import { describe, expect, test } from 'vitest';
import { type Compliance, foldPath, pathCompliance, squareFoldPath } from '../../src/mechanics/fold.js';
import { integrate, pathCentroid, pathEnd, pathLength, pathOf } from '../../src/mechanics/path.js';

const close = (have: Compliance, want: Compliance, digits: number) => {
  for (const [key, value] of Object.entries(want))
    expect(have[key as keyof Compliance], key).toBeCloseTo(value, digits);
};
/** The same seen in a mirror: x and turn change sign. */
const mirrored = (c: Compliance): Compliance => ({ ...c, xy: -c.xy, ym: -c.ym });

// Castigliano's theorem, three legs joined by square connectors, worked by hand for the diagonal: L = 3l + 2p,
// mm = L/EI; xm = −Σ moments of length about the end's height.
describe('three-leg fold with square turns', () => {
  const fold = { legs: 3, length: 10, pitch: 3 };
  const section = { width: 12, thickness: 1, modulus: 3000 };
  test('bending and stretching', () => {
    const want = { xx: 0.174833333, xy: -0.165, yy: 0.4335, xm: -0.036, ym: 0.06, mm: 0.012 };
    close(pathCompliance(squareFoldPath(fold), section, { stretching: true }), mirrored(want), 8);
  });
  test('bending only: .174 and .433333 on the diagonal, K = E I / (3 l + 2 p) = 83.333333', () => {
    const c = pathCompliance(squareFoldPath(fold), section);
    expect(c.xx).toBeCloseTo(0.174, 9);
    expect(c.yy).toBeCloseTo(0.433333333, 8);
    expect(1 / c.mm).toBeCloseTo(83.333333, 5);
  });
  test('no ones: l 9, p 3.4, b 11, t 1.3, E 2600 (independent computation)', () => {
    const c = pathCompliance(squareFoldPath({ legs: 3, length: 9, pitch: 3.4 }), {
      width: 11,
      thickness: 1.3,
      modulus: 2600,
    });
    const want = { xx: 0.11936379, xy: -0.08882806, xm: -0.02194728, yy: 0.1918191, ym: 0.02904788, mm: 0.00645508 };
    close(c, mirrored(want), 8);
  });
});

describe('round turns', () => {
  const section = { width: 11, thickness: 1.3, modulus: 2600 };
  const EI = (2600 * 11 * 1.3 ** 3) / 12;

  // Roark, 7th ed., Table 9.2 / any handbook: half ring, one end built in, force across the opening at the other end:
  // closes by (π/2) P R³/EI; force along the opening's normal: 3π/2; turn 2 P R²/EI and π.
  test('a half circle built in at one end (curved-bar tables): π/2, 3π/2, ±2, π R, from memory and by hand', () => {
    const R = 2.7;
    const half = pathOf([0, 0], 0, [{ curvature: 1 / R, length: Math.PI * R }]);
    const c = pathCompliance(half, section);
    // Free end at (0, 2R) above the root; points at (R sin φ, R − R cos φ).
    expect((c.yy * EI) / R ** 3).toBeCloseTo(Math.PI / 2, 9);
    expect((c.xx * EI) / R ** 3).toBeCloseTo((3 * Math.PI) / 2, 9);
    expect((c.xm * EI) / R ** 2).toBeCloseTo(-Math.PI, 9);
    expect((c.ym * EI) / R ** 2).toBeCloseTo(-2, 9);
    expect((c.xy * EI) / R ** 3).toBeCloseTo(2, 9);
    expect((c.mm * EI) / R).toBeCloseTo(Math.PI, 9);
  });

  test('K = E I / path length for any fold', () => {
    const path = foldPath({ legs: 2, length: 7.5, pitch: 3.2 });
    const length = 2 * 7.5 + Math.PI * 1.6;
    expect(pathLength(path)).toBeCloseTo(length, 9);
    expect(pathCompliance(path, section).mm).toBeCloseTo(length / EI, 12);
  });

  test('at the centroid force and turn are uncoupled', () => {
    const path = foldPath({ legs: 2, length: 7.5, pitch: 3.2 });
    const c = pathCompliance(path, section, { at: pathCentroid(path) });
    expect(c.xm).toBeCloseTo(0, 12);
    expect(c.ym).toBeCloseTo(0, 12);
  });

  test('ends where it should', () => {
    const at = pathEnd(foldPath({ legs: 3, length: 9, pitch: 3.4 }));
    expect(at[0]).toBeCloseTo(-9, 9);
    expect(at[1]).toBeCloseTo(6.8, 9);
  });

  test('the quadrature: x² over a circle’s arc is π R³ / 2 over the half circle', () => {
    const half = pathOf([2.3, 0], Math.PI / 2, [{ curvature: 1 / 2.3, length: Math.PI * 2.3 }]);
    expect(integrate(half, ([x]) => x * x) / ((Math.PI * 2.3 ** 3) / 2)).toBeCloseTo(1, 9);
  });
});

test('refuses a section without thickness', () =>
  expect(() =>
    pathCompliance(foldPath({ legs: 2, length: 7, pitch: 3 }), { width: 9, thickness: 0, modulus: 2000 }),
  ).toThrow('thickness'));

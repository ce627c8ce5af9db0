/** Stress peaks over the nominal bending stress 6 M / (b t²). */
import { requirePositive } from '../positive.js';

/**
 * Stepped flat bar in bending with shoulder fillets: h = (D − d)/2, s = √(h/r), x = 2h/D, Kt = Σ C_i x^(i−1).
 *
 * @param bar - outer: D, inner: d, fillet: r [mm]
 * @returns Kt [1], on the stress in the narrow part
 * @throws {RangeError} unless D > d > 0, r > 0 and .1 ≤ h/r ≤ 20
 * Source: Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed., Table 17.1, stepped bar in bending (case number not at hand). Against plane
 * finite elements it came out 4–6 % low.
 */
export function shoulderFactor({ outer, inner, fillet }: { outer: number; inner: number; fillet: number }): number {
  requirePositive('shoulderFactor', { outer, inner, fillet });
  const h = (outer - inner) / 2;
  const ratio = h / fillet;
  if (!(ratio >= 0.1 && ratio <= 20)) throw new RangeError(`shoulderFactor: h/r must be .1 to 20, got ${ratio}`);
  const s = Math.sqrt(ratio);
  const x = (2 * h) / outer;
  const c =
    ratio <= 2
      ? [
          1.007 + s - 0.031 * ratio,
          -0.27 - 2.404 * s + 0.749 * ratio,
          0.677 + 1.133 * s - 0.904 * ratio,
          -0.414 + 0.271 * s + 0.186 * ratio,
        ]
      : [
          1.042 + 0.982 * s - 0.036 * ratio,
          -3.599 + 1.619 * s - 0.431 * ratio,
          6.084 - 5.607 * s + 1.158 * ratio,
          -2.527 + 3.006 * s - 0.691 * ratio,
        ];
  return c.reduce((sum, ci, i) => sum + ci * x ** i, 0);
}

/**
 * Peak at the leaf's root, in this part: 1.1 (1 + .165 (t/r)^.84) in line, 1.1 (1 + .245 (t/r)^.9) upright (outer face flush
 * with the arms, fillets inside only).
 *
 * @param thickness - t [mm] @param fillet - r [mm] @returns Kt [1], within +8/−2 % of solid elements at r = .5, t = 1
 * @throws {RangeError} unless both are finite and > 0
 * Source: this project's fit to plane and solid finite elements.
 */
export function rootFactor(layout: 'in-line' | 'upright', thickness: number, fillet: number): number {
  requirePositive('rootFactor', { thickness, fillet });
  const ratio = thickness / fillet;
  return 1.1 * (layout === 'in-line' ? 1 + 0.165 * ratio ** 0.84 : 1 + 0.245 * ratio ** 0.9);
}

/**
 * Inner face of a curved leaf of rectangular section: the neutral axis moves in by e = R − t / ln(r_o / r_i), and
 * k_i = t (t/2 − e) / (6 e r_i) on the straight leaf's stress.
 *
 * @param radius - R of the centreline [mm], > t/2 @param thickness - t [mm]
 * @returns k_i [1] @throws {RangeError} unless both are finite and > 0, R > t/2
 * Source: Winkler–Bach; Young & Budynas, Roark's Formulas, 7th ed., Table 9.1, solid rectangular section (from memory).
 */
export function curvedFactor(radius: number, thickness: number): number {
  requirePositive('curvedFactor', { radius, thickness });
  const inner = radius - thickness / 2;
  if (!(inner > 0)) throw new RangeError(`curvedFactor: radius must exceed t/2, got ${radius}`);
  const shift = radius - thickness / Math.log((radius + thickness / 2) / inner);
  return (thickness * (thickness / 2 - shift)) / (6 * shift * inner);
}

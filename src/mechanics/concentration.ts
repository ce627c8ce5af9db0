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
 * How much more than its mean over the width a leaf bears at mid-width, where it can't curl: (1 + c ν²/(1 − ν²)) / m. c is 1.35 at
 * a root and at a turn whose middle bends most, .85 at a turn that bends most where it meets its leg.
 *
 * @param poisson - ν, 0 to .5 @param plate - m, the leaf's plate factor (`end-correction.ts`) @returns [1]
 * @throws {RangeError} on ν outside that or m below 1
 * Source: this project's fit to solid elements (`rootFactor`).
 */
export function midWidthFactor(poisson: number, plate: number, where: 'held' | 'beside a leg' = 'held'): number {
  if (!(poisson >= 0 && poisson <= 0.5)) throw new RangeError(`midWidthFactor: ν must be 0 to .5, got ${poisson}`);
  if (!(plate >= 1)) throw new RangeError(`midWidthFactor: m must be ≥ 1, got ${plate}`);
  return (1 + ((where === 'held' ? 1.35 : 0.85) * poisson ** 2) / (1 - poisson ** 2)) / plate;
}

/**
 * Peak at the leaf's root over the beam's stress where leaf and block meet: (1 + .111 ρ^−1.41), ρ = r/t, on the moment at the
 * fillet's foot, r out from the block, times `midWidthFactor`.
 *
 * @param root - thickness t, fillet r, on both faces [mm]; arm: from the root to the line of the screw's force [mm], Infinity where
 * the moment is even; poisson, plate as above
 * @returns Kt [1]
 * @throws {RangeError} unless t, r > 0 and arm > r
 * Source: this project's fit to 17 solid-element runs of leaves as drawn, straight, upright and folded (CalculiX, 20-node bricks), rounded
 * by hand and looked at beside a few more; most are among those that the tests compare with, so these are no independent proof:
 * rms 1.4 %, all within 3 %; ρ .5 to 1.05, b/l .8 to 3, ν 0 to .38.
 */
export function rootFactor({
  thickness,
  fillet,
  arm,
  poisson,
  plate,
}: {
  readonly thickness: number;
  readonly fillet: number;
  readonly arm: number;
  readonly poisson: number;
  readonly plate: number;
}): number {
  requirePositive('rootFactor', { thickness, fillet });
  if (!(arm > fillet)) throw new RangeError(`rootFactor: arm must exceed the fillet ${fillet}, got ${arm}`);
  const notch = 1 + 0.111 * (thickness / fillet) ** 1.41;
  return notch * (1 - fillet / arm) * midWidthFactor(poisson, plate);
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

/** Power of a Gaussian beam through a round aperture that need not stand on its axis. All lengths mm. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { erf, normalDensity } from './normal.js';
import { integrate } from './quadrature.js';

export interface Through {
  /** Of the aperture, R > 0. */
  readonly radius: number;
  /** Of the beam at the aperture, 1/e², w > 0. */
  readonly w: number;
  /** From the beam's axis to the aperture's, d ≥ 0. */
  readonly offset: number;
}

/** Beyond this many σ a beam counts as dark: less than 1e-18 of it. */
const DARK = 9;

/**
 * Share of the power that passes: P = ∫ φ((R sin t − d)/σ)/σ · erf(R cos t /(√2 σ)) · R cos t dt over −π/2…π/2, σ = w/2.
 *
 * It is 1 − Q₁(2d/w, 2R/w) (Marcum's Q), the distribution of a noncentral χ² of 2 degrees of freedom; centred 1 − exp(−2R²/w²).
 *
 * @returns 0 to 1 @throws {RangeError} on figures out of range
 * Source: worked out here (chords across in closed form); tests compare with Marcum's Q and a noncentral χ².
 */
export function passedShare({ radius, w, offset }: Through): number {
  requirePositive('passedShare', { radius, w });
  requireNotNegative('passedShare', { offset });
  if (offset === 0) return -Math.expm1(-2 * (radius / w) ** 2);
  const sigma = w / 2;
  // Only where there is light: a wide aperture over a narrow beam would leave few of the rule's points on it.
  const clamp = (x: number) => Math.asin(Math.max(-1, Math.min(1, x / radius)));
  const range = [clamp(offset - DARK * sigma), clamp(offset + DARK * sigma)] as const;
  return integrate((t) => {
    const chord = radius * Math.cos(t);
    const x = (radius * Math.sin(t) - offset) / sigma;
    return (normalDensity(x) / sigma) * erf(chord / (Math.SQRT2 * sigma)) * chord;
  }, range);
}

/**
 * Marcum's Q₁(a, b) = P(hypot(a + x, y) > b), x and y standard normal.
 *
 * @param a - ≥ 0 @param b - ≥ 0 @returns 0 to 1
 */
export function marcumQ(a: number, b: number): number {
  requireNotNegative('marcumQ', { a, b });
  return b === 0 ? 1 : 1 - passedShare({ radius: b, w: 2, offset: a });
}

/**
 * @param share - of what passes centred, 0 < η < 1 @returns the offset at which the aperture passes that share
 * @throws {RangeError} on figures out of range
 */
export function offsetFor(share: number, { radius, w }: { readonly radius: number; readonly w: number }): number {
  requirePositive('offsetFor', { share });
  if (!(share < 1)) throw new RangeError(`offsetFor: the share must be < 1, got ${share}`);
  const wanted = share * passedShare({ radius, w, offset: 0 });
  let [low, high] = [0, radius + DARK * w];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (passedShare({ radius, w, offset: middle }) >= wanted) low = middle;
    else high = middle;
  }
  return low;
}

/** How crooked barrels are: laws of the angle between a barrel's beam and its body. Any one unit of angle. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { marcumQ } from './aperture.js';
import { erfc } from './normal.js';

/**
 * `rayleigh`: two independent normal errors of σ each, the usual case. `half-normal`: |N(0, σ)|, more of the small ones.
 * `rice`: Rayleigh errors in a seat that leans by `wedge` on purpose.
 */
export type BoresightLaw =
  | { readonly kind: 'rayleigh'; readonly sigma: number }
  | { readonly kind: 'half-normal'; readonly sigma: number }
  | { readonly kind: 'rice'; readonly sigma: number; readonly wedge: number };

/**
 * @param error - any; below 0 every barrel exceeds it
 * @returns share of barrels whose error exceeds it
 * @throws {RangeError} unless σ > 0, wedge ≥ 0
 */
export function exceeds(law: BoresightLaw, error: number): number {
  requirePositive('exceeds', { sigma: law.sigma });
  if (!(error > 0)) return 1;
  if (error === Infinity) return 0;
  const z = error / law.sigma;
  if (law.kind === 'rayleigh') return Math.exp((-z * z) / 2);
  if (law.kind === 'half-normal') return erfc(z / Math.SQRT2);
  requireNotNegative('exceeds', { wedge: law.wedge });
  return marcumQ(law.wedge / law.sigma, z);
}

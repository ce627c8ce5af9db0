import { requireNotNegative, requirePositive } from '../positive.js';
import { GRAVITY } from '../units.js';

/**
 * Moment about the hinge with which a shock would lift the screw: n m g d. Weight counts as one of the n.
 *
 * @param shockG - n, in multiples of g @param mass - m [t] @param distance - d of its centre from the hinge [mm]
 * @returns moment [N·mm] @throws {RangeError} on negative figures
 * Source: Newton's second law, steady acceleration (no credit for a short pulse).
 */
export function shockMoment(shockG: number, mass: number, distance: number): number {
  requireNotNegative('shockMoment', { shockG, mass, distance });
  return shockG * mass * GRAVITY * distance;
}

/**
 * Least flex that keeps the screw on its pad: n m g d / (K · share of the moment left).
 *
 * @param moment - shock moment [N·mm] @param stiffness - K [N·mm/rad] @param left - share left after creep, 0 to 1
 * @returns flex [rad] @throws {RangeError} outside those
 */
export function preloadFlex(moment: number, stiffness: number, left: number): number {
  requireNotNegative('preloadFlex', { moment });
  requirePositive('preloadFlex', { stiffness, left });
  return moment / (stiffness * left);
}

/** Findley's power law for plastics under steady load. */
import { requireNotNegative } from '../positive.js';

/** A [1/hⁿ] and n [1]. */
export interface Findley {
  readonly a: number;
  readonly n: number;
}

/** Hours in a year of 365 days. */
export const YEAR_HOURS = 8760;

/**
 * Growth of the strain under a steady load: ε(t)/ε₀ = 1 + A tⁿ.
 *
 * @param hours - t [h] @returns ratio ≥ 1 @throws {RangeError} on negative figures
 * Source: Findley, Lai & Onaran, Creep and Relaxation of Nonlinear Viscoelastic Materials (1976).
 */
export function creepGrowth({ a, n }: Findley, hours: number): number {
  requireNotNegative('creepGrowth', { a, n, hours });
  return 1 + a * hours ** n;
}

/**
 * Share of force or moment left when the flex is held: about 1 / (1 + A tⁿ). Slightly low: true relaxation is a little less.
 *
 * @returns ratio, 0 to 1 @throws {RangeError} on negative figures
 * Source: as above, the usual quasi-elastic estimate.
 */
export const forceLeft = (findley: Findley, hours: number): number => 1 / creepGrowth(findley, hours);

/**
 * Flex that a leaf keeps when it is let go after being held: flex (1 − force left), before any recovery.
 *
 * @param flex - held [rad] @returns set [rad] @throws {RangeError} on negative figures
 */
export function setAfter(findley: Findley, hours: number, flex: number): number {
  requireNotNegative('setAfter', { flex });
  return flex * (1 - forceLeft(findley, hours));
}

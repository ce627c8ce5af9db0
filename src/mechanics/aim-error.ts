/** What moves the aim though the screw is not turned: friction at the tip, the tip's dent, temperature. */

import { requireNotNegative, requirePositive } from '../positive.js';
import type { Compliance } from './fold.js';

/**
 * Angle by which friction at the screw's tip can hold the arm off, either way: the tip is held in height, a force μF acts along
 * the pad. With c the compliance at the tip (force along the screw is y): turn = μF (c_xm − c_ym c_xy / c_yy).
 *
 * @param compliance - of the tip, riding on the arm @param force - screw force F [N] @param friction - μ
 * @returns half width of the dead band [rad]; reversing the screw crosses twice that
 * @throws {RangeError} on negative figures
 * Source: Castigliano's theorem with the tip's height as constraint; Coulomb friction.
 */
export function frictionAim({ xm, ym, xy, yy }: Compliance, force: number, friction: number): number {
  requireNotNegative('frictionAim', { force, friction });
  return Math.abs(force * friction * (xm - (ym * xy) / yy));
}

/**
 * Elastic approach of a stiff ball pressed on a flat: δ = (9 F² / (16 E*² R))^⅓, E* = E / (1 − ν²).
 *
 * @param options - force F [N], radius R [mm], modulus E [MPa] and poisson ν of the flat
 * @returns δ [mm] @throws {RangeError} unless force, radius, modulus > 0 and 0 ≤ ν ≤ .5
 * Source: Hertz; Johnson, Contact Mechanics (1985), ch. 4.
 */
export function dent(options: Contact): number {
  const { force, radius } = options;
  return ((9 * force ** 2) / (16 * contactModulus(options) ** 2 * radius)) ** (1 / 3);
}

/**
 * Greatest pressure under that ball: p₀ = (6 F E*² / (π³ R²))^⅓. A flat yields below its surface from about p₀ = 1.6 σ_y on.
 *
 * @returns p₀ [MPa] @throws {RangeError} as `dent`
 * Source: as above.
 */
export function dentPressure(options: Contact): number {
  const { force, radius } = options;
  return ((6 * force * contactModulus(options) ** 2) / (Math.PI ** 3 * radius ** 2)) ** (1 / 3);
}

export interface Contact {
  readonly force: number;
  readonly radius: number;
  readonly modulus: number;
  readonly poisson: number;
}

/** Plane-strain modulus of the flat; the ball counts as rigid. */
function contactModulus({ force, radius, modulus, poisson }: Contact): number {
  requirePositive('contact', { force, radius, modulus });
  if (!(poisson >= 0 && poisson <= 0.5)) throw new RangeError(`contact: ν must be 0 to .5, got ${poisson}`);
  return modulus / (1 - poisson ** 2);
}

/**
 * Drift of the aim with temperature: a screw and the plastic beside it, both of length s, grow differently:
 * (α_plastic − α_screw) s / a.
 *
 * @param options - plastic, screw: expansion [1/K]; length s, lever a [mm]
 * @returns drift [rad/K] @throws {RangeError} unless all > 0
 * Source: linear thermal expansion.
 */
export function thermalDrift(options: { plastic: number; screw: number; length: number; lever: number }): number {
  requirePositive('thermalDrift', options);
  return ((options.plastic - options.screw) * options.length) / options.lever;
}

/** Linear expansion of steel [1/K]. Source: common handbook value, carbon steel (from memory). */
export const STEEL_EXPANSION = 12e-6;

/** A beam's size along its way. w is its 1/e² radius; lengths mm, wavelengths nm, angles rad. */
import { requireNotNegative, requirePositive } from '../positive.js';

/** Widths of a Gaussian beam over its 1/e² radius w. Source: ISO 11146 and Siegman, Lasers, from memory; checked by hand from exp(−2 r²/w²). */
export const WIDTHS = {
  /** Full width at half of the middle's irradiance: √(2 ln 2). */
  fwhm: Math.sqrt(2 * Math.LN2),
  /** Radius that holds 99 % of the power: √(½ ln 100). */
  radius99: Math.sqrt(Math.log(100) / 2),
  /** Radius at 1/e of the middle's irradiance. */
  radius1e: Math.SQRT1_2,
} as const;

export interface GaussianBeam {
  /** Radius at its waist, w0. */
  readonly waist: number;
  /** Beam quality, M² ≥ 1; 1 for the best. */
  readonly quality: number;
  readonly wavelengthNm: number;
}

const NM = 1e-6;

/** @returns zR = π w0² / (M² λ): where the beam is √2 as wide as its waist @throws {RangeError} on figures out of range */
export function rayleighLength({ waist, quality, wavelengthNm }: GaussianBeam): number {
  requirePositive('rayleighLength', { waist, wavelengthNm });
  if (!(quality >= 1)) throw new RangeError(`rayleighLength: quality must be ≥ 1, got ${quality}`);
  return (Math.PI * waist ** 2) / (quality * wavelengthNm * NM);
}

/** @returns half of the far field's full angle, M² λ / (π w0) */
export const halfDivergence = (beam: GaussianBeam): number => beam.waist / rayleighLength(beam);

/**
 * @param distance - from the waist, z ≥ 0 @returns w(z) = w0 √(1 + (z/zR)²)
 * Source: ISO 11146; Siegman, Lasers, from memory.
 */
export function radiusAt(beam: GaussianBeam, distance: number): number {
  requireNotNegative('radiusAt', { distance });
  return beam.waist * Math.hypot(1, distance / rayleighLength(beam));
}

/**
 * A cheap, poorly collimated module by what can be measured: spot at its face and full angle.
 *
 * @param diameter - 1/e², at the face, > 0 @param divergenceMrad - full angle ≥ 0 @param distance - ≥ 0
 * @returns w = (d0 + φ L)/2, never less than the true radius
 * Source: common practice; the triangle inequality on w(z)'s hyperbola.
 */
export function coneRadius(
  { diameter, divergenceMrad }: { readonly diameter: number; readonly divergenceMrad: number },
  distance: number,
): number {
  requirePositive('coneRadius', { diameter });
  requireNotNegative('coneRadius', { divergenceMrad, distance });
  return (diameter + (divergenceMrad / 1000) * distance) / 2;
}

/** Light meant for a neighbour. Lengths mm, angles rad. */
import { requireNotNegative, requirePositive } from '../positive.js';

/**
 * How many beam radii a neighbour's receiver must keep off a laser beam for a ratio of its irradiance in the middle: √(ln(1/X)/2).
 *
 * @param ratio - X, 0 < X < 1 @returns k: p − a − r ≥ k w keeps below X, a the miss allowed, r the receiver's radius
 * Source: exp(−2 r²/w²).
 */
export function radiiApart(ratio: number): number {
  requirePositive('radiiApart', { ratio });
  if (!(ratio < 1)) throw new RangeError(`radiiApart: the ratio must be < 1, got ${ratio}`);
  return Math.sqrt(Math.log(1 / ratio) / 2);
}

/**
 * Irradiance that an LED gives its neighbour's receiver over what it gives its own.
 *
 * @param halfAngle - at which its intensity is half, θ½ @param pitch - to the neighbour @param distance - to the receivers
 * @returns cos^(m+3) β, m = −ln 2 / ln cos θ½, β = atan(p/L): intensity law cos^m, inverse square and slant
 * Source: generalized Lambert source; common practice for LEDs.
 */
export function ledNeighbour({
  halfAngle,
  pitch,
  distance,
}: {
  readonly halfAngle: number;
  readonly pitch: number;
  readonly distance: number;
}): number {
  requirePositive('ledNeighbour', { halfAngle, distance });
  requireNotNegative('ledNeighbour', { pitch });
  if (!(halfAngle < Math.PI / 2)) throw new RangeError(`ledNeighbour: the half angle must be < 90°, got ${halfAngle}`);
  const m = -Math.LN2 / Math.log(Math.cos(halfAngle));
  return Math.cos(Math.atan(pitch / distance)) ** (m + 3);
}

/** @returns depth from which on a tube can't see the neighbour's emitter at all: (d + s) L / 2p */
export function blindDepth({
  aperture,
  detector,
  distance,
  pitch,
}: {
  readonly aperture: number;
  readonly detector: number;
  readonly distance: number;
  readonly pitch: number;
}): number {
  requirePositive('blindDepth', { aperture, detector, distance, pitch });
  return ((aperture + detector) * distance) / (2 * pitch);
}

/** @param height - of the beams above the deck @returns angle at which a beam mirrored in the deck half way arrives, atan(2h/L) */
export function bounceAngle(height: number, distance: number): number {
  requirePositive('bounceAngle', { height, distance });
  return Math.atan((2 * height) / distance);
}

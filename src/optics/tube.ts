/** The tube before a detector: what it sees. Lengths mm, angles rad. */
import { requireNotNegative, requirePositive } from '../positive.js';

export interface Tube {
  /** Inside diameter at its mouth, d; detector's diameter, s ≤ d; from mouth to detector, l. */
  readonly aperture: number;
  readonly detector: number;
  readonly depth: number;
}

export interface ViewAngles {
  /** Up to here the whole detector sees the source, atan((d − s)/2l). */
  readonly full: number;
  /** Here about half of it, atan(d/2l). */
  readonly half: number;
  /** From here on none, atan((d + s)/2l). */
  readonly cutOff: number;
}

const check = ({ aperture, detector, depth }: Tube) => {
  requirePositive('tube', { aperture, detector, depth });
  if (detector > aperture)
    throw new RangeError(`tube: the detector, ${detector}, is wider than the aperture, ${aperture}`);
};

/** Source: slope, opening and limit angle of pyrheliometers, WMO guide to instruments (CIMO), from memory. */
export function viewAngles(tube: Tube): ViewAngles {
  check(tube);
  const { aperture, detector, depth } = tube;
  const at = (breadth: number) => Math.atan(breadth / (2 * depth));
  return { full: at(aperture - detector), half: at(aperture), cutOff: at(aperture + detector) };
}

/**
 * Parallel light at an angle through two equal discs: share that both pass.
 *
 * @param diameter - of both @param depth - between them @param angle - 0 to π/2
 * @returns (2/π)(acos x − x √(1 − x²)), x = l tan θ / d; 0 beyond x = 1
 * Source: area of two overlapping circles.
 */
export function vignetting({
  diameter,
  depth,
  angle,
}: {
  readonly diameter: number;
  readonly depth: number;
  readonly angle: number;
}): number {
  requirePositive('vignetting', { diameter, depth });
  requireNotNegative('vignetting', { angle });
  const x = (depth * Math.tan(angle)) / diameter;
  return x >= 1 ? 0 : (2 / Math.PI) * (Math.acos(x) - x * Math.sqrt(1 - x * x));
}

/**
 * View factor of two coaxial discs: share of what the first gives off evenly that meets the second.
 *
 * @param first - radius r1 @param second - radius r2 @param apart - a, all > 0
 * @returns ½ [S − √(S² − 4 (r2/r1)²)], S = 1 + (1 + R2²)/R1², R = r/a
 * Source: Siegel & Howell, Thermal Radiation Heat Transfer, configuration of coaxial parallel discs.
 */
export function discViewFactor(first: number, second: number, apart: number): number {
  requirePositive('discViewFactor', { first, second, apart });
  const [r1, r2] = [first / apart, second / apart];
  const s = 1 + (1 + r2 ** 2) / r1 ** 2;
  return (s - Math.sqrt(s ** 2 - 4 * (second / first) ** 2)) / 2;
}

/**
 * By how much the tube cuts diffuse light: 1 over the view factor from the detector to the mouth. A source that stands inside the
 * opening angle, the sun say, is not cut at all.
 */
export function diffuseRejection(tube: Tube): number {
  check(tube);
  return 1 / discViewFactor(tube.detector / 2, tube.aperture / 2, tube.depth);
}

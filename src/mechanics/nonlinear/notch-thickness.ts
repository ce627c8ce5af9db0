import { requirePositive } from '../../positive.js';

/**
 * Thickness along a right-circular notch: t + 2 (R − √(R² − (s − R)²)) after the length s, 0 ≤ s ≤ 2 R.
 *
 * @param radius - R of both faces [mm] @param thickness - t at the thinnest [mm]
 * @returns thickness by length [mm] @throws {RangeError} unless both are finite and > 0
 */
export function notchThickness(radius: number, thickness: number): (s: number) => number {
  requirePositive('notchThickness', { radius, thickness });
  return (s) => thickness + 2 * (radius - Math.sqrt(Math.max(0, radius ** 2 - (s - radius) ** 2)));
}

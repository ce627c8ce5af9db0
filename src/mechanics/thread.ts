/** Thread engagement: what a nut or a formed pilot needs to hold. */
import { requirePositive } from '../positive.js';

/**
 * Least length of thread formed in a plastic pilot: 1.5 nominal diameters.
 *
 * @param diameter - nominal [mm] @returns length [mm] @throws {RangeError} unless > 0
 * Source: common practice for screws formed in plastic (2 to 2.5 d where it is loaded).
 */
export function leastFormedEngagement(diameter: number): number {
  requirePositive('leastFormedEngagement', { diameter });
  return 1.5 * diameter;
}

/**
 * Least length of screw past a nut's bearing face: the whole nut and one pitch.
 *
 * @param nutHeight - [mm] @param pitch - [mm] @returns length [mm] @throws {RangeError} unless > 0
 * Source: common practice (the first thread carries nothing).
 */
export function leastNutEngagement(nutHeight: number, pitch: number): number {
  requirePositive('leastNutEngagement', { nutHeight, pitch });
  return nutHeight + pitch;
}

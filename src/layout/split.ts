/** Cutting what is longer than the bed. */

/** A length that only sums of decimals make longer than the bed is not [mm]. */
const HAIR = 1e-9;

export interface SplitOptions {
  readonly length: number;
  /** Places at which a cut is allowed, ascending. */
  readonly at: readonly number[];
  readonly longest: number;
  readonly shortest: number;
}

/**
 * Seams that cut a length into the fewest pieces, as even as the allowed places let them be.
 *
 * @returns places of the cuts, ascending; empty when it fits whole; null when no choice of places will do
 */
export function split({ length, at, longest, shortest }: SplitOptions): readonly number[] | null {
  for (let pieces = piecesFor(length, longest); pieces <= at.length + 1; pieces++) {
    const seams = Array.from({ length: pieces - 1 }, (_, i) => nearest(at, ((i + 1) * length) / pieces));
    const ends = [0, ...seams, length];
    const sizes = ends.slice(1).map((end, i) => end - ends[i]!);
    if (sizes.every((size) => size <= longest + HAIR && size >= shortest - HAIR)) return seams;
  }
  return null;
}

/** @returns the fewest even pieces of a length that are no longer than the longest */
export const piecesFor = (length: number, longest: number): number => Math.ceil((length - HAIR) / longest);

const nearest = (places: readonly number[], target: number): number =>
  places.reduce((best, place) => (Math.abs(place - target) < Math.abs(best - target) ? place : best), places[0]!);

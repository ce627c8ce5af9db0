/** Cutting what is longer than the bed. */

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
  for (let pieces = Math.ceil(length / longest); pieces <= at.length + 1; pieces++) {
    const seams = Array.from({ length: pieces - 1 }, (_, i) => nearest(at, ((i + 1) * length) / pieces));
    const ends = [0, ...seams, length];
    const sizes = ends.slice(1).map((end, i) => end - ends[i]!);
    if (sizes.every((size) => size <= longest + 1e-9 && size >= shortest - 1e-9)) return seams;
  }
  return null;
}

const nearest = (places: readonly number[], target: number): number =>
  places.reduce((best, place) => (Math.abs(place - target) < Math.abs(best - target) ? place : best), places[0]!);

/** Cutting what is longer than the bed. */

/** A length that only sums of decimals make longer than the bed is not [mm]. */
const HAIR = 1e-9;

export interface SplitOptions {
  readonly length: number;
  /** Places at which a cut is allowed, ascending. */
  readonly at: readonly number[];
  readonly longest: number;
  readonly shortest: number;
  /** Of a piece between two seams; left out: the same. */
  readonly shortestBetween?: number;
}

/**
 * Seams that cut a length into the fewest pieces, as even as the allowed places let them be.
 *
 * @returns places of the cuts, ascending; empty when it fits whole; null when no choice of places will do
 */
export function split({ length, at, longest, shortest, shortestBetween }: SplitOptions): readonly number[] | null {
  const least = Math.max(shortest, shortestBetween ?? 0);
  for (let pieces = piecesFor(length, longest); pieces <= at.length + 1; pieces++) {
    const fits = (size: number, i: number) =>
      size <= longest + HAIR && size >= (i > 0 && i < pieces - 1 ? least : shortest) - HAIR;
    const seams = Array.from({ length: pieces - 1 }, (_, i) => nearest(at, ((i + 1) * length) / pieces));
    const ends = [0, ...seams, length];
    if (ends.slice(1).every((end, i) => fits(end - ends[i]!, i))) return seams;
    const other = evenest([...at, length], { pieces, fits });
    if (other !== null) return other.slice(0, -1);
  }
  return null;
}

/** @returns ends of that many pieces, the last of `ends` the last, as even as those that fit can be; null: none fit */
function evenest(
  ends: readonly number[],
  { pieces, fits }: { readonly pieces: number; readonly fits: (size: number, i: number) => boolean },
): readonly number[] | null {
  const even = ends.at(-1)! / pieces;
  type Way = { readonly cost: number; readonly path: readonly number[] };
  let ways = new Map<number, Way>([[0, { cost: 0, path: [] }]]);
  for (let i = 0; i < pieces; i++) {
    const next = new Map<number, Way>();
    for (const [from, { cost, path }] of ways)
      for (const to of i === pieces - 1 ? ends.slice(-1) : ends.slice(0, -1)) {
        if (to <= from || !fits(to - from, i)) continue;
        const all = cost + (to - from - even) ** 2;
        if (all < (next.get(to)?.cost ?? Infinity) - HAIR) next.set(to, { cost: all, path: [...path, to] });
      }
    ways = next;
  }
  return ways.get(ends.at(-1)!)?.path ?? null;
}

/** @returns the fewest even pieces of a length that are no longer than the longest */
export const piecesFor = (length: number, longest: number): number => Math.ceil((length - HAIR) / longest);

const nearest = (places: readonly number[], target: number): number =>
  places.reduce((best, place) => (Math.abs(place - target) < Math.abs(best - target) ? place : best), places[0]!);

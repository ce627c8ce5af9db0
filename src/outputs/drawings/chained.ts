/** Pieces of line that follow one another, joined: a curve's dashes run on over its facets, and files get smaller. */
import type { Vec2 } from '../../solid/mesh.js';
import type { Segment } from './segment.js';

/** Ends in the same square of this size meet [mm]. */
const MEET = 1e-3;
/** Cosine of the sharpest turn that one line makes. */
const TURN = 0.5;

export function chained(segments: readonly Segment[]): readonly (readonly Vec2[])[] {
  // Ends by number: segment i begins at 2 i and stops at 2 i + 1; `next` walks the ends that meet.
  const first = new Map<number, number>();
  const next = new Int32Array(2 * segments.length).fill(-1);
  for (let end = 0; end < next.length; end++) {
    const key = keyOf(segments[end >> 1]![end & 1]!);
    next[end] = first.get(key) ?? -1;
    first.set(key, end);
  }
  const taken = new Uint8Array(segments.length);
  return segments.flatMap((segment, i) => {
    if (taken[i]) return [];
    taken[i] = 1;
    const forth = follow(segment);
    const back = follow([segment[1], segment[0]]);
    return [[...back.slice(2).reverse(), ...forth]];
  });

  /** A segment and what goes on from its second end, first point first. */
  function follow([from, to]: Segment): Vec2[] {
    const points: Vec2[] = [from, to];
    for (let a = from, b = to; ; ) {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      let most = TURN * Math.sqrt(dx * dx + dy * dy);
      let best = -1;
      for (let end = first.get(keyOf(b)) ?? -1; end >= 0; end = next[end]!) {
        if (taken[end >> 1]) continue;
        const far = segments[end >> 1]![1 - (end & 1)]!;
        const [ex, ey] = [far[0] - b[0], far[1] - b[1]];
        const along = (dx * ex + dy * ey) / Math.sqrt(ex * ex + ey * ey);
        if (along > most) {
          most = along;
          best = end;
        }
      }
      if (best < 0) return points;
      taken[best >> 1] = 1;
      a = b;
      b = segments[best >> 1]![1 - (best & 1)]!;
      points.push(b);
    }
  }
}

/** One number for both coordinates: drawings are far less than 2²⁵ squares high. */
const keyOf = ([x, y]: Vec2): number => Math.round(x / MEET) * 2 ** 26 + Math.round(y / MEET);

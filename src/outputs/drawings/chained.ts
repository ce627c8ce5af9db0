/** Pieces of line that follow one another, joined: a curve's dashes run on over its facets, and files get smaller. */
import type { Vec2 } from '../../solid/mesh.js';
import type { Segment } from './line-view.js';

/** Ends closer than this meet [mm]. */
const MEET = 1e-3;
/** Cosine of the sharpest turn that one line makes. */
const TURN = 0.5;

export function chained(segments: readonly Segment[]): readonly (readonly Vec2[])[] {
  const ends = new Map<string, number[]>();
  segments.forEach((segment, i) => {
    for (const end of segment) {
      const key = keyOf(end);
      const there = ends.get(key);
      if (there) there.push(i);
      else ends.set(key, [i]);
    }
  });
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
    for (;;) {
      const [a, b] = [points.at(-2)!, points.at(-1)!];
      let best: { readonly i: number; readonly end: Vec2; readonly cos: number } | null = null;
      for (const i of ends.get(keyOf(b)) ?? []) {
        if (taken[i]) continue;
        const [p, q] = segments[i]!;
        const end = keyOf(p) === keyOf(b) ? q : p;
        const cos =
          ((b[0] - a[0]) * (end[0] - b[0]) + (b[1] - a[1]) * (end[1] - b[1])) /
          (Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(end[0] - b[0], end[1] - b[1]));
        if (cos > Math.max(TURN, best?.cos ?? -1)) best = { i, end, cos };
      }
      if (!best) return points;
      taken[best.i] = 1;
      points.push(best.end);
    }
  }
}

const keyOf = ([x, y]: Vec2): string => `${Math.round(x / MEET)} ${Math.round(y / MEET)}`;

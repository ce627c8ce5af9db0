/**
 * Straight lines across a piece of a layer that nothing lies under. A line that is held at both ends can be drawn taut, as a
 * bridge; where there is none, what is printed there hangs on one side only.
 */
import type { Outlines, Vec2 } from '../../solid/mesh.js';
import type { Within } from './outline-index.js';

/** Ways in which chords are drawn: 7.5° apart, so that a span is at most .2 % too long. */
const WAYS = 24;
/** Chords are drawn along so many of its sides, too: beside a free edge only those stay within it. */
const LONGEST = 8;
/** A chord's end is held when the layer goes on beyond it by this [mm]. */
const BEYOND = 0.02;
/** Points along the longer side of the piece. */
const GRID = 16;

export interface Chords {
  /** Longest of the shortest held chords [mm]; 0 where there is none. */
  readonly span: number;
  /** Where that is. */
  readonly at: Vec2;
  /** Points on no held chord. */
  readonly loose: readonly Vec2[];
}

/**
 * @param held - is there more of the layer at that point?
 * @param enough - a chord no longer than this needs no shorter one [mm]
 */
export function chords(
  piece: Outlines,
  { inside, held, enough }: { readonly inside: Within; readonly held: Within; readonly enough: number },
): Chords {
  const sides = piece.flatMap((outline) => outline.map((from, i): Side => [from, outline[(i + 1) % outline.length]!]));
  const along = sides
    .map(([from, to]): [Vec2, number] => [unit(from, to), Math.hypot(to[0] - from[0], to[1] - from[1])])
    .sort(([, a], [, b]) => b - a)
    .slice(0, LONGEST)
    .map(([way]) => way);
  const round = Array.from({ length: WAYS }, (_, i): Vec2 => {
    const angle = (i * Math.PI) / WAYS;
    return [Math.cos(angle), Math.sin(angle)];
  });
  const ways = [...along, ...round];
  const loose: Vec2[] = [];
  let [span, at]: [number, Vec2] = [0, piece[0]![0]!];
  const flat = Float64Array.from(sides.flatMap(([[ax, ay], [bx, by]]) => [ax, ay, bx, by]));
  const ends = { back: 0, forth: 0 };
  let usual = 0;
  for (const point of probes(piece, inside)) {
    let shortest = Infinity;
    // The way that served the last point first.
    for (let n = 0; n < ways.length && shortest > enough; n++) {
      const i = (usual + n) % ways.length;
      reach(flat, point, ways[i]!, ends);
      if (ends.back + ends.forth >= shortest) continue;
      if (!holds(held, point, ways[i]!, ends.forth) || !holds(held, point, ways[i]!, -ends.back)) continue;
      shortest = ends.back + ends.forth;
      if (shortest <= enough) usual = i;
    }
    if (shortest === Infinity) loose.push(point);
    else if (shortest > span) [span, at] = [shortest, point];
  }
  return { span, at, loose };
}

type Side = readonly [Vec2, Vec2];

/** Points all over the piece, and just within each of its corners. */
function probes(piece: Outlines, inside: Within): readonly Vec2[] {
  const all = piece.flat();
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, bottom] = [Math.min(...xs), Math.min(...ys)];
  const [width, depth] = [Math.max(...xs) - left, Math.max(...ys) - bottom];
  const step = Math.max(width, depth) / GRID;
  const found: Vec2[] = [];
  const columns = Math.max(1, Math.round(width / step));
  const rows = Math.max(1, Math.round(depth / step));
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++)
      found.push([left + ((i + 0.5) / columns) * width, bottom + ((j + 0.5) / rows) * depth]);
  const nudge = Math.min(0.02, step / 4);
  for (const outline of piece)
    outline.forEach((corner, i) => {
      const [a, b] = [outline.at(i - 1)!, outline[(i + 1) % outline.length]!];
      const [p, q] = [unit(a, corner), unit(b, corner)];
      const [x, y] = [p[0] + q[0], p[1] + q[1]];
      // Along a straight side there is no corner to look at.
      if (Math.hypot(x, y) > 0.1) found.push([corner[0] - nudge * x, corner[1] - nudge * y]);
    });
  return found.filter(inside);
}

const unit = (from: Vec2, to: Vec2): Vec2 => {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
};

/** How far from the point to the piece's edge, back and forth along a way. */
function reach(sides: Float64Array, point: Vec2, way: Vec2, ends: { back: number; forth: number }): void {
  const x = point[0];
  const y = point[1];
  const dx = way[0];
  const dy = way[1];
  ends.back = Infinity;
  ends.forth = Infinity;
  for (let i = 0; i < sides.length; i += 4) {
    const ax = sides[i]! - x;
    const ay = sides[i + 1]! - y;
    const bx = sides[i + 2]! - x;
    const by = sides[i + 3]! - y;
    const sa = ax * dy - ay * dx;
    const sb = bx * dy - by * dx;
    if (sa > 0 === sb > 0) continue;
    const share = sa / (sa - sb);
    const along = (ax + share * (bx - ax)) * dx + (ay + share * (by - ay)) * dy;
    if (along >= 0) {
      if (along < ends.forth) ends.forth = along;
    } else if (-along < ends.back) ends.back = -along;
  }
}

function holds(held: Within, point: Vec2, way: Vec2, far: number): boolean {
  const end = far + Math.sign(far) * BEYOND;
  return held([point[0] + end * way[0], point[1] + end * way[1]]);
}

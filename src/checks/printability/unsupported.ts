/** What a layer adds that nothing lies under, piece by piece: bridge, hanging on one side, or island. */
import type { Outlines, Vec2, Vec3 } from '../../solid/mesh.js';
import { signedArea } from '../../solid/outlines.js';
import { outlinesBox } from '../../solid/outlines-box.js';
import type { Profiles } from '../../solid/profiles.js';
import { chords } from './chords.js';
import { type PrintLimits, RELIEF_REACH } from './limits.js';
import { type Within, within } from './outline-index.js';

export interface Unsupported {
  readonly kind: 'bridge' | 'hang' | 'island';
  /** Bridge: from support to support. Hang: how far it reaches out from the layer beneath. Island: its width [mm]. */
  readonly size: number;
  readonly at: Vec3;
  readonly area: number;
  readonly box: { readonly min: Vec2; readonly max: Vec2 };
}

/** Thinner slivers come from rounding and facets [mm]. */
const SLIVER = 0.002;
/** Slopes of just the limit stay within this [mm]. */
const SLACK = 0.002;
/** A sliver with this share of its rim held is closed in from both sides; one with less than the lower is held at its ends only. */
const BOTH_SIDES = 0.75;
const ONE_SIDE = 0.35;

/** A layer's section where it is looked at, what lies around that, and the layer beneath; its height, for places [mm]. */
export interface Layer {
  readonly layer: Outlines;
  readonly around: Outlines;
  readonly beneath: Outlines;
  readonly z: number;
  /** Is there something, if only the bed, so far beneath that what hangs over it is relief? */
  readonly floor: Within;
}

/**
 * @returns the pieces of the layer that reach further out than the printer's overhang allows
 */
export function unsupported(
  plane: Profiles,
  { layer, around, beneath, z, floor }: Layer,
  limits: PrintLimits,
): readonly Unsupported[] {
  const grown = limits.step + SLACK;
  const added = plane.difference(layer, plane.offset(beneath, grown, { corners: 'miter' }));
  if (added.length === 0) return [];
  const goesOn = within(around);
  return plane.pieces(added).flatMap((piece): readonly Unsupported[] => {
    if (plane.offset(piece, -SLIVER / 2, { corners: 'miter' }).length === 0) return [];
    const box = outlinesBox(piece);
    const inside = within(piece);
    const one = { box, area: piece.reduce((sum, outline) => sum + signedArea(outline), 0) };
    const rim = rimOf(piece, goesOn);
    const place = ([x, y]: Vec2): Vec3 => [x, y, z];
    const widest = (rim.free[0] ?? rim.held[0]!)[0];
    const narrower = (d: number) => plane.offset(piece, -d / 2, { corners: 'miter' }).length === 0;
    if (rim.held.length === 0) return [{ ...one, kind: 'island', size: width(plane, piece), at: place(widest) }];
    // Held all around, it spans no more than its largest circle.
    if (rim.free.length === 0)
      return narrower(limits.bridge / 2 - 2 * grown)
        ? []
        : [{ ...one, kind: 'bridge', size: width(plane, piece) + 2 * grown, at: place(widest) }];
    const hanging = (points: readonly Vec2[]): readonly Unsupported[] => {
      const { point, reach } = farthest(points, rim.held);
      const size = reach + grown;
      // Marks cross each other: for the most part there is ground under its edge.
      if (size <= RELIEF_REACH && 2 * rim.free.filter((part) => floor(inward(part))).length >= rim.free.length)
        return [];
      return [{ ...one, kind: 'hang', size, at: place(point) }];
    };
    // A strip held along both sides is next to nothing; along one, it hangs; at its ends alone, it is a thin bridge.
    if (rim.share >= ONE_SIDE && narrower(limits.line))
      return rim.share >= BOTH_SIDES ? [] : hanging(rim.free.map(([a, b]) => between(a, b, 0.5)));
    const { span, at, loose } = chords(piece, {
      inside,
      held: goesOn,
      enough: limits.bridge / 2 - 2 * grown,
    });
    return loose.length > 0 ? hanging(loose) : [{ ...one, kind: 'bridge', size: span + 2 * grown, at: place(at) }];
  });
}

const INWARD = 0.05;

type Side = readonly [Vec2, Vec2];

/** A piece's rim in short sides: those beyond which the layer goes on, and those at its own edge. */
function rimOf(piece: Outlines, goesOn: Within) {
  const held: Side[] = [];
  const free: Side[] = [];
  const length = piece.reduce((sum, outline) => sum + outline.reduce((s, p, i) => s + far(p, next(outline, i)), 0), 0);
  const step = Math.max(0.02, Math.min(0.25, length / 60), length / 2000);
  for (const outline of piece)
    outline.forEach((from, i) => {
      const to = next(outline, i);
      const side = far(from, to);
      if (side === 0) return;
      const count = Math.max(1, Math.round(side / step));
      // Outlines keep what they enclose on their left: outward is to the right.
      const [ox, oy] = [((to[1] - from[1]) / side) * 0.01, (-(to[0] - from[0]) / side) * 0.01];
      for (let k = 0; k < count; k++) {
        const part: Side = [between(from, to, k / count), between(from, to, (k + 1) / count)];
        const [x, y] = between(...part, 0.5);
        (goesOn([x + ox, y + oy]) ? held : free).push(part);
      }
    });
  const share = (sides: readonly Side[]) => sides.reduce((sum, [a, b]) => sum + far(a, b), 0) / length;
  return { held, free, share: share(held) };
}

/** A place just within a piece, beside the middle of one of its sides. */
function inward([from, to]: Side): Vec2 {
  const length = far(from, to);
  const [x, y] = between(from, to, 0.5);
  return [x - ((to[1] - from[1]) / length) * INWARD, y + ((to[0] - from[0]) / length) * INWARD];
}

/** Width of the widest place of a piece, twice the largest circle's radius, found to a thousandth [mm]. */
function width(plane: Profiles, piece: Outlines): number {
  const holds = (d: number) => plane.offset(piece, -d / 2, { corners: 'miter' }).length > 0;
  const { min, max } = outlinesBox(piece);
  let [low, high] = [0, Math.min(max[0] - min[0], max[1] - min[1])];
  while (high - low > 1e-3) {
    const d = (low + high) / 2;
    if (holds(d)) low = d;
    else high = d;
  }
  return low;
}

const next = (outline: readonly Vec2[], i: number): Vec2 => outline[(i + 1) % outline.length]!;
const between = (a: Vec2, b: Vec2, share: number): Vec2 => [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
const far = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The point that is farthest from all the sides, and how far it is. */
function farthest(points: readonly Vec2[], sides: readonly Side[]): { readonly point: Vec2; readonly reach: number } {
  let most = { point: points[0]!, reach: -1 };
  for (const point of points) {
    let least = Infinity;
    for (const [a, b] of sides) {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const along = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / (dx * dx + dy * dy);
      const share = Math.min(1, Math.max(0, along));
      least = Math.min(least, (point[0] - a[0] - share * dx) ** 2 + (point[1] - a[1] - share * dy) ** 2);
      if (least <= most.reach) break;
    }
    if (least > most.reach) most = { point, reach: least };
  }
  return { ...most, reach: Math.sqrt(most.reach) };
}

/** Chance that a touch flips the line it was meant for, and no other. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { normalBetween } from './normal.js';

/** A touch aimed at one line of many. All lengths mm. */
export interface Touch {
  /** Between neighbouring lines, p. */
  readonly pitch: number;
  /** A line flips when the finger's middle is nearer than this, b. */
  readonly reach: number;
  /** Standard deviation of where the finger lands, along this axis, s. */
  readonly scatter: number;
  /** Where touches land on average, beside the line. Default 0. */
  readonly bias?: number;
  /** Lines there are before and behind the aimed one. Default: as many as can matter. */
  readonly neighbours?: readonly [number, number];
}

/** Chances, 1 in all. */
export interface Hit {
  /** The aimed line flips, alone. */
  readonly aimed: number;
  /** It flips, with one neighbour or more. */
  readonly double: number;
  /** One other line or more flips, and the aimed one does not. */
  readonly wrong: number;
  /** The finger falls into a dead gap: no line flips. */
  readonly none: number;
}

/** Beyond this many standard deviations a touch does not land: less than 1e-18. */
const FAR = 9;

/**
 * Exact for any reach: line k flips where |x − k p| < b, so the edges k p ± b cut the axis into pieces in each of which the same lines
 * flip; the normal law gives each piece its chance.
 *
 * Known cases: dead gaps exist for 2 b < p, doubles for 2 b > p. For 2 b ≤ p: aimed = P(|x| < b). For p < 2 b ≤ 2 p:
 * double = 2 (Φ(b/s) − Φ((p − b)/s)). A finger that reaches three lines at once, 2 b > 2 p, is counted as double.
 *
 * @throws {RangeError} unless pitch, reach and scatter are above zero and the neighbours whole and ≥ 0
 * Source: worked out here; touches taken as normal about their aim, as Bi & Zhai 2013 do.
 */
export function hitChance({ pitch, reach, scatter, bias = 0, neighbours }: Touch): Hit {
  requirePositive('hitChance', { pitch, reach, scatter });
  if (!Number.isFinite(bias)) throw new RangeError(`hitChance: bias must be finite, got ${bias}`);
  const spread = FAR * scatter + Math.abs(bias);
  const matter = Math.ceil((spread + reach) / pitch);
  const [before, behind] = (neighbours ?? [matter, matter]).map((n) => {
    if (!(Number.isInteger(n) && n >= 0)) throw new RangeError(`hitChance: neighbours must be whole and ≥ 0, got ${n}`);
    return Math.min(n, matter);
  });
  const lines = Array.from({ length: before! + behind! + 1 }, (_, i) => (i - before!) * pitch);
  const edges = [...new Set([-Infinity, ...lines.flatMap((at) => [at - reach, at + reach]), Infinity])].sort(
    (a, b) => a - b,
  );

  const chance = { aimed: 0, double: 0, wrong: 0, none: 0 };
  for (const [i, to] of edges.entries()) {
    if (i === 0) continue;
    const from = edges[i - 1]!;
    const middle = Number.isFinite(from) ? (Number.isFinite(to) ? (from + to) / 2 : from + 1) : to - 1;
    const flipped = lines.filter((at) => Math.abs(middle - at) < reach);
    const hit = flipped.includes(0);
    const outcome = flipped.length === 0 ? 'none' : !hit ? 'wrong' : flipped.length === 1 ? 'aimed' : 'double';
    chance[outcome] += normalBetween((from - bias) / scatter, (to - bias) / scatter);
  }
  return chance;
}

/**
 * A key is a crossing: both axes have to hit, and they scatter independently.
 *
 * @returns aimed: this key alone; double: this key with others; wrong: others only; none: on one axis or both nothing flips
 */
export function hitKey(x: Hit, y: Hit): Hit {
  const some = (1 - x.none) * (1 - y.none);
  const reached = (x.aimed + x.double) * (y.aimed + y.double);
  const aimed = x.aimed * y.aimed;
  return { aimed, double: reached - aimed, wrong: some - reached, none: 1 - some };
}

/** Axis of the scatter: x across the body, y away from it. */
export type Axis = 'x' | 'y';

/** Scatter of touches of a target of size d, σ² = a d² + b [mm²], along x and y. */
export const SCATTER = {
  x: { grows: 0.0075, least: 1.68 },
  y: { grows: 0.0108, least: 1.33 },
  source: 'Bi & Zhai 2013, fingers on a touch screen (FFitts law), figures through a public restatement',
} as const;

/**
 * Standard deviation of touches aimed at a key, by its size along the axis: √(a d² + b).
 *
 * @param size - d, the key's pitch [mm], ≥ 0 @returns s [mm]
 * @throws {RangeError} on negative sizes
 * Source: Bi & Zhai 2013 as restated. Measured on glass that is touched; in the air above a deck it may be more.
 */
export function touchScatter(size: number, axis: Axis): number {
  requireNotNegative('touchScatter', { size });
  const { grows, least } = SCATTER[axis];
  return Math.sqrt(grows * size ** 2 + least);
}

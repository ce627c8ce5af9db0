/** Which pitch suits the fingers that will use a panel. All lengths mm. */
import { requirePositive } from '../positive.js';
import { breadthAt, reach } from './finger-block.js';
import { type Axis, hitChance, touchScatter } from './finger-hit.js';

export interface PitchAsk {
  readonly axis: Axis;
  /** Fingers to serve, narrowest to broadest. */
  readonly breadths: readonly number[];
  /** Of the beams above the deck. */
  readonly height: number;
  /** How far a finger's edge must pass a beam's middle to flip its receiver. */
  readonly overlap: number;
  /** Pitches to try, and their step. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Chance of hitting only the aimed line, wanted for every finger. */
  readonly wanted: number;
}

export interface PitchTried {
  readonly pitch: number;
  /** Chance of hitting the aimed line alone, of the finger that does worst, and that finger's breadth. */
  readonly aimed: number;
  readonly worst: number;
}

export interface PitchAnswer {
  /** The smallest pitch that serves every finger as wanted, or null. */
  readonly least: PitchTried | null;
  /** The pitch at which the worst-served finger does best; the smallest of equals. */
  readonly best: PitchTried;
  /** Between these no finger can flip two lines, or fall between them, whatever its aim. Empty (from > to) where fingers differ too much. */
  readonly sure: { readonly from: number; readonly to: number };
}

/**
 * Tries pitch by pitch: touch scatter grows with the pitch, doubles fall with it and dead gaps grow, so neither end is best.
 *
 * No double for 2 b ≤ p with the broadest finger, no dead gap for 2 b ≥ p with the narrowest, b = f_eff/2 − c.
 *
 * @returns null where a finger does not flip a receiver at all: it is narrower at the beams than twice the overlap
 * @throws {RangeError} on figures out of range
 */
export function pitchFor(ask: PitchAsk): PitchAnswer | null {
  const { breadths, from, to, step, wanted } = ask;
  requirePositive('pitchFor', { fingers: breadths.length, from, step, wanted });
  if (!(to >= from)) throw new RangeError(`pitchFor: pitches must run upward, got ${from} to ${to}`);
  if (!(wanted < 1)) throw new RangeError(`pitchFor: wanted must be < 1, got ${wanted}`);
  const fingers = breadths.map((breadth) => ({ breadth, b: reach(breadthAt(breadth, ask.height), ask.overlap) }));
  const reached = fingers.flatMap(({ breadth, b }) => (b === null ? [] : [{ breadth, b }]));
  if (reached.length < fingers.length) return null;

  const steps = Math.floor((to - from) / step + 1e-9);
  const tried = Array.from({ length: steps + 1 }, (_, i): PitchTried => {
    const pitch = from + i * step;
    const scatter = touchScatter(pitch, ask.axis);
    const chances = reached.map(({ breadth, b }) => ({
      aimed: hitChance({ pitch, reach: b, scatter }).aimed,
      worst: breadth,
    }));
    return { pitch, ...chances.reduce((low, one) => (one.aimed < low.aimed ? one : low)) };
  });
  const reaches = reached.map(({ b }) => b);
  return {
    least: tried.find(({ aimed }) => aimed >= wanted) ?? null,
    best: tried.reduce((top, one) => (one.aimed > top.aimed ? one : top)),
    sure: { from: 2 * Math.max(...reaches), to: 2 * Math.min(...reaches) },
  };
}

/** Whole grids drawn at random and aligned by true rotations: a second opinion on the budget. */
import { canAlign, drawChannel, drawsOf, type Share, shareOf } from '../../optics/sample.js';
import { tiltRange } from './aim.js';
import type { LightBudget } from './budget.js';

export interface SampledLine extends Share {
  readonly line: 'column' | 'row';
  readonly count: number;
  /** By the budget. */
  readonly chance: number;
}

export interface GridSamples {
  readonly grids: number;
  readonly seed: number;
  readonly lines: readonly SampledLine[];
  /** Grids of which every line can be aligned with the emitters at hand. */
  readonly all: Share & { readonly chance: number };
}

/** Grids between two calls of `progress`. */
const CHUNK = 500;

/**
 * @param options - grids to draw, whole, > 0; seed, whole @param progress - called now and then with the share that is done
 * @returns shares with their standard errors, beside what the budget says
 */
export function sampleGrids(
  { aim, exit }: LightBudget,
  { grids, seed }: { readonly grids: number; readonly seed: number },
  progress: (share: number) => void = () => {},
): GridSamples {
  const { inputs } = aim;
  const draws = drawsOf(seed);
  const scatter = { boresight: inputs.boresight, wedge: inputs.wedge, yaw: inputs.mountError, tilt: inputs.mountError };
  const benches = aim.lines.map(({ distance, tolerance }) => ({
    distance,
    exit,
    range: tiltRange(inputs),
    tolerance,
    slide: inputs.slide,
  }));
  const good = aim.lines.map(() => 0);
  let whole = 0;
  for (let grid = 0; grid < grids; grid += 1) {
    let missed = 0;
    aim.lines.forEach(({ count }, i) => {
      for (let k = 0; k < count; k += 1) {
        if (canAlign(drawChannel(draws, scatter), benches[i]!)) good[i]! += 1;
        else missed += 1;
      }
    });
    if (missed === 0) whole += 1;
    if ((grid + 1) % CHUNK === 0) progress((grid + 1) / grids);
  }
  return {
    grids,
    seed,
    lines: aim.lines.map(({ line, count, chance }, i) => ({
      line,
      count,
      chance,
      ...shareOf(good[i]!, grids * count),
    })),
    all: { chance: aim.all, ...shareOf(whole, grids) },
  };
}

/** A sweep as it is told: its rows, which of them no other beats, which is taken and drawn. */
import type { Spec } from '../spec/spec.js';
import { best, nearest } from './choose.js';
import { unbeaten } from './pareto.js';
import type { Plan } from './points.js';
import { type Travel, travelOf } from './travel.js';
import { passes, type TuneRow } from './types.js';

export interface TuneReport {
  readonly spec: Spec;
  readonly plan: Plan;
  readonly rows: readonly TuneRow[];
  /** Numbers of the designs that no other beats. */
  readonly front: ReadonlySet<number>;
  /** By rule; undefined where nothing passes. */
  readonly best: TuneRow | undefined;
  /** What is drawn: the one that was picked, else the best, else the nearest miss. */
  readonly shown: TuneRow | undefined;
  readonly travel: Travel | undefined;
}

/** @param pick - number of the design to draw; default: the best */
export function reportOf(
  spec: Spec,
  { plan, rows, pick }: { readonly plan: Plan; readonly rows: readonly TuneRow[]; readonly pick?: number | undefined },
): TuneReport {
  const front = unbeaten(rows);
  const taken = best(rows, front);
  const shown = pick === undefined ? (taken ?? nearest(rows)) : rows.find(({ point }) => point.number === pick);
  const travel = shown?.figures ? travelOf(spec, shown.point) : undefined;
  return { spec, plan, rows, front, best: taken, shown, travel };
}

export const passing = (rows: readonly TuneRow[]): number => rows.filter(passes).length;

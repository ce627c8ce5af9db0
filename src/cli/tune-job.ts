/** A share of a sweep's designs: in this thread, or in a worker. */
import type { Spec } from '../spec/spec.js';
import { evaluate } from '../tune/evaluate.js';
import type { TunePoint, TuneRow } from '../tune/types.js';

export interface TuneJob {
  readonly spec: Spec;
  readonly points: readonly TunePoint[];
}

/** What a worker says: so many more are done, or all of them. */
export type TuneMessage = { readonly done: number } | { readonly rows: readonly TuneRow[] };

/** Designs between two reports. */
const REPORT = 10;

/** @param progress - called with how many more are done */
export function runTuneJob({ spec, points }: TuneJob, progress: (done: number) => void): readonly TuneRow[] {
  const rows: TuneRow[] = [];
  for (const point of points) {
    rows.push(evaluate(spec, point));
    if (rows.length % REPORT === 0) progress(REPORT);
  }
  progress(rows.length % REPORT);
  return rows;
}

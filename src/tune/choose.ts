/** Which design to take, and which comes nearest where none passes. */
import { QUIET, STRESS_SAFETY } from '../layout/leaf-search.js';
import { unbeaten } from './pareto.js';
import { passes, type TuneRow } from './types.js';

export const RULE = `of the unbeaten designs those that also hold when printed 0.05 mm thinner or thicker, and of these those that ring at ${QUIET} Hz or above, where there are any; of what is left the shortest mount, to half a millimetre, and then the one with the most room to its nearest limit`;

/** @returns the best by `RULE`, or undefined where nothing passes */
export function best(rows: readonly TuneRow[], front: ReadonlySet<number> = unbeaten(rows)): TuneRow | undefined {
  const open = rows.filter((row) => front.has(row.point.number));
  const sure = some(open, ({ remarks }) => !remarks.includes('thick') && !remarks.includes('thin'));
  const quiet = some(sure, ({ remarks }) => !remarks.includes('quiet'));
  const halves = ({ mount }: TuneRow) => Math.round(2 * mount!.length);
  return quiet.toSorted(
    (a, b) => halves(a) - halves(b) || worstMargin(b) - worstMargin(a) || a.point.number - b.point.number,
  )[0];
}

/** Those that have it, or all where none has. */
function some(rows: readonly TuneRow[], has: (row: TuneRow) => boolean): readonly TuneRow[] {
  const those = rows.filter(has);
  return those.length > 0 ? those : rows;
}

/** Room to the nearest limit, as a share of it: strain when printed thick, stress, preload when printed thin. */
export function worstMargin({ figures }: TuneRow): number {
  const { strain, strainAllowed, thicker, thinner, stopSafety, preloadRatio } = figures!;
  const thick = strain * (1 + (thicker?.strain ?? 0) / 100);
  const thin = preloadRatio * (1 + (thinner?.stiffness ?? 0) / 100);
  return Math.min(1 - thick / strainAllowed, 1 - STRESS_SAFETY / stopSafety, 1 - 1 / thin);
}

/** Where nothing passes: the design whose misses, as shares of their limits, come to the least. */
export function nearest(rows: readonly TuneRow[]): TuneRow | undefined {
  const measured = rows.filter(({ figures, faults }) => figures !== null && faults.every(({ limit }) => limit));
  return measured.filter((row) => !passes(row)).toSorted((a, b) => missOf(a) - missOf(b))[0];
}

const missOf = ({ faults }: TuneRow): number =>
  faults.reduce((sum, { measured, limit }) => sum + Math.abs(measured! / limit! - 1), 0);

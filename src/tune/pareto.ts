/** Designs that no other beats in everything at once. */
import { QUIET } from '../layout/leaf-search.js';
import { passes, type TuneRow } from './types.js';

/** What a design is compared by. */
export interface Objective {
  readonly name: string;
  readonly unit: string;
  readonly aim: 'most' | 'least';
  /** Values are compared in steps of this: what is less than a printer or a hand can tell does not count. */
  readonly step: number;
  readonly of: (row: TuneRow) => number;
}

export const OBJECTIVES: readonly Objective[] = [
  {
    name: 'strain margin',
    unit: '% of what is allowed',
    aim: 'most',
    step: 5,
    of: ({ figures }) => 100 * (1 - figures!.strain / figures!.strainAllowed),
  },
  { name: 'push left after a year', unit: 'N', aim: 'most', step: 0.05, of: ({ figures }) => figures!.preloadLeft },
  { name: 'mount length', unit: 'mm', aim: 'least', step: 1, of: ({ mount }) => mount!.length },
  {
    name: 'travel at the receiver per turn',
    unit: 'mm',
    aim: 'least',
    step: 0.25,
    of: ({ figures }) => figures!.mmPerTurn,
  },
  // What is quiet enough does not get better by being stiffer.
  {
    name: `first frequency as far as ${QUIET} Hz`,
    unit: 'Hz',
    aim: 'most',
    step: 10,
    of: ({ figures }) => Math.min(QUIET, figures!.frequency),
  },
];

/**
 * Of the designs that pass, those that no other passing design equals in every objective and beats in one.
 *
 * @returns their numbers, in the order of the rows
 */
export function unbeaten(rows: readonly TuneRow[], objectives: readonly Objective[] = OBJECTIVES): ReadonlySet<number> {
  const passing = rows.filter(passes);
  // Whole steps; less is better throughout.
  const scores = passing.map((row) =>
    objectives.map(({ aim, step, of }) => Math.round(((aim === 'least' ? 1 : -1) * of(row)) / step)),
  );
  const front: number[] = [];
  // What beats a design comes before it in this order, so that only the front so far has to be asked.
  const order = passing.map((_, i) => i).sort((a, b) => compare(scores[a]!, scores[b]!));
  for (const i of order) if (!front.some((j) => beats(scores[j]!, scores[i]!))) front.push(i);
  return new Set(front.sort((a, b) => a - b).map((i) => passing[i]!.point.number));
}

function compare(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, i) => value !== b[i]);
  return k < 0 ? 0 : a[k]! - b[k]!;
}

/** a is as good as b in everything, and better in something. */
const beats = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, i) => value <= b[i]!) && a.some((value, i) => value < b[i]!);

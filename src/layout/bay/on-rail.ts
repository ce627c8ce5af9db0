/** Where along its rail a row of trays begins, so that every tray finds its screws and the first one its wires. mm. */
import type { Spec } from '../../spec/spec.js';
import { upTenth } from '../fits.js';
import type { FrameLayout } from '../frame.js';
import type { RailRun } from '../runs.js';
import type { Heights } from './fixing.js';
import { type Held, holdOnRail } from './hold.js';
import { placeModules } from './place.js';
import { fromEnd } from './sizes.js';
import type { Row } from './units.js';

/** Between the end of a corner post's tab and the first screw of a tray: the cover's first boss stands there. */
const ON_RAIL = 14.5;
/** Between beginnings tried: screws and seams leave gaps of about this. */
const STEP = 3;

export interface OnRail {
  readonly spec: Spec;
  readonly run: RailRun;
  readonly frame: FrameLayout;
  /** Breadth of the notch for them. */
  readonly wires: number;
  readonly heights: Heights;
}

/**
 * Every tray has to reach the rail by its screws, and none goes further out than the corner posts' outer faces.
 *
 * @returns the least and the most; the most is less where there is no such place
 */
export function startsOf(
  row: Row,
  { spec, run, frame }: Pick<OnRail, 'spec' | 'run' | 'frame'>,
): readonly [number, number] {
  const { wall, width } = frame.section;
  const outside = row.length + 2 * wall;
  const [first, last] = [row.trays[0]!.length + 2 * wall, row.trays.at(-1)!.length + 2 * wall];
  const reach = frame.tab.reach + ON_RAIL + fromEnd(spec, frame);
  return [
    Math.max(-width, reach - first),
    Math.min(run.length + width - outside, run.length - reach - (outside - last)),
  ];
}

/** @returns the beginning nearest to the middle at which all is held, else the middle and what is missed there; null: none */
export function standOnRail(row: Row, on: OnRail): { readonly start: number; readonly held: Held } | null {
  const { spec, run, frame, wires, heights } = on;
  const [least, most] = startsOf(row, on);
  if (least > most + 1e-9) return null;
  const { wall } = frame.section;
  const { units } = placeModules(spec, row, { wall, heights, apart: false });
  const at = (start: number) => ({
    start,
    held: holdOnRail(units, { run, start, frame, wires, top: heights.top, spec }),
  });
  const middle = upTenth(Math.min(most, Math.max(least, (run.length - row.length - 2 * wall) / 2)));
  const first = at(middle);
  if (first.held.mistakes.length === 0) return first;
  for (let off = STEP; middle - off >= least || middle + off <= most; off += STEP)
    for (const start of [middle - off, middle + off]) {
      if (start < least || start > most) continue;
      const tried = at(upTenth(start));
      if (tried.held.mistakes.length === 0) return tried;
    }
  return first;
}

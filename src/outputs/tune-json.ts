/** `tune.json`: the sweep for other programs. Lengths in mm, angles in degrees, strains in per cent. */
import { RULE } from '../tune/choose.js';
import { OBJECTIVES } from '../tune/pareto.js';
import type { TuneReport } from '../tune/report.js';
import type { TravelState } from '../tune/travel.js';
import { FAULTS, type Fault, REMARKS } from '../tune/types.js';
import type { OutputFile } from './context.js';
import { type Json, jsonText, tidy } from './json-text.js';
import { fieldsOf } from './tune-fields.js';

/** By its format a folder is known for a sweep's: nothing else is ever overwritten. */
export const TUNE_FORMAT = 'beamloom-tune/1';

export function tuneData(report: TuneReport): { readonly [key: string]: Json } {
  const { spec, plan, rows, front, best, shown, travel } = report;
  const state = ({ turns, tilt, force, stress, strain }: TravelState): Json => [
    tidy(turns, 4),
    tidy(tilt, 4),
    tidy(force, 4),
    tidy(stress, 3),
    tidy(strain, 4),
  ];
  return {
    format: TUNE_FORMAT,
    title: spec.title,
    preset: spec.name,
    varied: Object.fromEntries(plan.axes.map(({ path, values }) => [path, values])),
    varied_by_default: plan.byDefault,
    left_out: plan.left,
    objectives: OBJECTIVES.map(({ name, unit, aim, step }) => ({ name, unit, aim, step })),
    rule: RULE,
    meanings: {
      fails: Object.fromEntries(Object.entries(FAULTS).map(([code, { what }]) => [code, what])),
      remarks: Object.fromEntries(Object.entries(REMARKS).map(([code, { what }]) => [code, what])),
    },
    best: best?.point.number ?? null,
    unbeaten: [...front],
    designs: rows.map((row) => ({ ...Object.fromEntries(fieldsOf(row, report)), limits: row.faults.map(faultData) })),
    travel:
      shown && travel
        ? {
            number: shown.point.number,
            columns: ['turns', 'tilt_deg', 'force_n', 'stress_mpa', 'strain_pct'],
            states: travel.states.map(state),
            marks: Object.fromEntries(Object.entries(travel.marks).map(([mark, at]) => [mark, state(at)])),
            stress_allowed_mpa: tidy(travel.stressAllowed, 3),
            strain_allowed_pct: tidy(travel.strainAllowed, 4),
          }
        : null,
  };
}

export const tuneJson = (report: TuneReport): OutputFile => ({
  path: 'tune.json',
  bytes: new TextEncoder().encode(jsonText(tuneData(report))),
});

const faultData = ({ code, measured, limit, unit, message }: Fault): Json => ({
  code,
  measured: measured === null ? null : tidy(measured, 4),
  limit: limit === null ? null : tidy(limit, 4),
  unit,
  ...(message !== undefined && { message }),
});

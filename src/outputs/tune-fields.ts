/** The figures of a design by name and unit: what `tune.csv` and `tune.json` hold. */
import type { TuneReport } from '../tune/report.js';
import { passes, type ThicknessEffect, type TuneRow } from '../tune/types.js';
import { tidy } from './json-text.js';

export type Field = readonly [name: string, value: number | string | boolean | null];

/** @returns the fields of one design, always the same names in the same order */
export function fieldsOf(row: TuneRow, { spec, front }: Pick<TuneReport, 'spec' | 'front'>): readonly Field[] {
  const { point, mount, figures, faults, remarks } = row;
  const n = (value: number | undefined, digits: number) => (value === undefined ? null : tidy(value, digits));
  const effect = (name: string, of: ThicknessEffect | null | undefined): readonly Field[] => [
    [`${name}_stiffness_pct`, n(of?.stiffness, 1)],
    [`${name}_force_pct`, n(of?.force, 1)],
    [`${name}_strain_pct`, n(of?.strain, 1)],
  ];
  return [
    ['number', point.number],
    ['passes', passes(row)],
    ['unbeaten', front.has(point.number)],
    ['fails', faults.map(({ code }) => code).join(' ')],
    ['remarks', remarks.join(' ')],
    ['layout', point.layout],
    ['legs', point.legs],
    ['length_mm', tidy(point.length)],
    ['thickness_mm', tidy(point.thickness)],
    ['width_mm', n(mount?.width ?? point.width, 3)],
    ['material', point.material ?? spec.material.name],
    ['adjust_screw', point.adjust ?? spec.screws.adjust],
    ['tilt_asked_deg', n(figures?.tilt ?? point.tiltDeg, 3)],
    ['tilt_held_deg', n(figures?.tiltHeld, 3)],
    ['force_highest_n', n(figures?.force.highest, 4)],
    ['force_level_n', n(figures?.force.level, 4)],
    ['force_lowest_n', n(figures?.force.lowest, 4)],
    ['screw_stiffness_n_per_mm', n(figures?.screwStiffness, 4)],
    ['leaf_stiffness_nmm_per_rad', n(figures?.stiffness, 2)],
    ['strain_pct', n(figures?.strain, 4)],
    ['strain_allowed_pct', n(figures?.strainAllowed, 4)],
    ['safety', n(figures?.safety, 3)],
    ['stop_strain_pct', n(figures?.stopStrain, 4)],
    ['stop_stress_mpa', n(figures?.stopStress, 3)],
    ['stop_safety', n(figures?.stopSafety, 3)],
    ['preload_left_n', n(figures?.preloadLeft, 4)],
    ['preload_over_needed', n(figures?.preloadRatio, 3)],
    ['back_off_deg', n(figures?.backOff, 3)],
    ['deg_per_turn', n(figures?.degPerTurn, 4)],
    ['mm_per_turn', n(figures?.mmPerTurn, 3)],
    ['reach_mm', n(figures?.reach, 2)],
    ['frequency_hz', n(figures?.frequency, 2)],
    ...effect('thinner_005', figures?.thinner),
    ...effect('thicker_005', figures?.thicker),
    ['mount_length_mm', n(mount?.length, 3)],
    ['leg_pitch_mm', n(mount?.legPitch, 3)],
    ['fillet_mm', n(mount?.fillet, 3)],
    ['preload_deg', n(mount?.preload, 3)],
    ['end_corrections', figures ? figures.corrected : null],
  ];
}

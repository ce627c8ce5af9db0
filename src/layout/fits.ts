/** Clearances as the printer's classes give them, and lengths picked from stock. */
import { threads } from '../components/index.js';
import type { FitClass } from '../printers/printer.js';
import type { Spec } from '../spec/spec.js';

/** Gap on one side of a fit [mm]: half the diametral clearance. */
export const side = (spec: Spec, fit: FitClass): number => spec.printer.machine[fit].value / 2;

/** A drawn hole's diameter for a printed hole of this diameter: vertical holes print small [mm]. */
export const grown = (spec: Spec, diameter: number): number => diameter + spec.printer.machine.holeGrowth.value;

/** The shortest stocked length that is at least `least` [mm], or undefined. */
export const stocked = (lengths: readonly number[], least: number): number | undefined =>
  [...lengths].sort((a, b) => a - b).find((length) => length >= least - 1e-9);

/** Shortest stocked countersunk fixing screw that passes this and forms a thread of one and a half diameters behind it [mm]; 0: there is none. */
export function formedSunk(spec: Spec, through: number): number {
  const { sunkLengths, diameter } = threads[spec.screws.fix];
  return stocked(sunkLengths.value, through + 1.5 * diameter.value) ?? 0;
}

/** Rounds up to the next tenth: drawings in tenths are easier to read and to measure. */
export const upTenth = (value: number): number => Math.round(Math.ceil(value * 10 - 1e-9)) / 10;

/** Rounds down to the next tenth: what a figure may be at most. */
export const downTenth = (value: number): number => Math.round(Math.floor(value * 10 + 1e-9)) / 10;

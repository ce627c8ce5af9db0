/**
 * One Newton step of a banded system with a few extra unknowns and as many extra equations:
 *
 *     [ K  C ] [ dq ]     [ r ]
 *     [ P  D ] [ dx ] = − [ h ]
 *
 * The extra unknowns are a load factor, a contact's force, a screw's advance; the equations prescribe a displacement or a gap.
 */
import { type Band, factor, newBand, solveFactored } from './banded.js';

/** Everything that a step reads and writes; allocated once. Columns, rows and answers are stored one after the other. */
export interface System {
  readonly band: Band;
  /** Most extra unknowns there is room for. */
  readonly room: number;
  /** r, in the end dq. */
  readonly residual: Float64Array;
  /** C, in the end K⁻¹ C. */
  readonly columns: Float64Array;
  /** P. */
  readonly rows: Float64Array;
  /** D, row by row with `room` entries each. */
  readonly corner: Float64Array;
  /** h, in the end dx. */
  readonly gaps: Float64Array;
}

/** @param size - unknowns q @param half - half bandwidth @param room - most extra unknowns */
export const newSystem = (size: number, half: number, room: number): System => ({
  band: newBand(size, half),
  room,
  residual: new Float64Array(size),
  columns: new Float64Array(size * room),
  rows: new Float64Array(size * room),
  corner: new Float64Array(room * room),
  gaps: new Float64Array(room),
});

/** Empties the border before it is filled anew. */
export function clearBorder({ columns, rows, corner, gaps }: System): void {
  columns.fill(0);
  rows.fill(0);
  corner.fill(0);
  gaps.fill(0);
}

/**
 * Solves the step: dq stands in `residual`, dx in `gaps`.
 *
 * @param extras - how many extra unknowns this step has
 * @param from - first entry of the columns that is not zero
 * @returns false when the equations have no solution
 * Source: block elimination (Crisfield, Non-linear Finite Element Analysis of Solids and Structures, vol. 1, ch. 9; after Batoz & Dhatt 1979).
 */
export function solveStep(system: System, extras: number, from = 0): boolean {
  const { band, room, residual, columns, rows, corner, gaps } = system;
  const { size } = band;
  if (factor(band) < 0) return false;
  for (let i = 0; i < size; i++) residual[i] = -residual[i]!;
  solveFactored(band, residual);
  for (let k = 0; k < extras; k++) solveFactored(band, columns, k * size, from);
  for (let a = 0; a < extras; a++) {
    gaps[a] = -gaps[a]! - dot(rows, a * size, residual, 0, size);
    for (let b = 0; b < extras; b++) corner[a * room + b]! -= dot(rows, a * size, columns, b * size, size);
  }
  if (!solveSmall(corner, gaps, extras, room)) return false;
  for (let k = 0; k < extras; k++) {
    const dx = gaps[k]!;
    for (let i = 0; i < size; i++) residual[i]! -= columns[k * size + i]! * dx;
  }
  return true;
}

function dot(a: Float64Array, aFrom: number, b: Float64Array, bFrom: number, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += a[aFrom + i]! * b[bFrom + i]!;
  return sum;
}

/** Gaussian elimination with row exchange; the answer replaces b. */
function solveSmall(a: Float64Array, b: Float64Array, n: number, width: number): boolean {
  for (let j = 0; j < n; j++) {
    let best = j;
    for (let i = j + 1; i < n; i++) if (Math.abs(a[i * width + j]!) > Math.abs(a[best * width + j]!)) best = i;
    const pivot = a[best * width + j]!;
    if (!(pivot !== 0 && pivot - pivot === 0)) return false;
    if (best !== j) {
      for (let k = j; k < n; k++) swap(a, j * width + k, best * width + k);
      swap(b, j, best);
    }
    for (let i = j + 1; i < n; i++) {
      const ratio = a[i * width + j]! / pivot;
      for (let k = j; k < n; k++) a[i * width + k]! -= ratio * a[j * width + k]!;
      b[i]! -= ratio * b[j]!;
    }
  }
  for (let j = n - 1; j >= 0; j--) {
    let value = b[j]!;
    for (let k = j + 1; k < n; k++) value -= a[j * width + k]! * b[k]!;
    b[j] = value / a[j * width + j]!;
  }
  return true;
}

function swap(a: Float64Array, i: number, j: number): void {
  const kept = a[i]!;
  a[i] = a[j]!;
  a[j] = kept;
}

/**
 * Symmetric banded equations, factored as L D Lᵀ in place, without pivoting: right for structures at and between limit points,
 * where a pivot is negative but not zero.
 *
 * Storage, lower half by columns: `band[j · (half + 1) + (i − j)]` is the entry (i, j), j ≤ i ≤ j + half.
 */

export interface Band {
  /** Unknowns. */
  readonly size: number;
  /** Half bandwidth: entries below the diagonal. */
  readonly half: number;
  readonly values: Float64Array;
}

/** @returns an empty band */
export const newBand = (size: number, half: number): Band => ({
  size,
  half,
  values: new Float64Array(size * (half + 1)),
});

/**
 * Replaces the matrix by L (below the diagonal) and D.
 *
 * @returns the number of negative pivots, which counts the directions in which the structure is unstable; −1 when a pivot
 * vanishes or is not finite
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., §4.3 (banded Cholesky, here without the square roots).
 */
export function factor({ size, half, values }: Band): number {
  const step = half + 1;
  let negative = 0;
  for (let j = 0; j < size; j++) {
    const at = j * step;
    const pivot = values[at]!;
    if (!(pivot !== 0 && pivot - pivot === 0)) return -1;
    if (pivot < 0) negative++;
    const last = Math.min(half, size - 1 - j);
    for (let i = 1; i <= last; i++) {
      const entry = values[at + i]!;
      if (entry === 0) continue;
      const ratio = entry / pivot;
      const to = at + i * step - i;
      for (let k = i; k <= last; k++) values[to + k]! -= ratio * values[at + k]!;
    }
    for (let i = 1; i <= last; i++) values[at + i]! /= pivot;
  }
  return negative;
}

/**
 * Solves L D Lᵀ x = b in place.
 *
 * @param band - factored @param x - holds b, then the solution, from `offset` on
 * @param from - first entry of b that is not zero: the sweep down starts there
 */
export function solveFactored({ size, half, values }: Band, x: Float64Array, offset = 0, from = 0): void {
  const step = half + 1;
  for (let j = from; j < size; j++) {
    const value = x[offset + j]!;
    if (value === 0) continue;
    const at = j * step;
    const last = Math.min(half, size - 1 - j);
    for (let i = 1; i <= last; i++) x[offset + j + i]! -= values[at + i]! * value;
  }
  for (let j = size - 1; j >= 0; j--) {
    const at = j * step;
    let value = x[offset + j]! / values[at]!;
    const last = Math.min(half, size - 1 - j);
    for (let i = 1; i <= last; i++) value -= values[at + i]! * x[offset + j + i]!;
    x[offset + j] = value;
  }
}

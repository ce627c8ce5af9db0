/** Guards at the kernels' doors: the kernels themselves take NaN in silence and give back nothing. */

/** @throws {RangeError} when a number is NaN or infinite */
export function requireFinite(what: string, numbers: Iterable<number>): void {
  for (const n of numbers) if (!Number.isFinite(n)) throw new RangeError(`${what} must be finite, got ${n}`);
}

/** @throws {RangeError} when the number is not finite or not above zero */
export function requirePositive(what: string, n: number): void {
  if (!(n > 0 && n < Infinity)) throw new RangeError(`${what} must be finite and > 0, got ${n}`);
}

/** @throws {RangeError} when there is no outline, one has fewer than three points, or a coordinate isn't finite */
export function requireOutlines(what: string, outlines: readonly (readonly (readonly [number, number])[])[]): void {
  if (outlines.length === 0) throw new RangeError(`${what}: no outline given`);
  for (const outline of outlines) {
    if (outline.length < 3) throw new RangeError(`${what}: an outline has ${outline.length} points, at least 3 needed`);
    for (const point of outline) requireFinite(`${what}: a coordinate`, point);
  }
}

/** @throws {RangeError} unless m is a turn and a move: 16 finite numbers, orthonormal, determinant +1 */
export function requireRigid(what: string, m: readonly number[]): void {
  if (m.length !== 16) throw new RangeError(`${what}: a matrix has 16 numbers, got ${m.length}`);
  requireFinite(`${what}: a matrix element`, m);
  const [a, b, c, , d, e, f, , g, h, i, , p, q, r, s] = m as number[];
  const dots = [
    a! * a! + b! * b! + c! * c! - 1,
    d! * d! + e! * e! + f! * f! - 1,
    g! * g! + h! * h! + i! * i! - 1,
    a! * d! + b! * e! + c! * f!,
    a! * g! + b! * h! + c! * i!,
    d! * g! + e! * h! + f! * i!,
    a! * (e! * i! - f! * h!) - b! * (d! * i! - f! * g!) + c! * (d! * h! - e! * g!) - 1,
  ];
  if (dots.some((x) => Math.abs(x) > 1e-9) || p !== 0 || q !== 0 || r !== 0 || s !== 1)
    throw new RangeError(`${what}: the matrix is not rigid (${m.join(', ')})`);
}

/** Steps of the grid a millimetre: the library for the plane rounds to it, so that all else has to. */
const STEPS = 2 ** 27;

/** @returns the nearest place on the grid of 7.5e-9 mm: what is meant to lie in one plane does, however it was drawn */
export const toGrid = (n: number): number => Math.round(n * STEPS) / STEPS;

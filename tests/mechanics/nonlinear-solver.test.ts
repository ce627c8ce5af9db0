import { expect, test } from 'vitest';
import { factor, newBand, solveFactored } from '../../src/mechanics/nonlinear/banded.js';
import { newSystem, solveStep } from '../../src/mechanics/nonlinear/bordered.js';

const n = 9;
const half = 3;
/** A symmetric banded matrix whose diagonal has both signs. */
const entry = (i: number, j: number) =>
  Math.abs(i - j) > half
    ? 0
    : i === j
      ? (i % 4 === 2 ? -11 : 9) + i
      : Math.cos(3.1 * Math.min(i, j) + 1.7 * Math.abs(i - j));
const fillBand = (values: Float64Array) => {
  for (let j = 0; j < n; j++) for (let i = j; i <= Math.min(n - 1, j + half); i++) values[j * half + i] = entry(i, j);
};
const wanted = Array.from({ length: n }, (_, i) => Math.sin(2.3 * i) + 0.2);
const times = (x: readonly number[]) => x.map((_, i) => x.reduce((sum, xj, j) => sum + entry(i, j) * xj, 0));

test('banded equations: the product of matrix and answer is the right-hand side', () => {
  const band = newBand(n, half);
  fillBand(band.values);
  // Sylvester's law of inertia: as many negative pivots as negative eigenvalues; Gershgorin's discs (radius < 6) separate two.
  expect(factor(band)).toBe(2);
  const x = Float64Array.from(times(wanted));
  solveFactored(band, x);
  for (const [i, value] of wanted.entries()) expect(x[i]).toBeCloseTo(value, 12);
});

test('a vanishing pivot is reported', () => {
  const band = newBand(2, 1);
  band.values.set([0, 1, 2, 0]);
  expect(factor(band)).toBe(-1);
});

test('border: every equation of the whole system holds', () => {
  const system = newSystem(n, half, 3);
  const extras = 2;
  const c = (i: number, k: number) => Math.cos(i + 5 * k);
  const p = (k: number, i: number) => Math.sin(2 * i + 3 * k) + 0.4;
  const corner = [
    [0, 1.3],
    [0.7, -2],
  ];
  const dx = [0.6, -1.7];
  fillBand(system.band.values);
  for (const [i, value] of times(wanted).entries()) system.residual[i] = -(value + c(i, 0) * dx[0]! + c(i, 1) * dx[1]!);
  for (let k = 0; k < extras; k++) {
    for (let i = 0; i < n; i++) {
      system.columns[k * n + i] = c(i, k);
      system.rows[k * n + i] = p(k, i);
    }
    corner[k]!.forEach((value, m) => {
      system.corner[k * 3 + m] = value;
    });
    system.gaps[k] = -(
      wanted.reduce((sum, value, i) => sum + p(k, i) * value, 0) +
      corner[k]![0]! * dx[0]! +
      corner[k]![1]! * dx[1]!
    );
  }
  expect(solveStep(system, extras)).toBe(true);
  for (const [i, value] of wanted.entries()) expect(system.residual[i]).toBeCloseTo(value, 11);
  for (const [k, value] of dx.entries()) expect(system.gaps[k]).toBeCloseTo(value, 11);
});

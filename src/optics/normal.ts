/** The error function and the normal distribution, to the last digits of a double, tails included. */

const TWO_OVER_ROOT_PI = 2 / Math.sqrt(Math.PI);

/** Up to here the series is summed, beyond it the continued fraction is used: both converge within about 60 steps. */
const SERIES_TO = 2.5;

/**
 * Error function erf(x) = 2/√π ∫₀ˣ exp(−t²) dt.
 *
 * @param x - any number; NaN gives NaN @returns −1 to 1
 * Source: erf(x) = 2/√π exp(−x²) Σ 2ⁿ x^(2n+1) / (2n+1)!!, Abramowitz & Stegun 7.1.6 (all terms of one sign).
 */
export function erf(x: number): number {
  if (!(Math.abs(x) <= SERIES_TO)) return Number.isNaN(x) ? NaN : Math.sign(x) * (1 - tail(Math.abs(x)));
  return series(x);
}

/**
 * Complement erfc(x) = 1 − erf(x), exact in its own digits where that difference would have none left.
 *
 * @param x - any number @returns 0 to 2
 * Source: as above; for large x the continued fraction of Abramowitz & Stegun 7.1.14.
 */
export function erfc(x: number): number {
  if (Number.isNaN(x)) return NaN;
  if (x > SERIES_TO) return tail(x);
  return x < -SERIES_TO ? 2 - tail(-x) : 1 - series(x);
}

function series(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return TWO_OVER_ROOT_PI * Math.exp(-x * x) * sum;
}

/** erfc(x) = exp(−x²)/√π · 1/(x + ½/(x + 1/(x + 3/2/(x + …)))), from the inside out; x ≥ 2.5. */
function tail(x: number): number {
  if (x > 27.3) return 0;
  let fraction = x;
  for (let k = 60; k >= 1; k -= 1) fraction = x + k / 2 / fraction;
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / fraction;
}

/** @returns Φ(z): probability that a standard normal lies below z */
export const normalBelow = (z: number): number => erfc(-z / Math.SQRT2) / 2;

/** @returns Q(z) = 1 − Φ(z): probability that it lies above z, exact in its own digits */
export const normalAbove = (z: number): number => erfc(z / Math.SQRT2) / 2;

/** @returns φ(z) = exp(−z²/2)/√(2π) */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** @returns probability that it lies from a to b, a ≤ b, taken on the side where no digits are lost */
export const normalBetween = (a: number, b: number): number =>
  a > 0 ? normalAbove(a) - normalAbove(b) : normalBelow(b) - normalBelow(a);

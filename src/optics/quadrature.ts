/** Gauss–Legendre integration. */

export interface Rule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Nodes and weights on [−1, 1]: exact for polynomials up to degree 2 n − 1.
 *
 * @param n - points, whole, > 0 @throws {RangeError} otherwise
 * Source: zeros of Legendre's P_n by Newton's method from cos(π (i − ¼)/(n + ½)); weights 2 / ((1 − x²) P_n′(x)²) (Abramowitz & Stegun 25.4.29).
 */
export function gaussLegendre(n: number): Rule {
  if (!(Number.isInteger(n) && n > 0)) throw new RangeError(`gaussLegendre: n must be whole and > 0, got ${n}`);
  const half = Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    for (let step = 0; step < 8; step += 1) {
      const { value, derivative } = legendre(n, x);
      slope = derivative;
      x -= value / derivative;
    }
    return { x, weight: 2 / ((1 - x * x) * slope * slope) };
  }).reverse();
  return { nodes: half.map(({ x }) => x), weights: half.map(({ weight }) => weight) };
}

function legendre(n: number, x: number): { readonly value: number; readonly derivative: number } {
  let [before, value] = [1, x];
  for (let k = 2; k <= n; k += 1) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  if (n === 1) return { value: x, derivative: 1 };
  return { value, derivative: (n * (x * value - before)) / (x * x - 1) };
}

/** Ample for a smooth function of one hump over a few of its widths. */
export const GAUSS_64: Rule = gaussLegendre(64);

/** @returns ∫ f from a to b by the rule; 0 where b = a */
export function integrate(f: (x: number) => number, [a, b]: readonly [number, number], rule: Rule = GAUSS_64): number {
  const [middle, half] = [(a + b) / 2, (b - a) / 2];
  return half * rule.nodes.reduce((sum, x, i) => sum + rule.weights[i]! * f(middle + half * x), 0);
}

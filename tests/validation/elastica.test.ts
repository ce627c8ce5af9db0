import { describe, expect, test } from 'vitest';
import { followLoad } from '../../src/mechanics/nonlinear/load-path.js';
import { builtIn, chain, evenly, off } from '../mechanics/nonlinear-frames.js';

const EI = 7;
const L = 3;
const cantilever = (elements: number, axial: number) =>
  chain({
    corners: [
      [0, 0],
      [L, 0],
    ],
    cuts: [elements],
    section: { axial, bending: EI, shear: Infinity },
    supports: [builtIn(0)],
  });

/** Tip of an inextensible cantilever under a dead force α E I / L² across it. */
function tip(elements: number, alpha: number) {
  // E A L²/EI = 1.3e9: what stretching adds is far below the tolerances.
  const load = [{ node: elements, axis: 'y', value: EI / L ** 2 } as const];
  const { q } = followLoad({
    frame: cantilever(elements, 1e9),
    load,
    control: { factors: evenly(alpha, 10) },
  }).at(-1)!;
  const [u, w, slope] = q.slice(3 * elements);
  // The root's moment by statics: the force times the tip's distance.
  return { slope: slope!, w: w! / L, u: -u! / L, moment: alpha * (1 + u! / L) };
}

// Bisshopp & Drucker, Large deflection of cantilever beams, Quart. Appl. Math. 3 (1945) 272–275: their elliptic integrals, evaluated
// for this project by two independent computations that agree to 8 decimals.
const table = [
  { alpha: 0.25, slope: 0.124292442, w: 0.0827459154, u: 0.00411781841, moment: 0.24897055 },
  { alpha: 1, slope: 0.46135195, w: 0.301720774, u: 0.0564332363, moment: 0.94356676 },
  { alpha: 2, slope: 0.781749832, w: 0.49345748, u: 0.160641721, moment: 1.67871656 },
  { alpha: 5, slope: 1.21536812, w: 0.713791524, u: 0.387628361, moment: 3.0618582 },
  { alpha: 10, slope: 1.43028554, w: 0.810609025, u: 0.554995598, moment: 4.45004402 },
];

describe('elastica under a dead tip force (Bisshopp & Drucker 1945)', () => {
  // 32 elements: the error falls as h⁴ and is below 1.5e-7 at α = 10; 3e-7 leaves twice that.
  test.for(table)('α = $alpha: slope $slope, w/L $w, u/L $u, M L/EI $moment', ({ alpha, ...want }) => {
    const have = tip(32, alpha);
    for (const key of ['slope', 'w', 'u', 'moment'] as const) expect(off(have[key], want[key]), key).toBeLessThan(3e-7);
  });

  // The averaged shortening makes the error fall as h⁴; without it, as h² (the .16 % of a plain element at α = 1 with 4 elements).
  test('the error falls sixteenfold when elements are halved', () => {
    const { w } = table[1]!;
    const errors = [2, 4, 8, 16].map((n) => off(tip(n, 1).w, w));
    expect(errors[1]).toBeLessThan(2e-5);
    for (const [i, error] of errors.slice(1).entries()) {
      expect(errors[i]! / error).toBeGreaterThan(14);
      expect(errors[i]! / error).toBeLessThan(18);
    }
  });
});

// Timoshenko & Gere, Mechanics of Materials, pure bending; any handbook: x/L = sin ω/ω, y/L = (1 − cos ω)/ω, ω = M L/EI.
describe('cantilever under an end moment bends into a circle', () => {
  test.for([
    { row: 'a sixth of a circle', omega: Math.PI / 3, x: 0.82699334, y: 0.47746483 },
    { row: 'half a circle', omega: Math.PI, x: 0, y: 2 / Math.PI },
    { row: 'a whole circle', omega: 2 * Math.PI, x: 0, y: 0 },
  ])('$row', ({ omega, x, y }) => {
    // Each element keeps even curvature, which an even moment asks for; only its chord is the averaged one: 1/720 of its angle⁴.
    const n = 40;
    const frame = cantilever(n, 1e4);
    const load = [{ node: n, axis: 'turn', value: EI / L } as const];
    const { q } = followLoad({ frame, load, control: { factors: evenly(omega, 12) } }).at(-1)!;
    expect(q[3 * n + 2]).toBeCloseTo(omega, 9);
    expect(1 + q[3 * n]! / L).toBeCloseTo(x, 5);
    expect(q[3 * n + 1]! / L).toBeCloseTo(y, 5);
  });
});

import { describe, expect, test } from 'vitest';
import { factor, newBand } from '../../src/mechanics/nonlinear/banded.js';
import { assemble, type Frame, newScratch } from '../../src/mechanics/nonlinear/frame.js';
import { followLoad } from '../../src/mechanics/nonlinear/load-path.js';
import { NoEquilibrium } from '../../src/mechanics/nonlinear/newton.js';
import { builtIn, chain, evenly, off, pinned } from '../mechanics/nonlinear-frames.js';

/** Directions in which the frame is unstable when the load is dead. */
function unstable(frame: Frame, q: Float64Array): number {
  const band = newBand(frame.equations, frame.half);
  assemble(frame, q, band, new Float64Array(frame.equations), newScratch());
  return factor(band);
}

// Williams, An approach to the non-linear behaviour of the members of a rigid jointed plane framework with finite deflections, QJMAM 17
// (1964) 451–469; data as in Wood & Zienkiewicz, Computers & Structures 7 (1977) (from memory). Path figures: an independent computation
// for this project. Tolerance: half a unit of their last digit is 2e-6; 24 elements a leg are within 1e-5.
describe('toggle frame (Williams 1964), in and lb', () => {
  const n = 24;
  const [b, t, E] = [0.753, 0.243, 1.03e7];
  const frame = chain({
    corners: [
      [0, 0],
      [12.943, 0.386],
      [25.886, 0],
    ],
    cuts: [n, n],
    section: { axial: E * b * t, bending: (E * b * t ** 3) / 12, shear: Infinity },
    supports: [builtIn(0), builtIn(2 * n)],
  });
  const load = [{ node: n, axis: 'y', value: -1 } as const];
  const path = (values: readonly number[]) =>
    followLoad({ frame, load, control: { node: n, axis: 'y', values: values.map((v) => -v) } });

  test('path: 25.2034 at .10, 32.8472 at .30, 36.0970 at .50', () => {
    const have = path([0.1, 0.3, 0.5]).map(({ factor: f }) => f);
    for (const [i, want] of [25.2034, 32.8472, 36.097].entries()) expect(off(have[i]!, want)).toBeLessThan(1e-5);
  });

  test('maximum 33.8704 at .232 (published about 34), minimum 31.2818 at .392', () => {
    const steps = path(evenly(0.5, 250));
    const load = steps.map(({ factor: f }) => f);
    const top = load.findIndex((f, i) => i > 0 && f > load[i - 1]! && f > load[i + 1]!);
    const bottom = load.findIndex((f, i) => i > 0 && f < load[i - 1]! && f < load[i + 1]!);
    // On a grid of .002 in the extreme itself is off by its curvature times .001² / 2: below 1e-6 of it.
    expect(off(load[top]!, 33.8704)).toBeLessThan(1e-5);
    expect(off(load[bottom]!, 31.2818)).toBeLessThan(1e-5);
    expect((top + 1) * 0.002).toBeCloseTo(0.232, 2);
    expect((bottom + 1) * 0.002).toBeCloseTo(0.392, 2);
    expect(off(load[top]!, 34)).toBeLessThan(0.01);
    // Between the two limits the frame would snap through.
    expect([top - 5, top + 5, bottom - 5, bottom + 5].map((i) => unstable(frame, steps[i]!.q))).toEqual([0, 1, 1, 0]);
  });

  test('under load control no equilibrium near the first limit is found beyond it: it fails or snaps to the far branch', () => {
    const below = followLoad({ frame, load, control: { factors: [20, 30, 33.5] } }).at(-1)!;
    expect(-below.q[3 * n + 1]!).toBeLessThan(0.232);
    // On the far branch the load is as high again only past .44.
    const beyond = () =>
      -followLoad({ frame, load, control: { factors: [20, 30, 33.5, 33.95] } }).at(-1)!.q[3 * n + 1]!;
    let reached = Infinity;
    try {
      reached = beyond();
    } catch (error) {
      expect(error).toBeInstanceOf(NoEquilibrium);
    }
    expect(reached).toBeGreaterThan(0.44);
  });
});

// Lee, Manuel & Rossow, Large deflections and stability of elastic frames, J. Eng. Mech. Div. ASCE 94 (1968) 521–547; data as usual
// in later papers: legs 120, A 6, I 2, E 720, pinned, load 24 from the corner. Published first limit 18.552 EI/L² (from memory).
describe('hinged right-angle frame (Lee 1968)', () => {
  const m = 6;
  const frame = chain({
    corners: [
      [0, 0],
      [0, 120],
      [24, 120],
      [120, 120],
    ],
    cuts: [5 * m, m, 4 * m],
    section: { axial: 720 * 6, bending: 720 * 2, shear: Infinity },
    supports: [pinned(0), pinned(10 * m)],
  });
  const node = 6 * m;
  const values = [...evenly(48, 48), ...evenly(2, 50).map((v) => 48 + v), ...evenly(8, 8).map((v) => 50 + v)];
  const steps = followLoad({
    frame,
    load: [{ node, axis: 'y', value: -1 }],
    control: { node, axis: 'y', values: values.map((v) => -v) },
  });
  const top = steps.reduce((best, step, i) => (step.factor > steps[best]!.factor ? i : best), 0);

  test('first limit load 18.5567 EI/L² (independent computation), published 18.552', () => {
    const have = steps[top]!.factor / ((720 * 2) / 120 ** 2);
    // Half a unit of the last digit; mesh and grid are finer than that.
    expect(Math.abs(have - 18.5567)).toBeLessThan(1e-4);
    // Published figures of several authors scatter by .05 %.
    expect(off(have, 18.552)).toBeLessThan(5e-4);
  });

  test('stable before the limit, unstable in one direction after it, while the displacement grows on', () => {
    expect(unstable(frame, steps[top - 8]!.q)).toBe(0);
    expect(unstable(frame, steps.at(-1)!.q)).toBe(1);
    expect(steps.at(-1)!.factor).toBeLessThan(0.99 * steps[top]!.factor);
  });
});

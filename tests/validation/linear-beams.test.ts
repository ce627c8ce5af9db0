import { describe, expect, test } from 'vitest';
import { foldPath, pathCompliance, squareFoldPath } from '../../src/mechanics/fold.js';
import { placeOf } from '../../src/mechanics/nonlinear/frame.js';
import { type LeafBeam, meshLeaf } from '../../src/mechanics/nonlinear/leaf-mesh.js';
import { followLoad } from '../../src/mechanics/nonlinear/load-path.js';
import { notchStiffness } from '../../src/mechanics/notch.js';
import { builtIn, chain, off, straight } from '../mechanics/nonlinear-frames.js';

const AXES = ['x', 'y', 'turn'] as const;

/** End's compliance under loads so small that only the linear part is left. */
function compliance(beam: LeafBeam) {
  const { frame, end } = meshLeaf(beam);
  return AXES.map((axis) => {
    const small = 1e-10;
    const [step] = followLoad({ frame, load: [{ node: end, axis, value: small }], control: { factors: [1] } });
    return AXES.map((of) => step!.q[placeOf(end, of)]! / small);
  });
}

// Castigliano's second theorem (Timoshenko & Gere, Mechanics of Materials), three legs with square turns, by hand: bending and axial.
describe('three-leg fold (Castigliano)', () => {
  const fold = { path: squareFoldPath({ legs: 3, length: 10, pitch: 3 }), poisson: 0.36, shearFactor: Infinity };
  test('l 10, pitch 3, t 1, b 12, E 3000: .174833333, .165, .036; .4335, .06; .012', () => {
    const have = compliance({ ...fold, width: 12, thickness: 1, modulus: 3000 });
    // The legs run toward −x, which mirrors the handbook's picture: xy and y-turn change their sign.
    const want = [
      [0.174833333, 0.165, -0.036],
      [0.165, 0.4335, -0.06],
      [-0.036, -0.06, 0.012],
    ];
    for (const [i, row] of want.entries())
      for (const [j, value] of row.entries()) expect(have[i]![j]!, `${i}${j}`).toBeCloseTo(value, 7);
    expect(1 / have[2]![2]!).toBeCloseTo(83.333333, 4);
  });
  test('K = E I / (3 l + 2 p) without ones: l 9, p 3.4, b 11, t 1.3, E 2600; 1/.00645508', () => {
    const path = squareFoldPath({ legs: 3, length: 9, pitch: 3.4 });
    const have = compliance({ ...fold, path, width: 11, thickness: 1.3, modulus: 2600 });
    expect(have[2]![2]).toBeCloseTo(0.00645508, 8);
    // Off the diagonal stretching adds nothing here but to x and y; those of the moment are bending only.
    expect(have[0]![2]!).toBeCloseTo(-0.02194728, 7);
    expect(have[1]![2]!).toBeCloseTo(-0.02904788, 7);
  });
});

describe('round turns', () => {
  // R/t = 60: the curved bar's own stiffness differs from the thin one's by tenths of (t/R)², under 1e-4.
  test('thin half circles: Castigliano along the true path, within 1e-4', () => {
    const path = foldPath({ legs: 3, length: 7, pitch: 6 });
    const section = { width: 11, thickness: 0.05, modulus: 2600 };
    const want = pathCompliance(path, section, { stretching: true });
    const have = compliance({ ...section, path, poisson: 0.36, shearFactor: Infinity });
    for (const [i, j, value] of [
      [0, 0, want.xx],
      [0, 1, want.xy],
      [1, 1, want.yy],
      [0, 2, want.xm],
      [1, 2, want.ym],
      [2, 2, want.mm],
    ] as const)
      expect(off(have[i]![j]!, value), `${i}${j}`).toBeLessThan(1e-4);
  });

  // Timoshenko, Strength of Materials, part 2 (curved bars, from memory): a moment turns the end of a thick half ring by M π R / (E A e R),
  // e = R − t / ln(r_o/r_i). R 1.5, t 1.2, b 11: e = 1.5 − 1.2/ln(2.1/.9) = .083733.
  test('thick half circle under a moment: π / (E A e), by hand', () => {
    const path = [{ start: [0, 0] as const, heading: 0, curvature: 1 / 1.5, length: Math.PI * 1.5 }];
    const have = compliance({ path, thickness: 1.2, width: 11, modulus: 2600, poisson: 0.36 });
    expect(off(have[2]![2]!, Math.PI / (2600 * 11 * 1.2 * 0.083733))).toBeLessThan(1e-5);
  });

  test('one element a half circle is as good as twelve, as long as it is linear', () => {
    const beam = {
      path: foldPath({ legs: 2, length: 7, pitch: 3 }),
      thickness: 1.2,
      width: 11,
      modulus: 2600,
      poisson: 0.36,
    };
    const one = compliance({ ...beam, mesh: { straight: 1, halfCircle: 1 } });
    const many = compliance({ ...beam, mesh: { straight: 5, halfCircle: 12 } });
    for (const [i, row] of one.entries())
      for (const [j, value] of row.entries()) expect(off(value, many[i]![j]!)).toBeLessThan(1e-6);
  });
});

// Timoshenko beam, tip force (Cowper 1966; any text): P L³/3EI + P L/(G A_s).
test('short cantilever with shear: L³/3EI + L/GA_s, by hand .0142222 + .0030222', () => {
  const beam: LeafBeam = {
    path: [straight([0, 0], 0, 4)],
    thickness: 1.25,
    width: 16 / 1.5625 / 1.25,
    modulus: 1125,
    poisson: 0.36,
  };
  const I = (beam.width * 1.25 ** 3) / 12;
  const G = 1125 / 2.72;
  const have = compliance(beam)[1]![1]!;
  expect(off(have, 64 / (3 * 1125 * I) + 4 / ((G * beam.width * 1.25 * 5) / 6))).toBeLessThan(1e-8);
});

// Propped cantilever with a force in the middle: 7 P L³/768 EI under it (Roark, 7th ed., Table 8.1, from memory).
test('a support in mid-chain', () => {
  const frame = chain({
    corners: [
      [0, 0],
      [6, 0],
    ],
    cuts: [4],
    section: { axial: 900, bending: 7, shear: Infinity },
    supports: [builtIn(0), { node: 4, holds: ['y'] }],
  });
  const [step] = followLoad({ frame, load: [{ node: 2, axis: 'y', value: 1e-6 }], control: { factors: [1] } });
  expect(off(step!.q[placeOf(2, 'y')]! / 1e-6, (7 * 216) / (768 * 7))).toBeLessThan(1e-7);
});

// Paros & Weisbord, Machine Design 37 (25 November 1965) 151–156: 1536.084597 and 1981.018937 N·mm/rad, equal to ∫ 12/(E b h³) ds.
describe('round notch under an even moment (Paros & Weisbord 1965)', () => {
  test.for([
    { R: 3, t: 1, b: 12, E: 3000, want: 1536.084597 },
    { R: 4.2, t: 1.3, b: 11, E: 2600, want: 1981.018937 },
  ])('R $R, t $t: $want', ({ R, t, b, E, want }) => {
    const thickness = (s: number) => t + 2 * (R - Math.sqrt(Math.max(0, R * R - (s - R) ** 2)));
    const have = compliance({
      path: [straight([0, 0], Math.PI, 2 * R)],
      thickness,
      width: b,
      modulus: E,
      poisson: 0.36,
      mesh: { straight: 8, halfCircle: 1 },
    });
    // Gauss's rule over each eighth, steep at the ends: 2e-6.
    expect(off(1 / have[2]![2]!, want)).toBeLessThan(5e-6);
    expect(off(notchStiffness({ radius: R, thickness: t, width: b }, E), want)).toBeLessThan(1e-9);
  });
});

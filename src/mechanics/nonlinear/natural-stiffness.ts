/**
 * What a piece of beam answers to its three natural deformations: its chord's stretch and its two ends' turns against the
 * chord. Exact within linear theory for straight, round and tapered pieces, because it comes from the piece's flexibility.
 */

import { requirePositive } from '../../positive.js';
import { along, type Stretch } from '../path.js';

/**
 * Symmetric stiffness over (stretch, turn at start, turn at end), counter-clockwise: [00, 01, 02, 11, 12, 22];
 * [N/mm], [N], [N·mm/rad].
 */
export type NaturalStiffness = readonly [number, number, number, number, number, number];

/** Stiffnesses of a straight beam of constant section. */
export interface BeamSection {
  /** E A [N]. */
  readonly axial: number;
  /** E I [N·mm²]. */
  readonly bending: number;
  /** G A_s [N]; Infinity: no shear deformation. */
  readonly shear: number;
}

/**
 * Straight piece of constant section, Timoshenko's shear included: with Φ = 12 E I / (G A_s L²), bending terms
 * (4 + Φ) and (2 − Φ) times E I / [L (1 + Φ)].
 *
 * @param length - L [mm] @returns stiffness @throws {RangeError} unless length, axial, bending are finite and > 0 and shear > 0
 * Source: Przemieniecki, Theory of Matrix Structural Analysis (1968), §5.6 (from memory).
 */
export function straightStiffness(length: number, { axial, bending, shear }: BeamSection): NaturalStiffness {
  requirePositive('straightStiffness', { length, axial, bending });
  if (!(shear > 0)) throw new RangeError(`straightStiffness: shear must be > 0, got ${shear}`);
  const phi = (12 * bending) / (shear * length * length);
  const unit = bending / (length * (1 + phi));
  return [axial / length, 0, 0, (4 + phi) * unit, (2 - phi) * unit, (4 + phi) * unit];
}

/** A leaf's material and width; the thickness may change along the piece. */
export interface LeafSection {
  /** b [mm]. */
  readonly width: number;
  /** E [MPa]. */
  readonly modulus: number;
  /** G [MPa]. */
  readonly shearModulus: number;
  /** A_s / A, 5/6 for a rectangle; Infinity: no shear deformation. */
  readonly shearFactor: number;
  /** Factor on E I, 1 but for plate action. */
  readonly plate: number;
}

/** Gauss–Legendre, 8 points on [−1, 1]: place and weight. Source: Abramowitz & Stegun, Table 25.4. */
const POINTS = [
  -0.960289856497536, -0.796666477413627, -0.525532409916329, -0.18343464249565, 0.18343464249565, 0.525532409916329,
  0.796666477413627, 0.960289856497536,
] as const;
const WEIGHTS = [
  0.10122853629037, 0.222381034453374, 0.313706645877887, 0.362683783378362, 0.362683783378362, 0.313706645877887,
  0.222381034453374, 0.10122853629037,
] as const;

/**
 * Piece of a leaf of any curvature and thickness: the inverse of its flexibility ∫ ( m m / EI + n n / EA + v v / GA_s
 * + c (n m + m n) / EA ) ds, m n v the bending moment, axial and shear force for a unit of each end load, c the curvature.
 *
 * A curved piece bends as a curved bar: E A e / |c| stands for E I, e the shift of the neutral axis. Radius > t/2.
 *
 * @param stretch - the piece at rest @param thickness - t after the length s from the piece's start [mm]
 * @returns stiffness @throws {RangeError} when the piece is bent tighter than half its thickness
 * Source: Castigliano's second theorem; curved bars: Winkler–Bach (Timoshenko, Strength of Materials, part 2, ch. 2; from memory,
 * re-derived).
 */
export function pieceStiffness(
  stretch: Stretch,
  section: LeafSection,
  thickness: (s: number) => number,
): NaturalStiffness {
  const [x0, y0] = stretch.start;
  const [x1, y1] = along(stretch, stretch.length);
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const [cos, sin] = [(x1 - x0) / chord, (y1 - y0) / chord];
  const half = stretch.length / 2;
  let [f00, f01, f02, f11, f12, f22] = [0, 0, 0, 0, 0, 0];
  for (let g = 0; g < 8; g++) {
    const s = half * (1 + POINTS[g]!);
    const weight = half * WEIGHTS[g]!;
    const at = along(stretch, s);
    const [dx, dy] = [at[0] - x0, at[1] - y0];
    const x = (dx * cos + dy * sin) / chord;
    const y = dy * cos - dx * sin;
    const heading = stretch.heading + stretch.curvature * s;
    const c = Math.cos(heading) * cos + Math.sin(heading) * sin;
    const z = Math.sin(heading) * cos - Math.cos(heading) * sin;
    const { bend, pull, shear, mixed } = compliances(section, thickness(s), stretch.curvature);
    // Loads: pull N along the chord, moments M1 and M2 at the ends, held by (M1 + M2) / chord across.
    const [m0, m1, m2] = [y, x - 1, x];
    const [n0, n1] = [c, -z / chord];
    const [v0, v1] = [-z, -c / chord];
    f00 += weight * (bend * m0 * m0 + pull * n0 * n0 + shear * v0 * v0 + 2 * mixed * n0 * m0);
    f01 += weight * (bend * m0 * m1 + pull * n0 * n1 + shear * v0 * v1 + mixed * (n0 * m1 + n1 * m0));
    f02 += weight * (bend * m0 * m2 + pull * n0 * n1 + shear * v0 * v1 + mixed * (n0 * m2 + n1 * m0));
    f11 += weight * (bend * m1 * m1 + pull * n1 * n1 + shear * v1 * v1 + 2 * mixed * n1 * m1);
    f12 += weight * (bend * m1 * m2 + pull * n1 * n1 + shear * v1 * v1 + mixed * n1 * (m1 + m2));
    f22 += weight * (bend * m2 * m2 + pull * n1 * n1 + shear * v1 * v1 + 2 * mixed * n1 * m2);
  }
  const a = f11 * f22 - f12 * f12;
  const b = f02 * f12 - f01 * f22;
  const d = f01 * f12 - f02 * f11;
  const det = f00 * a + f01 * b + f02 * d;
  return [
    a / det,
    b / det,
    d / det,
    (f00 * f22 - f02 * f02) / det,
    (f01 * f02 - f00 * f12) / det,
    (f00 * f11 - f01 * f01) / det,
  ];
}

/** Shift e of a curved bar's neutral axis from its centreline, rectangular section [mm]. Source: Winkler–Bach. */
export function neutralShift(radius: number, thickness: number): number {
  const inner = radius - thickness / 2;
  if (!(inner > 0)) throw new RangeError(`neutralShift: radius must exceed t/2 = ${thickness / 2}, got ${radius}`);
  return radius - thickness / Math.log((radius + thickness / 2) / inner);
}

/** Section's compliances per unit of length: 1/EI, 1/EA, 1/GA_s, c/EA. */
function compliances(section: LeafSection, t: number, curvature: number) {
  const { width, modulus, shearModulus, shearFactor, plate } = section;
  const axial = modulus * width * t;
  const radius = Math.abs(1 / curvature);
  const bending = curvature === 0 ? (axial * t * t) / 12 : axial * neutralShift(radius, t) * radius;
  return {
    bend: 1 / (plate * bending),
    pull: 1 / axial,
    shear: 1 / (shearModulus * shearFactor * width * t),
    mixed: curvature / axial,
  };
}

/**
 * Planar corotational beam element. A frame turns and stretches with the element's chord; in it the element has three natural
 * deformations: u the chord's stretch, θ1 and θ2 the ends' turns against the chord. Strain energy U = ½ d' k d with
 * d = (u + L (2 θ1² − θ1 θ2 + 2 θ2²) / 30, θ1, θ2): the bracket is what a bent element's chord shortens, taken as an even
 * strain. Forces and tangent are U's exact derivatives, so that the tangent is symmetric and Newton's iteration quadratic.
 *
 * Rotations of any size, small strain; within one element θ well below 1.
 *
 * Source: Crisfield, Non-linear Finite Element Analysis of Solids and Structures, vol. 1 (1991), ch. 7; the averaged shortening as
 * in shallow-arch elements (ibid.; from memory).
 */

/** Entries per element in `rest`: chord's length and direction at rest, its x and y, then the natural stiffness's six. */
export const REST = 10;
/** Entries per element in `answer`. */
export const ANSWER = 20;

/** Places in an element's answer: forces of end 2 against end 1 and moments; chord force; tangent over (Δx, Δy, θ1, θ2). */
export const FX = 0;
export const FY = 1;
export const M1 = 2;
export const M2 = 3;
export const PULL = 4;
export const KXX = 5;
export const KXY = 6;
export const KYY = 7;
export const KX1 = 8;
export const KY1 = 9;
export const KX2 = 10;
export const KY2 = 11;
export const K11 = 12;
export const K12 = 13;
export const K22 = 14;
/** Turns against the chord, chord's length, energy, chord's direction. */
export const T1 = 15;
export const T2 = 16;
export const CHORD = 17;
export const ENERGY = 18;
export const SLOPE = 19;

const TWO_PI = 2 * Math.PI;

/**
 * Writes an element's forces and tangent into `answer`. Plain arrays, because this is the innermost loop.
 *
 * @param rest - from `at` on: L [mm], direction [rad], chord [mm], natural stiffness
 * @param motion - since rest: end 2 against end 1 in x and y [mm], both ends' turns, counter-clockwise [rad]
 * @param answer - at 0 to `ANSWER` − 1 [N, N·mm, N/mm, N, N·mm/rad, rad, mm, N·mm]
 */
export function bendElement(rest: Float64Array, at: number, motion: Float64Array, answer: Float64Array): void {
  const l0 = rest[at]!;
  const dx = rest[at + 2]!;
  const dy = rest[at + 3]!;
  const k00 = rest[at + 4]!;
  const k01 = rest[at + 5]!;
  const k02 = rest[at + 6]!;
  const k11 = rest[at + 7]!;
  const k12 = rest[at + 8]!;
  const k22 = rest[at + 9]!;
  const du = motion[0]!;
  const dv = motion[1]!;
  const x = dx + du;
  const y = dy + dv;
  const l = Math.sqrt(x * x + y * y);
  const slope = Math.atan2(y, x);
  const beta = slope - rest[at + 1]!;
  // From the displacements, not as a difference of lengths: no digits are lost.
  const u = (du * (2 * dx + du) + dv * (2 * dy + dv)) / (l + l0);
  let t1 = motion[2]! - beta;
  t1 -= TWO_PI * Math.round(t1 / TWO_PI);
  let t2 = motion[3]! - beta;
  t2 -= TWO_PI * Math.round(t2 / TWO_PI);

  const thirtieth = l0 / 30;
  const b1 = (4 * t1 - t2) * thirtieth;
  const b2 = (4 * t2 - t1) * thirtieth;
  const e = u + (2 * t1 * t1 - t1 * t2 + 2 * t2 * t2) * thirtieth;
  const pull = k00 * e + k01 * t1 + k02 * t2;
  const n1 = k01 * e + k11 * t1 + k12 * t2;
  const n2 = k02 * e + k12 * t1 + k22 * t2;
  const m1 = n1 + pull * b1;
  const m2 = n2 + pull * b2;

  const a01 = k01 + k00 * b1;
  const a02 = k02 + k00 * b2;
  const a11 = k11 + (2 * k01 + k00 * b1) * b1 + 4 * thirtieth * pull;
  const a12 = k12 + k01 * b2 + k02 * b1 + k00 * b1 * b2 - thirtieth * pull;
  const a22 = k22 + (2 * k02 + k00 * b2) * b2 + 4 * thirtieth * pull;

  const inverse = 1 / l;
  const c = x * inverse;
  const s = y * inverse;
  const across = -(m1 + m2) * inverse;
  const hac = -(a01 + a02 + across) * inverse;
  const hcc = ((a11 + 2 * a12 + a22) * inverse + pull) * inverse;
  const hc1 = -(a11 + a12) * inverse;
  const hc2 = -(a12 + a22) * inverse;

  answer[FX] = pull * c - across * s;
  answer[FY] = pull * s + across * c;
  answer[M1] = m1;
  answer[M2] = m2;
  answer[PULL] = pull;
  answer[KXX] = k00 * c * c - 2 * hac * c * s + hcc * s * s;
  answer[KXY] = (k00 - hcc) * c * s + hac * (c * c - s * s);
  answer[KYY] = k00 * s * s + 2 * hac * c * s + hcc * c * c;
  answer[KX1] = c * a01 - s * hc1;
  answer[KY1] = s * a01 + c * hc1;
  answer[KX2] = c * a02 - s * hc2;
  answer[KY2] = s * a02 + c * hc2;
  answer[K11] = a11;
  answer[K12] = a12;
  answer[K22] = a22;
  answer[T1] = t1;
  answer[T2] = t2;
  answer[CHORD] = l;
  answer[ENERGY] = (pull * e + n1 * t1 + n2 * t2) / 2;
  answer[SLOPE] = slope;
}

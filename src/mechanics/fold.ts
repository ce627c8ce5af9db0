/** Compliance of a leaf of any plane path, folded ones among them: bending (and, if wanted, stretching) along the true centreline. */

import { requirePositive } from '../positive.js';
import { leafInertia } from './leaf.js';
import { integrate, type Point, pathEnd, pathOf, type Stretch } from './path.js';

/** Symmetric matrix over (Fx, Fy, M) and (x, y, turn); counter-clockwise positive. */
export interface Compliance {
  /** [mm/N] */
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  /** [1/N] */
  readonly xm: number;
  readonly ym: number;
  /** [rad/(N·mm)] */
  readonly mm: number;
}

export interface Section {
  readonly width: number;
  readonly thickness: number;
  /** E [MPa]. */
  readonly modulus: number;
}

/**
 * How a point that rides on the path's moving end answers to a force and moment there; the path's start is built in.
 * c_ij = ∫ m_i m_j / (E I) ds [+ ∫ n_i n_j / (E A) ds], m_i the bending moment at s for unit load i: −(y_p − y), x_p − x, 1.
 *
 * Small displacement, thin leaf (t well under the turns' radius), no shear.
 *
 * @param section - [mm], [MPa]
 * @param options - at: the point [mm], default the path's end; stretching: include axial strain, default false
 * @throws {RangeError} unless the section's figures are finite and > 0
 * Source: Castigliano's second theorem (Timoshenko & Gere, Mechanics of Materials; Budynas & Nisbett, Shigley's, ch. 4).
 */
export function pathCompliance(
  path: readonly Stretch[],
  section: Section,
  options: { readonly at?: Point; readonly stretching?: boolean } = {},
): Compliance {
  requirePositive('pathCompliance', { ...section });
  const [px, py] = options.at ?? pathEnd(path);
  const bending = section.modulus * leafInertia(section);
  const axial = options.stretching ? section.modulus * section.width * section.thickness : Infinity;
  const of = (m: (x: number, y: number) => number, n: (c: number, s: number) => number = () => 0) =>
    integrate(path, ([x, y], h) => m(px - x, py - y) / bending + n(Math.cos(h), Math.sin(h)) / axial);
  return {
    xx: of(
      (_x, y) => y * y,
      (c) => c * c,
    ),
    xy: of(
      (x, y) => -x * y,
      (c, s) => c * s,
    ),
    yy: of(
      (x) => x * x,
      (_c, s) => s * s,
    ),
    xm: of((_x, y) => -y),
    ym: of((x) => x),
    mm: of(() => 1),
  };
}

/**
 * Path of an n-leg fold with half-circle turns: legs along ∓x, stacked toward +y. Leaves (0, 0) toward −x.
 *
 * @param legs - 1 or more @param length - straight length of a leg [mm] @param pitch - between neighbouring legs [mm]
 */
export function foldPath({ legs, length, pitch }: Fold): readonly Stretch[] {
  return fold(legs, length, (leg) => [
    // Going toward −x, up is to the right; coming back it is to the left.
    { curvature: (leg % 2 ? -2 : 2) / pitch, length: (Math.PI * pitch) / 2 },
  ]);
}

/** The same with square turns: a straight connector of one pitch. The handbook case; nothing is drawn so. */
export function squareFoldPath({ legs, length, pitch }: Fold): readonly Stretch[] {
  const quarter = (leg: number) => ((leg % 2 ? -1 : 1) * Math.PI) / 2;
  return fold(legs, length, (leg) => [{ curvature: 0, length: pitch, kink: quarter(leg) }], quarter);
}

export interface Fold {
  readonly legs: number;
  readonly length: number;
  readonly pitch: number;
}

type Piece = Parameters<typeof pathOf>[2][number];

function fold(legs: number, length: number, turn: (leg: number) => Piece[], kink = (_leg: number) => 0) {
  const pieces: Piece[] = [{ curvature: 0, length }];
  for (let leg = 1; leg < legs; leg++) pieces.push(...turn(leg), { curvature: 0, length, kink: kink(leg) });
  return pathOf([0, 0], Math.PI, pieces);
}

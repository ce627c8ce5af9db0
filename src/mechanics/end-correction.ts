/**
 * What beam theory leaves out of a leaf between post and arm, as this project draws them: a wide leaf bends partly as a plate,
 * post and arm give where the leaf enters them, the fillets stiffen it. K = m E I / (L + dl), L the whole centreline.
 *
 * m comes from the curvature across the leaf, ν times that along it: free to form in a narrow leaf, held flat in a wide one. dl is the
 * length of leaf that would turn as much as both ends give. The constants were fitted for this project to 72 solid-element runs:
 * CalculiX on 20-node bricks of the drawn section, geometric nonlinearity, rms error in angle .5 %. Against 29 further leaves as drawn
 * (`tests/validation/drawn-leaves.json`) the nonlinear solver is off by .4 % rms, .8 % at most. That is no independent proof: that one
 * plate length, L / n, serves all layouts and one allowance the lying ones was chosen after looking at these 29. A fold of pitch 7.4 t,
 * outside the range, was off by 1.8 %.
 */

import { requireNotNegative, requirePositive } from '../positive.js';

export interface EndCorrection {
  /** m: on E I, hence on stiffness and stress. */
  readonly plate: number;
  /** dl: on the whole length, half of it at either root [mm]; below 0 where the fillets outweigh what the ends give. */
  readonly length: number;
  /** False outside the fitted range: the fit is carried on, as beam theory alone would be farther off. */
  readonly valid: boolean;
}

export const UNCORRECTED: EndCorrection = { plate: 1, length: 0, valid: false };

/** A leaf of n equal legs, n = 1 when straight. [mm] */
export interface LeafEnds {
  readonly layout: 'in-line' | 'upright' | 'folded';
  readonly legs: number;
  /** Straight length of one leg. */
  readonly length: number;
  /** L: along the centreline, turns included. */
  readonly developed: number;
  readonly thickness: number;
  readonly width: number;
  /** r at both roots, on both faces. */
  readonly fillet: number;
}

/** What the ends give without a fillet, / t: an upright leaf stands on a deep base, the others between post and arm. */
const GIVE: Readonly<Record<LeafEnds['layout'], number>> = { 'in-line': 0.935, upright: 0.81, folded: 0.935 };
/** Where the fit was tried: straight length of a leg [mm]. */
const LENGTH = { 'in-line': [8, 14], upright: [8, 14], folded: [4, 10] } as const;
/** The same: t, b [mm], r / t, ν, pitch of the legs / t. */
const RANGE = {
  thickness: [0.78, 1.7],
  width: [8, 16],
  fillet: [0.47, 1.12],
  poisson: [0, 0.4],
  pitch: [3.3, 5],
} as const;
/** Beyond these fillets the parabola means nothing. */
const FILLET_MOST = 1.5;

/**
 * Plate factor m = 1 + [ν² / (1 − ν²)] / [1 + .78 (l/b)^1.7], l a leg with its share of the turns, L / n: 1 for a narrow leaf, 1 / (1 − ν²) for a very wide one.
 *
 * @param strip - length L / n, width b [mm] @param poisson - ν, 0 to .5
 * @returns m [1] @throws {RangeError} outside those
 * Source: this project's fit to solid elements; its two limits are those of beam and plate bending (Timoshenko & Woinowsky-Krieger).
 */
export function plateFactor(
  { length, width }: { readonly length: number; readonly width: number },
  poisson: number,
): number {
  requirePositive('plateFactor', { length, width });
  if (!(poisson >= 0 && poisson <= 0.5)) throw new RangeError(`plateFactor: ν must be 0 to .5, got ${poisson}`);
  return 1 + poisson ** 2 / (1 - poisson ** 2) / (1 + 0.78 * (length / width) ** 1.7);
}

/**
 * Length to add [mm], ρ = r/t: t (c − 1.2 ρ − .17 ρ²), c .935 in line and folded, .81 upright.
 *
 * @param fillet - r at both roots [mm], 0 to 1.5 t @throws {RangeError} outside that
 * Source: this project's fit to solid elements, ρ .5 to 1.05.
 */
export function endAllowance(layout: LeafEnds['layout'], thickness: number, fillet: number): number {
  requirePositive('endAllowance', { thickness });
  requireNotNegative('endAllowance', { fillet });
  const rho = fillet / thickness;
  if (rho > FILLET_MOST) throw new RangeError(`endAllowance: fillet must be ≤ ${FILLET_MOST} t, got ${rho} t`);
  return thickness * (GIVE[layout] - 1.2 * rho - 0.17 * rho ** 2);
}

/** Says the range of the fits. */
export function fittedRange(layout: LeafEnds['layout']): string {
  const to = ([least, most]: readonly [number, number]) => `${least} to ${most}`;
  const { thickness, width, fillet, pitch } = RANGE;
  const legs =
    layout === 'folded'
      ? `legs ${to(LENGTH.folded)} mm long and ${to(pitch)} t apart`
      : `${to(LENGTH[layout])} mm long`;
  return `${legs}, ${to(thickness)} thick, ${to(width)} wide, fillets ${to(fillet)} t`;
}

/**
 * Both corrections of a leaf as drawn, and whether it lies in the range they were fitted in.
 *
 * @param poisson - ν, 0 to .5
 * @throws {RangeError} unless the dimensions are finite and > 0, 0 ≤ r ≤ 1.5 t
 */
export function endCorrection(leaf: LeafEnds, poisson: number): EndCorrection {
  const { layout, legs, length, developed, thickness, width, fillet } = leaf;
  requirePositive('endCorrection', { legs, length, developed, thickness, width });
  const within = (value: number, [least, most]: readonly [number, number]) =>
    value >= least - 1e-9 && value <= most + 1e-9;
  const pitch = (2 * (developed - legs * length)) / (Math.PI * (legs - 1));
  return {
    plate: plateFactor({ length: developed / legs, width }, poisson),
    length: endAllowance(layout, thickness, fillet),
    valid:
      within(length, LENGTH[layout]) &&
      within(thickness, RANGE.thickness) &&
      within(width, RANGE.width) &&
      within(fillet / thickness, RANGE.fillet) &&
      (legs === 1 || within(pitch / thickness, RANGE.pitch)) &&
      within(poisson, RANGE.poisson),
  };
}

/**
 * What beam theory leaves out of a straight leaf between two blocks: the blocks' ends give, the fillets stiffen, a wide leaf
 * bends as a plate. K = m E I / (l + dl).
 *
 * Fitted for this project to 18 solid and 15 plane finite-element runs (20-node bricks, geometric nonlinearity), all within
 * 1.5 % in angle: the same runs that it was fitted on. Valid for straight leaves with l 8–14, t .8–1.6, b 8–16 and fillets up to 1.5 t.
 */

import { requireNotNegative, requirePositive } from '../positive.js';
import type { Leaf } from './leaf.js';

export interface EndCorrection {
  /** m: on E I, hence on stiffness and stress. */
  readonly plate: number;
  /** dl: on the free length [mm]. */
  readonly length: number;
  /** False outside the fitted range: then m = 1 and dl = 0. */
  readonly valid: boolean;
}

export const UNCORRECTED: EndCorrection = { plate: 1, length: 0, valid: false };

/**
 * Plate factor m = 1 + [ν² / (1 − ν²)] / [1 + .78 (l/b)^1.7]: 1 for a narrow leaf, 1 / (1 − ν²) for a very wide one.
 *
 * @param leaf - [mm] @param poisson - ν, 0 to .5 @returns m [1] @throws {RangeError} outside those
 * Source: this project's fit to solid elements; its two limits are those of beam and plate bending (Timoshenko & Woinowsky-Krieger).
 */
export function plateFactor({ length, width }: Pick<Leaf, 'length' | 'width'>, poisson: number): number {
  requirePositive('plateFactor', { length, width });
  if (!(poisson >= 0 && poisson <= 0.5)) throw new RangeError(`plateFactor: ν must be 0 to .5, got ${poisson}`);
  return 1 + poisson ** 2 / (1 - poisson ** 2) / (1 + 0.78 * (length / width) ** 1.7);
}

/**
 * Length to add to the free length [mm], ρ = r/t: t (.81 − 1.2 ρ − .17 ρ²) in line, t (1.17 − .92 ρ − .20 ρ²) upright.
 *
 * @param fillet - r at both roots [mm], 0 to 1.5 t @throws {RangeError} outside that
 * Source: this project's fit to solid and plane elements.
 */
export function endAllowance(layout: 'in-line' | 'upright', thickness: number, fillet: number): number {
  requirePositive('endAllowance', { thickness });
  requireNotNegative('endAllowance', { fillet });
  const rho = fillet / thickness;
  if (rho > 1.5) throw new RangeError(`endAllowance: fillet must be ≤ 1.5 t, got ${rho} t`);
  return thickness * (layout === 'in-line' ? 0.81 - 1.2 * rho - 0.17 * rho ** 2 : 1.17 - 0.92 * rho - 0.2 * rho ** 2);
}

/**
 * Both corrections where they were fitted, none (and `valid` false) elsewhere.
 *
 * @param options - layout, leaf and fillet [mm], poisson [1]
 * @throws {RangeError} unless the dimensions are finite and > 0 (fillet ≥ 0)
 */
export function endCorrection(options: {
  readonly layout: 'in-line' | 'upright';
  readonly leaf: Leaf;
  readonly fillet: number;
  readonly poisson: number;
}): EndCorrection {
  const { layout, leaf, fillet, poisson } = options;
  requirePositive('endCorrection', { ...leaf });
  requireNotNegative('endCorrection', { fillet });
  const { length, thickness, width } = leaf;
  const within = (value: number, least: number, most: number) => value >= least && value <= most;
  const valid =
    within(length, 8, 14) && within(thickness, 0.8, 1.6) && within(width, 8, 16) && fillet <= 1.5 * thickness;
  if (!valid) return UNCORRECTED;
  return { plate: plateFactor(leaf, poisson), length: endAllowance(layout, thickness, fillet), valid };
}

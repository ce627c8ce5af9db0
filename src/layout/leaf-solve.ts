/** Chooses a leaf: layout, legs, length, thickness and pitch of the legs, then preload, bias and stop. */
import { PresetError } from '../errors.js';
import type { Solved } from '../spec/spec.js';
import { leafConflicts } from './leaf-conflicts.js';
import { type LeafFigures, leafFigures } from './leaf-figures.js';
import { type Broken, QUIET, type SearchOptions, searchLeaf, THICKNESS_ERROR } from './leaf-search.js';
import type { LeafDemands, LeafDesign } from './types.js';

export { type LeafFigures, leafFigures } from './leaf-figures.js';
export { STRESS_SAFETY } from './leaf-search.js';

export interface LeafSolution {
  readonly design: LeafDesign;
  readonly solved: readonly Solved[];
  readonly figures: LeafFigures;
  /** It holds printed .05 mm thicker too. */
  readonly sturdy: boolean;
}

export interface SolveOptions extends SearchOptions {
  /** The preset's name, for the mistakes. */
  readonly preset: string;
}

/**
 * The leaf that meets the demands: of those that meet them printed .05 mm thicker too, if any, of those that ring at 40 Hz or above the one with the smallest zone (length times height,
 * turns included), the larger fillet on a tie; where none does, the stiffest.
 *
 * Demands: strain held at the lowest beam; strain when the stop touches at its latest; stress within strength / 1.5 at both;
 * the screw still on its pad under the shock after a year at the highest beam, with the leaf .05 mm thin; room; post ≥ 5 t;
 * gap between legs ≥ .8, and .4 left when the stop touches; fillet ≥ .5 t; legs ≥ 5 t. Thickness in whole print lines, two or
 * more, lengths in steps of .5 mm, but for what the preset pins. Upright leaves and notches only when pinned.
 *
 * @throws {PresetError} when no leaf does: a mistake for each pinned figure or demand that would have to give way, and how far
 */
export function solveLeaf(demands: LeafDemands, options: SolveOptions): LeafSolution {
  const solution = findLeaf(demands, options);
  if (!solution) throw new PresetError(options.preset, leafConflicts(demands, options));
  return solution;
}

/** As `solveLeaf`, but undefined, and quickly so, where no leaf does. */
export function findLeaf(demands: LeafDemands, options: SearchOptions): LeafSolution | undefined {
  const found = searchLeaf(demands, options);
  if (!found) return undefined;
  const { design, at, thick } = found;
  const figures = leafFigures(design, at, options.plastic);
  return { design, figures, solved: reasons(design, { figures, demands, thick }), sturdy: thick.length === 0 };
}

/** Why each figure was taken; pinned ones are not listed. */
function reasons(
  design: LeafDesign,
  {
    figures,
    demands,
    thick,
  }: { readonly figures: LeafFigures; readonly demands: LeafDemands; readonly thick: readonly Broken[] },
): readonly Solved[] {
  const { layout, legs, length, thickness } = design;
  const strain = `${(100 * figures.strain).toFixed(2)} % strain at the lowest beam`;
  const force = `${figures.force.highest.toFixed(1)} to ${figures.force.lowest.toFixed(1)} N on the screw`;
  const lines =
    Math.round((thickness - demands.lineWidth) / (demands.lineWidth - demands.layer * (1 - Math.PI / 4))) + 1;
  const all: readonly (Solved & { readonly pinned: unknown })[] = [
    {
      path: 'leaf.layout',
      value: layout,
      why:
        layout === 'in-line'
          ? 'a straight leaf holds in this room, and resists yaw best'
          : 'no straight leaf in this room holds, printed a little thick too, and rings as high',
      pinned: demands.layout,
    },
    { path: 'leaf.legs', value: legs, why: `${strain}, ${figures.frequency.toFixed(0)} Hz`, pinned: demands.legs },
    {
      path: 'leaf.length',
      value: length,
      why: `${figures.frequency >= QUIET ? 'smallest zone' : 'stiffest'} of those that hold: ${strain}`,
      pinned: demands.length,
    },
    {
      path: 'leaf.thickness',
      value: thickness,
      why: `${lines} print lines; ${force}; ${offPrint(thick)}`,
      pinned: demands.thickness,
    },
  ];
  return all.filter(({ pinned }) => pinned === undefined).map(({ path, value, why }) => ({ path, value, why }));
}

/** What a thickness that is off in print does to the leaf. */
function offPrint([first]: readonly Broken[]): string {
  if (!first) return `holds printed ${THICKNESS_ERROR} mm thicker or thinner too`;
  const { rule, measured, limit } = first;
  const [scale, unit] = rule === 'stress' ? [1, 'MPa'] : [100, '%'];
  const what = { strain: 'strained for years by', stop: 'strained at the stop by', stress: 'stressed by' }[
    rule as 'strain'
  ];
  return `printed ${THICKNESS_ERROR} mm thicker it is ${what} ${(scale * measured).toFixed(2)} ${unit}, over the ${(scale * limit).toFixed(2)} ${unit} it is designed for, and no leaf in this room does better: measure one, and set leaf.thickness or the printer's figures`;
}

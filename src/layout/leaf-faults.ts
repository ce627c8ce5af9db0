/** Which of the demands on strength and push a leaf misses, by figures of whichever theory. The kit's checks ask the same. */
import type { Plastic } from '../materials/plastic.js';
import { deg } from '../units.js';
import type { LeafFigures } from './leaf-figures.js';
import { FORCE_MOST, STRESS_SAFETY } from './leaf-search.js';
import type { LeafDesign } from './types.js';

export interface LeafFault {
  readonly code: 'strain' | 'stress' | 'stop' | 'preload' | 'force';
  readonly measured: number;
  readonly limit: number;
  readonly unit: '%' | 'MPa' | '°' | 'N';
}

/**
 * Strain for years at the lowest beam; stress and momentary strain at the stop's latest contact; preload after a year; a screw
 * that pushes, within what its nut bears. What is no number counts as missed.
 */
export function leafFaults(
  bent: LeafFigures,
  { leaf, plastic }: { readonly leaf: LeafDesign; readonly plastic: Plastic },
): LeafFault[] {
  const faults: LeafFault[] = [];
  const held = plastic.sustainedStrain.value;
  if (!(bent.strain <= held))
    faults.push({ code: 'strain', measured: 100 * bent.strain, limit: 100 * held, unit: '%' });
  const allowed = plastic.strength.value / STRESS_SAFETY;
  if (!(bent.stopStress <= allowed))
    faults.push({ code: 'stress', measured: bent.stopStress, limit: allowed, unit: 'MPa' });
  const most = Math.min(plastic.shortTermStrain.value, plastic.yieldStrain.value);
  if (!(bent.stopStrain <= most))
    faults.push({ code: 'stop', measured: 100 * bent.stopStrain, limit: 100 * most, unit: '%' });
  if (!(leaf.preload >= bent.preloadNeeded))
    faults.push({ code: 'preload', measured: deg(leaf.preload), limit: deg(bent.preloadNeeded), unit: '°' });
  const { highest, lowest } = bent.force;
  if (!(highest > 0)) faults.push({ code: 'force', measured: highest, limit: 0, unit: 'N' });
  else if (!(lowest <= FORCE_MOST)) faults.push({ code: 'force', measured: lowest, limit: FORCE_MOST, unit: 'N' });
  return faults;
}

/** Which demands a bent leaf misses, and what else is worth knowing of it. */
import type { LeafFigures } from '../layout/leaf-figures.js';
import { type Broken, FORCE_MOST, HOLDS, QUIET, STRESS_SAFETY } from '../layout/leaf-search.js';
import type { LeafDesign } from '../layout/types.js';
import type { Plastic } from '../materials/plastic.js';
import type { Spec } from '../spec/spec.js';
import { deg } from '../units.js';
import { thicknessOf } from './points.js';
import type { Fault, FaultCode, RemarkCode } from './types.js';

export interface Judged {
  readonly bent: LeafFigures;
  readonly leaf: LeafDesign;
  readonly plastic: Plastic;
  /** What the closed forms, with their reserve, and the room say. */
  readonly broken: readonly Broken[];
}

const BY_ROOM = { height: 'room', length: 'room', post: 'post', gap: 'gap' } as const;

/**
 * The same demands as the kit's checks: strain for years at the lowest beam; stress and momentary strain at the stop's latest
 * contact; preload after a year; a screw that pushes, within what its nut bears; and room.
 */
export function faultsOf({ bent, leaf, plastic, broken }: Judged): Fault[] {
  const faults: Fault[] = [];
  const add = (code: FaultCode, measured: number, { limit, unit }: { limit: number; unit: string }) =>
    faults.push({ code, measured, limit, unit });
  const held = plastic.sustainedStrain.value;
  if (!(bent.strain <= held)) add('strain', 100 * bent.strain, { limit: 100 * held, unit: '%' });
  const allowed = plastic.strength.value / STRESS_SAFETY;
  if (!(bent.stopStress <= allowed)) add('stress', bent.stopStress, { limit: allowed, unit: 'MPa' });
  const most = Math.min(plastic.shortTermStrain.value, plastic.yieldStrain.value);
  if (!(bent.stopStrain <= most)) add('stop', 100 * bent.stopStrain, { limit: 100 * most, unit: '%' });
  if (!(leaf.preload >= bent.preloadNeeded))
    add('preload', deg(leaf.preload), { limit: deg(bent.preloadNeeded), unit: '°' });
  const { highest, lowest } = bent.force;
  if (!(highest > 0)) add('force', highest, { limit: 0, unit: 'N' });
  else if (!(lowest <= FORCE_MOST)) add('force', lowest, { limit: FORCE_MOST, unit: 'N' });
  for (const { rule, measured, limit } of broken)
    if (rule in BY_ROOM) add(BY_ROOM[rule as keyof typeof BY_ROOM], measured, { limit, unit: 'mm' });
  const [first] = broken;
  if (faults.length === 0 && first) {
    const [scale, unit] = first.rule === 'stress' ? [1, 'MPa'] : [100, '%'];
    add('reserve', scale * first.measured, { limit: scale * first.limit, unit });
  }
  return faults;
}

/** How far a whole number of lines may be missed [mm]: presets give hundredths. */
const ROUNDED = 0.006;

export function remarksOf({
  bent,
  thin,
  thick,
  leaf,
  spec,
}: {
  readonly bent: LeafFigures;
  readonly thin: LeafFigures | undefined;
  readonly thick: LeafFigures | undefined;
  readonly leaf: LeafDesign;
  readonly spec: Spec;
}): readonly RemarkCode[] {
  const remarks: RemarkCode[] = [];
  const held = spec.material.plastic.sustainedStrain.value;
  if (bent.strain <= held && thick && thick.strain > held) remarks.push('thick');
  if (bent.preloadNeeded <= leaf.preload && thin && thin.preloadNeeded > leaf.preload) remarks.push('thin');
  if (!(bent.frequency >= QUIET)) remarks.push('quiet');
  if (bent.force.highest < HOLDS) remarks.push('lock');
  const [two, three] = [thicknessOf(spec, 2), thicknessOf(spec, 3)];
  const lines = 2 + Math.max(0, Math.round((leaf.thickness - two) / (three - two)));
  if (Math.abs(thicknessOf(spec, lines) - leaf.thickness) > ROUNDED) remarks.push('lines');
  return remarks;
}

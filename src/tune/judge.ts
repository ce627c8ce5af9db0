/** Which demands a bent leaf misses, and what else is worth knowing of it. */

import { leafFaults } from '../layout/leaf-faults.js';
import type { LeafFigures } from '../layout/leaf-figures.js';
import { type Broken, HOLDS, QUIET } from '../layout/leaf-search.js';
import { thicknessOf } from '../layout/leaf-size.js';
import type { LeafDesign } from '../layout/types.js';
import type { Plastic } from '../materials/plastic.js';
import type { Spec } from '../spec/spec.js';
import type { Fault, RemarkCode } from './types.js';

export interface Judged {
  readonly bent: LeafFigures;
  readonly leaf: LeafDesign;
  readonly plastic: Plastic;
  /** What the closed forms and the room say: of these only the room counts, as the nonlinear solver judges the rest. */
  readonly broken: readonly Broken[];
}

const BY_ROOM = { height: 'room', length: 'room', post: 'post', bias: 'bias', gap: 'gap' } as const;

/** What strength and push ask for, as the kit's checks do; and room. */
export function faultsOf({ bent, leaf, plastic, broken }: Judged): Fault[] {
  const room = broken.flatMap(({ rule, measured, limit }): Fault[] =>
    rule in BY_ROOM
      ? [{ code: BY_ROOM[rule as keyof typeof BY_ROOM], measured, limit, unit: rule === 'bias' ? '°' : 'mm' }]
      : [],
  );
  return [...leafFaults(bent, { leaf, plastic }), ...room];
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

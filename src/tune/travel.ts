/** One design over the whole way of its screw: what the figure draws. */
import { threads } from '../components/index.js';
import { bendLeaf } from '../layout/leaf-bent.js';
import { STRESS_SAFETY } from '../layout/leaf-search.js';
import type { MountLayout } from '../layout/mount.js';
import type { LeafDemands } from '../layout/types.js';
import { NoEquilibrium } from '../mechanics/nonlinear/newton.js';
import type { Spec } from '../spec/spec.js';
import { deg, type Rad } from '../units.js';
import { draw } from './evaluate.js';
import type { TunePoint } from './types.js';

/** At one place of the screw. */
export interface TravelState {
  /** From where the screw first touches. */
  readonly turns: number;
  /** Of the beam above level [°]. */
  readonly tilt: number;
  /** Along the screw [N]; largest stress with the fillets' factor [MPa]; largest strain [%]. */
  readonly force: number;
  readonly stress: number;
  readonly strain: number;
}

export const MARKS = ['highest', 'level', 'lowest', 'stop', 'stopLatest'] as const;

export interface Travel {
  /** In the order of the turns. */
  readonly states: readonly TravelState[];
  readonly marks: Readonly<Record<(typeof MARKS)[number], TravelState>>;
  /** Strength / 1.5 [MPa], and the strain held for years [%]. */
  readonly stressAllowed: number;
  readonly strainAllowed: number;
}

const STEPS = 48;
/** Beyond the stop's latest contact, so that the limit is seen if it is near. */
const BEYOND = 1.25;

/** @returns undefined where the design can't be drawn or bent that far */
export function travelOf(preset: Spec, point: TunePoint): Travel | undefined {
  const drawn = draw(preset, point);
  if (!drawn) return undefined;
  return travelAlong(drawn.field.found, drawn.spec);
}

/** @returns the same for a mount that is solved already */
export function travelAlong(
  { mount, demands }: { readonly mount: MountLayout; readonly demands: LeafDemands },
  spec: Spec,
): Travel | undefined {
  const { leaf } = mount;
  const { plastic } = spec.material;
  const lowest = leaf.preload + 2 * leaf.tilt;
  const at = {
    highest: leaf.preload,
    level: leaf.bias,
    lowest: lowest as Rad,
    stop: (lowest + leaf.stopMargin) as Rad,
    stopLatest: (lowest + leaf.stopLatest) as Rad,
  };
  const end = BEYOND * at.stopLatest;
  const even = Array.from({ length: STEPS }, (_, i) => (((i + 0.02) / (STEPS - 0.98)) * end) as Rad);
  const flexes = [...even, ...Object.values(at)].sort((a, b) => a - b);
  const pitch = threads[spec.screws.adjust].pitch.value;
  try {
    const bent = bendLeaf(mount, { demands, plastic }, flexes);
    // Flex and advance start together, but for the small way to the first state.
    const start = bent[0]!.advance - (bent[1]!.advance - bent[0]!.advance) * (flexes[0]! / (flexes[1]! - flexes[0]!));
    const states = bent.map(
      ({ advance, flex, force, peakStress, maxStrain }): TravelState => ({
        turns: (advance - start) / pitch,
        tilt: deg((leaf.bias - flex) as Rad),
        force,
        stress: peakStress,
        strain: 100 * maxStrain,
      }),
    );
    const marks = Object.fromEntries(MARKS.map((mark) => [mark, states[flexes.indexOf(at[mark])]!]));
    return {
      states,
      marks: marks as Travel['marks'],
      stressAllowed: plastic.strength.value / STRESS_SAFETY,
      strainAllowed: 100 * plastic.sustainedStrain.value,
    };
  } catch (error) {
    if (error instanceof NoEquilibrium || error instanceof RangeError) return undefined;
    throw error;
  }
}

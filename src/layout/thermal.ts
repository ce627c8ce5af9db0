/** What the temperature around does to aim and preload. rad, mm, °C. */
import { threads } from '../components/index.js';
import { STEEL_EXPANSION, thermalDrift } from '../mechanics/aim-error.js';
import { forceLeft, YEAR_HOURS } from '../mechanics/creep.js';
import { modulusAt, warmCreep } from '../mechanics/temperature.js';
import type { Spec } from '../spec/spec.js';
import type { Layout } from './layout.js';
import { findleyOf } from './leaf-figures.js';

/** Temperature at which a panel is aligned. Source: common practice. */
export const ALIGNED_AT = 20;

export interface ThermalFigures {
  readonly coldest: number;
  readonly warmest: number;
  /** Beam's turn for the larger of the two steps from where it was aligned [rad], and the shift at the farthest receiver [mm]. */
  readonly drift: number;
  readonly shift: number;
  readonly step: number;
  /** Stiffness at the warmest over that at 23 °C. */
  readonly stiffness: number;
  /** Share of a new leaf's push at 23 °C that is left after a year at 23 °C, and after one in the warmest air all year long. */
  readonly left: number;
  readonly leftWarm: number;
}

/** Screw and pin stand beside plastic from the pin's groove in the base to the nut's upper face, which bears on the arm: what one grows more than the other tilts the arm. */
export function thermalFigures({
  spec,
  mount,
  lever,
}: Pick<Layout, 'spec' | 'mount'> & {
  /** From the axis of tilt to the farthest detector. */ readonly lever: number;
}): ThermalFigures {
  const { coldest, warmest } = spec.surroundings;
  const { plastic } = spec.material;
  const step = Math.max(Math.abs(coldest - ALIGNED_AT), Math.abs(warmest - ALIGNED_AT));
  const rate = thermalDrift({
    plastic: plastic.expansion.value,
    screw: STEEL_EXPANSION,
    length: mount.adjust.nutFloor + threads[spec.screws.adjust].nutHeight.value - (mount.pin.at[1] - mount.pin.radius),
    lever: mount.leaf.lever,
  });
  const drift = Math.abs(rate) * step;
  return {
    coldest,
    warmest,
    step,
    drift,
    shift: drift * lever,
    stiffness: stiffnessLeft(spec),
    left: forceLeft(findleyOf(plastic), YEAR_HOURS),
    leftWarm: leftWarm(spec),
  };
}

type Air = Pick<Spec, 'surroundings' | 'material'>;

function stiffnessLeft({ surroundings: { warmest }, material: { plastic } }: Air): number {
  const modulus = plastic.modulus.value;
  return modulusAt({ modulus, softens: plastic.softensC.value, at: warmest }) / modulus;
}

/**
 * Share of a new leaf's push at 23 °C that is left after a year in the warmest air: softer then, and crept faster all year long.
 *
 * @throws {RangeError} where the plastic softens at 23 °C or below
 */
export const leftWarm = (spec: Air): number =>
  stiffnessLeft(spec) * forceLeft(warmCreep(findleyOf(spec.material.plastic), spec.surroundings.warmest), YEAR_HOURS);

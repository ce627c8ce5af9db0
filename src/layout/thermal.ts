/** What the temperature around does to aim and preload. rad, mm, °C. */
import { STEEL_EXPANSION, thermalDrift } from '../mechanics/aim-error.js';
import { modulusAt } from '../mechanics/temperature.js';
import type { Layout } from './layout.js';

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
}

/** Screw and plastic stand side by side from the pin to the nut in the arm: what one grows more than the other tilts the arm. */
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
    length: mount.adjust.nutFloor - mount.pin.at[1],
    lever: mount.leaf.lever,
  });
  const drift = Math.abs(rate) * step;
  return {
    coldest,
    warmest,
    step,
    drift,
    shift: drift * lever,
    stiffness:
      modulusAt({ modulus: plastic.modulus.value, softens: plastic.softensC.value, at: warmest }) /
      plastic.modulus.value,
  };
}

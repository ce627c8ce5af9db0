/** The leaf as it comes out when the printer is off: thinner and thicker, by the nonlinear solver. */
import { type BentOptions, bentFigures } from './leaf-bent.js';
import { type LeafFault, leafFaults } from './leaf-faults.js';
import { THICKNESS_ERROR } from './leaf-search.js';
import type { MountLayout } from './mount.js';

export interface LeafOff {
  /** From the drawn thickness [mm]. */
  readonly by: number;
  /** What it misses then. */
  readonly faults: readonly LeafFault[];
}

/** @returns the thinner leaf, then the thicker one; the preload stays as drawn, as the screw is turned to the same tilt */
export function leafOff(mount: MountLayout, options: BentOptions): readonly LeafOff[] {
  const { plastic } = options;
  return [-THICKNESS_ERROR, THICKNESS_ERROR].map((by): LeafOff => {
    const leaf = { ...mount.leaf, thickness: mount.leaf.thickness + by };
    return { by, faults: leafFaults(bentFigures({ ...mount, leaf }, options), { leaf, plastic }) };
  });
}

/** The kit in numbers: what `layout/` solves from a spec and `parts/` draws. mm and rad; assembly coordinates. */

import type { LeafLayout } from '../spec/spec.js';
import type { Rad } from '../units.js';

/** What the leaf must do and the room it has. */
export interface LeafDemands {
  /** Tilt that must be reached either way from level. */
  readonly tilt: Rad;
  /** Shock that must not lift the screw off its pad [g]. */
  readonly shockG: number;
  /** Least push of the screw at the highest beam after a year [N]: what the wires may pull, taken at the screw. Default 0. */
  readonly pushLeast?: number;
  /** Share of the push at 23 °C, new, that is left after a year in the warmest air, the thickness as stated. Default: air of 23 °C. */
  readonly warmLeft?: number;
  /** Mass that moves with the arm [t], and the distance of its centre from the leaf's centre [mm]. */
  readonly movingMass: number;
  readonly massLever: number;
  /** Width of the leaf across the beam [mm]. */
  readonly width: number;
  /** From the mount's front face to the adjusting screw's axis [mm]. */
  readonly screwAt: number;
  /** From the mount's front face to the post's rear face, where the leaf starts [mm]; 5 t or more. */
  readonly post: number;
  /** Largest leg length that the mount has room for, and largest height of the leaf's zone (legs and gaps between) [mm]. */
  readonly lengthMost: number;
  readonly heightMost: number;
  /** Least gap between neighbouring legs [mm]: the post, and with an even number of legs the chin, reaches between them. */
  readonly legGapLeast: number;
  readonly lineWidth: number;
  readonly layer: number;
  /** How far a printed gap may be off [mm]: sets the stop's margin. */
  readonly gapTolerance: number;
  /** Pinned by the preset; undefined: solved. */
  readonly layout: LeafLayout | undefined;
  readonly legs: number | undefined;
  readonly length: number | undefined;
  readonly thickness: number | undefined;
}

/** A leaf as drawn and as solved. `flex` counts from rest (as printed); the beam is highest at the least flex. */
export interface LeafDesign {
  readonly layout: LeafLayout;
  /** 1 for in-line, upright and notch. */
  readonly legs: number;
  /** Straight length of one leg; the notch's radius for a notch. */
  readonly length: number;
  readonly thickness: number;
  readonly width: number;
  /** Between the middles of neighbouring legs; 0 with one leg. The turns are half circles of this diameter, as thick as the leaf. */
  readonly legPitch: number;
  /** Fillet radius at both roots. */
  readonly fillet: number;
  /** From the leaf's centre of rotation back to the screw's axis. */
  readonly lever: number;
  /** From the leaf's centre of rotation forward to where the chin meets the post. */
  readonly chinLever: number;
  /** Flex with the beam at its highest: never less, so that the screw always pushes. */
  readonly preload: Rad;
  /** Tilt either way from level. */
  readonly tilt: Rad;
  /** Flex with the arm level = preload + tilt: the angle by which the arm is printed tilted up. */
  readonly bias: Rad;
  /** How far the arm stands tilted down in the aligned kit, as the barrel leans upward in it. Default 0. */
  readonly lean?: Rad;
  /** Flex past the lowest beam at which the stop is drawn to touch, and at which it touches at the latest. */
  readonly stopMargin: Rad;
  readonly stopLatest: Rad;
}

/** Tilt of a mount at which a shape or place holds; level is the aligned kit, its beam level. Lowest: the beam at its most downward. */
export type Pose = 'lowest' | 'level' | 'highest';
export const POSES: readonly Pose[] = ['lowest', 'level', 'highest'];

/** Something of a part that bends: as printed, and as it stands at each pose. */
export interface AtPoses<T> {
  readonly printed: T;
  readonly posed: Readonly<Record<Pose, T>>;
}

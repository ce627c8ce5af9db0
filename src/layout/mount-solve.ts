/** Leaf and mount together: the leaf's lever depends on the mount's length, and that on the leaf. */

import type { Datum } from '../data.js';
import { PresetError } from '../errors.js';
import type { Plastic } from '../materials/plastic.js';
import type { Solved, Spec } from '../spec/spec.js';
import type { Rad } from '../units.js';
import { bentFiguresOrNot } from './leaf-bent.js';
import { leafFaults } from './leaf-faults.js';
import { filletFree, leafEnd, rearFrom } from './leaf-place.js';
import { type Broken, nearestLeaf, searchLeaf } from './leaf-search.js';
import { type LeafSolution, type SolveOptions, solveLeaf } from './leaf-solve.js';
import { layMount, type MountLayout } from './mount.js';
import { rearRoom } from './mount-room.js';
import { SHOULDER } from './mount-sizes.js';
import { estimateMass } from './moving-mass.js';
import { leftWarm } from './thermal.js';
import type { LeafDemands, LeafDesign } from './types.js';

/** Front face to the leaf's start: the chin's post. */
const POST = 6.5;
/** Leg lengths tried in turn, so that the mount is as short as the leaf lets it be. */
const ROOMS = [9, 10, 11, 12, 13, 14] as const;
/** An upright leaf stands higher, and its chin needs a longer lever. */
const POST_UPRIGHT = 12;
const HEIGHT_MOST = 9;
const HEIGHT_UPRIGHT = 13;
/** Shock that must not lift the screw, and pull of stiff wires that must not either [g], [N]. Source: common practice. */
const SHOCK_G = 2;
const PUSH_LEAST = 0.15;
/** Where the search for mass and lever starts: a light arm [t], [mm]. */
const FIRST_MASS = { movingMass: 6e-6, massLever: 9 } as const;
const MASS_TOLERANCE = 0.001;
/** A longer leaf is heavier and asks for a longer one: most settle within five rounds, heavy barrels on thin arms in a score. */
const ROUNDS = 60;

export interface MountSolution {
  readonly mount: MountLayout;
  readonly demands: LeafDemands;
  readonly solved: readonly Solved[];
}

/** @throws {PresetError} from the leaf's solver, for the roomiest mount, when no leaf meets the demands */
export function layMountWithLeaf(
  spec: Spec,
  { width, tilt }: { readonly width: number; readonly tilt: Rad },
): MountSolution {
  const rooms = roomsOf(spec);
  let failure: unknown;
  for (const lengthMost of rooms) {
    try {
      const settled = settleMount(spec, { width, tilt, lengthMost, choose: solveLeaf });
      if (settled) return settled;
      throw new PresetError(spec.name, [
        {
          code: 'leaf/conflict',
          path: 'leaf',
          message: `within ${ROUNDS} rounds no leaf carries the mount that its own length asks for, ${lengthMost} mm a leg and ${width} mm wide`,
          hint: 'pin leaf.length, or take a smaller aim.tilt',
        },
      ]);
    } catch (error) {
      if (!(error instanceof PresetError)) throw error;
      failure = error;
    }
  }
  const whole = pinnedMount(spec, { width, tilt });
  if (whole) return whole;
  throw failure;
}

/** What the closed forms say of room: the nonlinear solver does not ask for it. */
const ROOM: readonly Broken['rule'][] = ['height', 'length', 'post', 'bias', 'gap'];

/**
 * A leaf that the preset gives in full is not searched for, so it needs no reserve: the nonlinear solver's own figures decide.
 *
 * @returns undefined where something of the leaf is open, or it misses a demand
 */
function pinnedMount(
  spec: Spec,
  { width, tilt }: { readonly width: number; readonly tilt: Rad },
): MountSolution | undefined {
  const { layout, legs, length, thickness } = spec.leaf;
  const open = layout === undefined || (layout === 'folded' && legs === undefined);
  if (open || length === undefined || thickness === undefined) return undefined;
  const settled = settleMount(spec, { width, tilt, lengthMost: roomsOf(spec).at(-1)!, choose: nearestLeaf });
  if (!settled || settled.chosen.broken.some(({ rule }) => ROOM.includes(rule))) return undefined;
  const { mount, demands } = settled;
  const { plastic } = spec.material;
  const bent = bentFiguresOrNot(mount, { demands, plastic });
  return bent && leafFaults(bent, { leaf: mount.leaf, plastic }).length === 0 ? settled : undefined;
}

/** Room along the beam for the leaf [mm], tried in turn: what a pinned length takes, a notch being two radii long. */
export const roomsOf = ({ leaf }: Spec): readonly number[] =>
  leaf.length === undefined ? ROOMS : [leaf.layout === 'notch' ? 2 * leaf.length : leaf.length];

/** The search goes by closed forms; what it keeps in reserve is more than they differ from the nonlinear solver, which judges. */
export const RESERVE = 0.98;

function withReserve(plastic: Plastic): Plastic {
  const kept = (datum: Datum): Datum => ({ ...datum, value: datum.value * RESERVE });
  return {
    ...plastic,
    sustainedStrain: kept(plastic.sustainedStrain),
    shortTermStrain: kept(plastic.shortTermStrain),
    strength: kept(plastic.strength),
  };
}

export interface SettleOptions<T extends ChosenLeaf> {
  readonly width: number;
  readonly tilt: Rad;
  readonly lengthMost: number;
  readonly choose: (demands: LeafDemands, options: SolveOptions) => T | undefined;
}

export type ChosenLeaf = Pick<LeafSolution, 'design'> & Partial<Pick<LeafSolution, 'solved'>>;

export interface Settled<T extends ChosenLeaf> extends MountSolution {
  readonly chosen: T;
}

/**
 * Repeats leaf and mount until the chin has its room and the leaf carries what moves.
 *
 * @returns undefined where `choose` finds nothing, or leaf and mount run away from each other
 */
export function settleMount<T extends ChosenLeaf>(
  spec: Spec,
  { width, tilt, lengthMost, choose }: SettleOptions<T>,
): Settled<T> | undefined {
  const { machine } = spec.printer;
  const upright = spec.leaf.layout === 'upright';
  const post = upright ? POST_UPRIGHT : POST;
  const warmLeft = leftWarm(spec) * RESERVE;
  let demands: LeafDemands = {
    tilt,
    shockG: SHOCK_G,
    pushLeast: PUSH_LEAST / RESERVE,
    ...FIRST_MASS,
    width,
    screwAt: 0,
    post,
    lengthMost,
    heightMost: upright ? HEIGHT_UPRIGHT : HEIGHT_MOST,
    legGapLeast: 2 * SHOULDER + 1,
    lineWidth: machine.lineWidth.value,
    layer: machine.layer.value,
    gapTolerance: machine.gapTolerance.value,
    layout: spec.leaf.layout,
    legs: spec.leaf.legs,
    length: spec.leaf.length,
    thickness: spec.leaf.thickness,
  };
  for (let round = 0; round < ROUNDS; round++) {
    const options = {
      plastic: withReserve(spec.material.plastic),
      preset: spec.name,
      screwAt: (leaf: Pick<LeafDesign, 'layout' | 'legs' | 'length' | 'legPitch' | 'thickness'>) =>
        rearRoom(spec).toScrew - rearFrom(spec, { leaf, post }),
    };
    // Push kept in the warmest air is wanted, not demanded: where no leaf has it, the kit is drawn and a check says so.
    const warm = { ...demands, warmLeft };
    const chosen = choose(searchLeaf(warm, options) ? warm : demands, options);
    if (!chosen) return undefined;
    const { design, solved = [] } = chosen;
    const mount = layMount(spec, { leaf: design, width, post });
    // A leaf that ends at the front must leave the chin room under its root.
    const missing =
      leafEnd(design) === 'front'
        ? Math.max(
            mount.arm.footBottom - mount.arm.rootBottom,
            filletFree(design, { origin: mount.origin, footBottom: mount.arm.footBottom }),
          )
        : 0;
    const mass = estimateMass(spec, mount);
    const heavier = mass.movingMass * mass.massLever > demands.movingMass * demands.massLever * (1 + MASS_TOLERANCE);
    if (missing <= 1e-6 && !heavier)
      return { mount, demands: { ...demands, screwAt: -mount.adjust.at }, solved, chosen };
    demands = {
      ...demands,
      ...(heavier ? mass : {}),
      // From the gap that it has: strain may have asked for more than the least.
      legGapLeast:
        missing > 1e-6
          ? Math.ceil((design.legPitch - design.thickness + missing) * 20 - 1e-6) / 20
          : demands.legGapLeast,
    };
  }
  return undefined;
}

/** A leaf bent by its screw: equilibrium at each advance, or at each flex, with contact, sliding, friction and release. */
import { requireNotNegative } from '../../positive.js';
import type { DeadLoad } from './arm-border.js';
import { BY_ADVANCE, type Contact, GAP, PLACE, SLIDE, VALUE } from './contact.js';
import { strainEnergy } from './frame.js';
import type { LeafBeam } from './leaf-mesh.js';
import { type LeafDemand, newRun, pushOf, type Run, rubOf, stepTo } from './leaf-run.js';
import { type LeafPeaks, leafPeaks, type PeakFactors, type StationStress, stressAlong } from './leaf-stress.js';

export interface LeafPathOptions {
  readonly beam: LeafBeam;
  /** Where the screw bears; default: no screw, and `flex` is counter-clockwise. */
  readonly contact?: Contact;
  /** μ at the screw's tip; default 0. */
  readonly friction?: number;
  /** Stress over beam theory's at the fillets, and on the path's arcs in turn; default 1 everywhere. */
  readonly peaks?: PeakFactors;
  /** Weight or shock on the arm. */
  readonly load?: DeadLoad;
  /** In turn, from rest. */
  readonly steps: readonly LeafDemand[];
  /** Adds the stress at every station to each state; default false. */
  readonly stations?: boolean;
}

const NO_PEAKS: PeakFactors = { root: 1, turns: [] };

/** Rigid motion of the plane: p ↦ R(angle) p + (dx, dy), angle counter-clockwise about (0, 0) [rad, mm]. */
export interface Motion {
  readonly angle: number;
  readonly dx: number;
  readonly dy: number;
}

export interface LeafState extends LeafPeaks {
  /** Of the screw, from its place in the contact given [mm]. */
  readonly advance: number;
  /** Turn of the arm since rest, positive in the sense in which the screw's push turns it: at the leaf's end, at the screw [rad]. */
  readonly flex: number;
  readonly screwFlex: number;
  /** Thrust along the screw, force across the face, force of friction along it [N]. */
  readonly force: number;
  readonly push: number;
  readonly rub: number;
  /** Tip and face touch. */
  readonly touching: boolean;
  /** Between tip and face [mm], 0 when they touch. */
  readonly gap: number;
  /** How far the ball has come along the face since rest [mm], t being the face's normal turned by 90° counter-clockwise. */
  readonly slip: number;
  /** Motion of the arm since rest, at the leaf's end. */
  readonly pose: Motion;
  /** Elastic energy, and heat of friction since rest [N·mm]. */
  readonly energy: number;
  readonly heat: number;
  readonly stations?: readonly StationStress[];
}

/**
 * Solves the steps one after the other. Each starts from the last, carried on; one that fails is halved.
 *
 * Geometry exact, strain small, material linear: E is what holds at the time scale asked about. Tip and face are rigid. A leaf of
 * several legs does not touch itself.
 *
 * @returns one state per step
 * @throws {RangeError} on a beam that can't be meshed, friction or a factor below 0, a flex that only a pulling screw would hold
 * @throws {NoEquilibrium} where Newton's iteration fails even in steps a thousand times smaller
 * Source: Crisfield, Non-linear Finite Element Analysis of Solids and Structures, vol. 1 (1991); contact by Lagrange multipliers (Wriggers,
 * Computational Contact Mechanics; from memory).
 */
export function solveLeafPath(options: LeafPathOptions): readonly LeafState[] {
  const { beam, contact, friction = 0, load, peaks = NO_PEAKS, stations = false } = options;
  requireNotNegative('solveLeafPath', { friction, root: peaks.root, turns: Math.min(0, ...peaks.turns) });
  const run = newRun({ beam, contact, friction, load });
  return options.steps.map((demand) => {
    stepTo(run, demand);
    return { ...stateOf(run, peaks), ...(stations && { stations: stressesOf(run) }) };
  });
}

const stressesOf = ({ mesh, work }: Run) => stressAlong(mesh, work.q, work.scratch);

function stateOf(run: Run, peaks: PeakFactors): LeafState {
  const { mesh, work, arm, sense, start, heat } = run;
  const { frame, end, tip } = mesh;
  const { q, scratch } = work;
  const push = pushOf(run);
  const rub = rubOf(run);
  const touching = arm.state.meeting !== 'open';
  const angle = q[3 * end + 2]!;
  const [x, y] = frame.nodes[end]!;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    advance: arm.state.advance,
    flex: sense * angle,
    screwFlex: sense * q[3 * tip + 2]!,
    // The thrust is what the advance's work asks for: the gap closes, the slide changes, as the screw advances.
    force: -push * arm.answer[GAP + BY_ADVANCE]! - rub * arm.answer[SLIDE + BY_ADVANCE]!,
    push,
    rub,
    touching,
    gap: touching ? 0 : arm.answer[GAP + VALUE]!,
    slip: arm.answer[PLACE]! - start,
    pose: { angle, dx: x + q[3 * end]! - (c * x - s * y), dy: y + q[3 * end + 1]! - (s * x + c * y) },
    ...leafPeaks(mesh, q, scratch, peaks),
    energy: strainEnergy(frame, q, scratch),
    heat,
  };
}

/** Takes a leaf from one equilibrium to the next: which of open, sliding, sticking holds, and how large a step may be. */
import { pathCentroid } from '../path.js';
import { type ArmBorder, type DeadLoad, extrasOf, type Meeting, newArmBorder } from './arm-border.js';
import { BY_TURN, BY_X, BY_Y, type Contact, GAP, newTouch, PLACE, SLIDE, VALUE } from './contact.js';
import { type LeafBeam, type LeafMesh, meshLeaf } from './leaf-mesh.js';
import { iterate, NoEquilibrium, newWorkspace, type Workspace } from './newton.js';

/** What is asked for: an advance of the screw [mm], a flex [rad], or neither; and the share of the dead load, default 1. */
export type LeafDemand = ({ readonly advance: number } | { readonly flex: number } | object) & {
  readonly load?: number;
};

export interface Run {
  readonly mesh: LeafMesh;
  readonly work: Workspace;
  readonly arm: ArmBorder;
  readonly friction: number;
  /** There is a contact at all. */
  readonly screw: boolean;
  /** Sign of the arm's turn when the screw pushes. */
  readonly sense: number;
  /** Place of the ball along the face at rest [mm]. */
  readonly start: number;
  /** Equilibrium before the present one, and by how much the demand has grown since; `like`: which kind of step that was. */
  readonly before: { readonly q: Float64Array; readonly x: Float64Array; span: number; like: number };
  /** The present one while the next is sought. */
  readonly kept: { readonly q: Float64Array; readonly x: Float64Array };
  /** Heat of friction since rest [N·mm]. */
  heat: number;
}

/** Changes of meeting tried in one step, and halvings of a step, before it is given up. */
const CHANGES = 8;
const HALVINGS = 10;
/** Farthest that a step is carried on along the last one, in lengths of that. */
const CARRY = 2;
/** A pull [N], slide or overlap [mm] below this counts as none. */
const NOUGHT = 1e-9;

/** @throws {RangeError} on a beam that can't be meshed */
export function newRun(options: {
  readonly beam: LeafBeam;
  readonly contact: Contact | undefined;
  readonly friction: number;
  readonly load: DeadLoad | undefined;
}): Run {
  const { beam, contact, friction, load } = options;
  const mesh = meshLeaf(beam);
  const { frame, tip } = mesh;
  const work = newWorkspace(frame, 3);
  const node = frame.nodes[tip]!;
  const arm = newArmBorder({ touch: contact && newTouch(contact, node), frame, end: mesh.end, tip, friction, load });
  arm.look(work);
  const { answer, state } = arm;
  state.anchor = answer[SLIDE + VALUE]!;
  // The push's moment about the leaf's centre of rotation.
  const centre = pathCentroid(beam.path);
  const [x, y] = [node[0] - centre[0], node[1] - centre[1]];
  const moment = answer[GAP + BY_TURN]! + x * answer[GAP + BY_Y]! - y * answer[GAP + BY_X]!;
  return {
    mesh,
    work,
    arm,
    friction,
    screw: contact !== undefined,
    sense: moment < 0 ? -1 : 1,
    start: answer[PLACE]!,
    before: { q: work.q.slice(), x: work.x.slice(), span: 0, like: UNLIKE },
    kept: { q: work.q.slice(), x: work.x.slice() },
    heat: 0,
  };
}

/**
 * Brings the leaf to a demand; a step that fails is halved.
 *
 * @throws {NoEquilibrium} when steps a thousand times smaller fail too
 * @throws {RangeError} on a flex that only a pulling screw would hold
 */
export function stepTo(run: Run, demand: LeafDemand): void {
  const { state } = run.arm;
  const byFlex = 'flex' in demand;
  if (byFlex && state.meeting === 'open') {
    if (!run.screw) throw new RangeError('leaf: without a screw no flex can be held');
    meet(run, run.friction > 0 ? 'stick' : 'slide');
  }
  const from = byFlex ? run.work.q[3 * run.mesh.end + 2]! : state.advance;
  const to = byFlex ? run.sense * demand.flex : 'advance' in demand ? demand.advance : state.advance;
  const loadFrom = state.load;
  const loadTo = demand.load ?? 1;
  const unknown = byFlex !== state.byFlex;
  state.byFlex = byFlex;
  if (unknown) run.before.like = UNLIKE;
  let done = 0;
  let part = 1;
  while (done < 1) {
    const share = Math.min(1, done + part);
    state.load = loadFrom + share * (loadTo - loadFrom);
    const target = share === 1 ? to : from + share * (to - from);
    if (settle(run, target, target - (from + done * (to - from)))) {
      done = share;
      part *= 2;
    } else {
      part /= 2;
      if (part < 2 ** -HALVINGS)
        throw new NoEquilibrium(`leaf: no equilibrium found at ${byFlex ? 'flex' : 'advance'} ${target}`);
    }
  }
}

/** Finds the equilibrium at one target, with the meeting that holds there; on failure nothing has changed. */
function settle(run: Run, target: number, span: number): boolean {
  const { work, arm, kept, before } = run;
  const { q, x } = work;
  const { state } = arm;
  kept.q.set(q);
  kept.x.set(x);
  const { meeting, direction, advance, anchor } = state;
  if (state.byFlex) {
    state.turn = target;
    x[extrasOf(state) - 1] = advance;
  } else state.advance = target;
  carry(run, span);
  for (let change = 0; change < CHANGES; change++) {
    if (iterate(work, arm.border(state)) === 0) break;
    arm.look(work);
    const next = judge(run);
    if (next === undefined) {
      accept(run, span);
      before.q.set(kept.q);
      before.x.set(kept.x);
      return true;
    }
    if (meeting === 'open' && next !== 'open') state.anchor = arm.answer[SLIDE + VALUE]!;
    meet(run, next);
  }
  q.set(kept.q);
  x.set(kept.x);
  state.meeting = meeting;
  state.direction = direction;
  state.advance = advance;
  state.anchor = anchor;
  return false;
}

/** Starts a step where the last one, carried on, would end. */
function carry({ work, before, arm }: Run, span: number): void {
  const ratio = span / before.span;
  if (before.like !== likeOf(arm.state) || !(Math.abs(ratio) <= CARRY)) return;
  const { q, x } = work;
  for (let i = 0; i < q.length; i++) q[i]! += ratio * (q[i]! - before.q[i]!);
  for (let k = 0; k < x.length; k++) x[k]! += ratio * (x[k]! - before.x[k]!);
}

/** A number for each kind of step: what is unknown and which way it slides. */
const likeOf = (state: ArmBorder['state']) =>
  (state.byFlex ? 10 : 0) + 3 * (extrasOf(state) - (state.byFlex ? 1 : 0)) + state.direction;
const UNLIKE = -9;

/** @returns the meeting that contradicts less, or undefined when this one holds */
function judge({ work, arm, friction }: Run): Meeting | undefined {
  const { state, answer } = arm;
  const slide = answer[SLIDE + VALUE]!;
  const closed = friction > 0 ? 'stick' : 'slide';
  if (state.meeting === 'open') return answer[GAP + VALUE]! < -NOUGHT ? closed : undefined;
  const push = work.x[0]!;
  const sticks = state.meeting === 'stick';
  // What sticks and would pull may still push when it slides.
  if (push < -NOUGHT && !sticks) {
    if (state.byFlex) throw new RangeError('leaf: only a pulling screw would hold that flex');
    return 'open';
  }
  if (friction === 0) return undefined;
  if (!sticks) return state.direction * (slide - state.anchor) < -NOUGHT ? 'stick' : undefined;
  return Math.abs(work.x[1]!) > friction * push + NOUGHT ? 'slide' : undefined;
}

function meet({ work, arm, friction }: Run, next: Meeting): void {
  const { state } = arm;
  const { x } = work;
  const advance = state.byFlex ? x[extrasOf(state) - 1]! : 0;
  if (next === 'slide') state.direction = friction === 0 ? 0 : -Math.sign(x[1]!);
  if (state.meeting === 'open') x[0] = 0;
  x[1] = next === 'stick' && state.meeting === 'slide' ? -state.direction * friction * x[0]! : 0;
  state.meeting = next;
  if (state.byFlex) x[extrasOf(state) - 1] = advance;
}

function accept(run: Run, span: number): void {
  const { work, arm, before } = run;
  const { state, answer, at } = arm;
  const slide = answer[SLIDE + VALUE]!;
  run.heat += Math.abs(rubOf(run) * (slide - state.anchor));
  state.anchor = slide;
  state.advance = at[3]!;
  if (state.meeting === 'open') work.x.fill(0);
  before.span = span;
  before.like = likeOf(state);
}

/** @returns force across the face [N], 0 or more */
export const pushOf = ({ work, arm }: Run): number => (arm.state.meeting === 'open' ? 0 : work.x[0]!);

/** @returns force of friction along the face [N], on the slide's own sign */
export const rubOf = (run: Run): number => {
  const { meeting, direction } = run.arm.state;
  if (meeting === 'open') return 0;
  return meeting === 'stick' ? run.work.x[1]! : -direction * run.friction * run.work.x[0]!;
};

/** What acts on the moving arm, written into Newton's border: the screw's contact, friction, a dead load. */
import type { Point } from '../path.js';
import type { System } from './bordered.js';
import {
  BY_ADVANCE,
  BY_ADVANCE_TURN,
  BY_TURN_TURN,
  BY_X,
  BY_X_TURN,
  BY_Y_TURN,
  CONTACT_ANSWER,
  GAP,
  SLIDE,
  type Touch,
  touchAt,
  VALUE,
} from './contact.js';
import { add, type Frame } from './frame.js';
import type { Border, Workspace } from './newton.js';

/** How tip and face meet. `slide`: friction, if any, acts against `direction`. */
export type Meeting = 'open' | 'slide' | 'stick';

/** Force that keeps its direction, on a point that rides on the arm. */
export interface DeadLoad {
  /** Point at rest [mm]. */
  readonly at: Point;
  /** [N] */
  readonly force: Point;
}

/** The arm's state while a step is solved. Extra unknowns: push λ; when sticking, rub τ; with `byFlex`, the advance. */
export interface ArmState {
  meeting: Meeting;
  byFlex: boolean;
  /** Slide's sense, +1 or −1, along the face. */
  direction: number;
  /** Where it sticks, σ [mm]. */
  anchor: number;
  advance: number;
  /** Turn of the leaf's end asked for, counter-clockwise [rad]. */
  turn: number;
  /** Share of the dead load. */
  load: number;
}

export interface ArmBorder {
  readonly state: ArmState;
  /** The contact's figures, as `touchAt` left them last. */
  readonly answer: Float64Array;
  /** u, v, turn, advance. */
  readonly at: Float64Array;
  readonly border: (state: ArmState) => Border;
  /** Brings `answer` up to where the frame stands. */
  readonly look: (work: Workspace) => void;
}

/**
 * @param end - the leaf's last node, whose turn is the flex @param tip - the node that carries the contact @param friction - μ
 * Source: Lagrange multipliers for the closed gap, Coulomb's law along the face (Wriggers, Computational Contact Mechanics, ch. 5 and 6; from
 * memory).
 */
export function newArmBorder(options: {
  /** Undefined: no screw. */
  readonly touch: Touch | undefined;
  readonly frame: Frame;
  readonly end: number;
  readonly tip: number;
  readonly friction: number;
  readonly load: DeadLoad | undefined;
}): ArmBorder {
  const { touch, frame, end, tip, friction, load } = options;
  const first = frame.equation[3 * tip]!;
  const endTurn = { place: 3 * end + 2, equation: frame.equation[3 * end + 2]! };
  const answer = new Float64Array(CONTACT_ANSWER);
  const at = new Float64Array(4);
  const state: ArmState = {
    meeting: touch ? (friction > 0 ? 'stick' : 'slide') : 'open',
    byFlex: false,
    direction: 0,
    anchor: 0,
    advance: 0,
    turn: 0,
    load: 0,
  };
  const place = 3 * tip;
  const look = ({ q, x }: Workspace) => {
    at[0] = q[place]!;
    at[1] = q[place + 1]!;
    at[2] = q[place + 2]!;
    at[3] = state.byFlex ? x[extrasOf(state) - 1]! : state.advance;
    if (touch) touchAt(touch, at, answer);
    else answer[GAP + VALUE] = Infinity;
  };

  const fill = (work: Workspace) => {
    const { system, x } = work;
    look(work);
    if (load && state.load !== 0) hang(system, first, at[2]!, load, state.load, frame.nodes[tip]!);
    if (state.meeting === 'open') return;
    const sticks = state.meeting === 'stick';
    const push = x[0]!;
    const ratio = sticks ? 0 : -state.direction * friction;
    const rub = sticks ? x[1]! : ratio * push;
    press(system, first, answer, push, rub);
    const size = system.band.size;
    for (let i = 0; i < 3; i++) {
      const g = answer[GAP + BY_X + i]!;
      const s = answer[SLIDE + BY_X + i]!;
      system.columns[first + i] = -g - ratio * s;
      system.rows[first + i] = g;
      if (sticks) {
        system.columns[size + first + i] = -s;
        system.rows[size + first + i] = s;
      }
    }
    system.gaps[0] = answer[GAP + VALUE]!;
    if (sticks) system.gaps[1] = answer[SLIDE + VALUE]! - state.anchor;
    if (!state.byFlex) return;
    const last = sticks ? 2 : 1;
    system.corner[last] = answer[GAP + BY_ADVANCE]!;
    if (sticks) system.corner[system.room + last] = answer[SLIDE + BY_ADVANCE]!;
    system.columns[last * size + first + 2] =
      -push * answer[GAP + BY_ADVANCE_TURN]! - rub * answer[SLIDE + BY_ADVANCE_TURN]!;
    system.rows[last * size + endTurn.equation] = 1;
    system.gaps[last] = work.q[endTurn.place]! - state.turn;
  };
  const borders = [0, 1, 2, 3].map((extras): Border => ({ extras, from: first, fill }));
  return { state, answer, at, look, border: (now) => borders[extrasOf(now)]! };
}

/** @returns how many extra unknowns a state has */
export const extrasOf = ({ meeting, byFlex }: ArmState): number =>
  (meeting === 'open' ? 0 : meeting === 'slide' ? 1 : 2) + (byFlex ? 1 : 0);

/** Takes the contact's forces off the residual, and their change off the tangent. */
function press(system: System, first: number, answer: Float64Array, push: number, rub: number): void {
  const { residual, band } = system;
  const { values, half } = band;
  for (let i = 0; i < 3; i++) residual[first + i]! -= push * answer[GAP + BY_X + i]! + rub * answer[SLIDE + BY_X + i]!;
  const of = (place: number) => -push * answer[GAP + place]! - rub * answer[SLIDE + place]!;
  add(values, half, first, first + 2, of(BY_X_TURN));
  add(values, half, first + 1, first + 2, of(BY_Y_TURN));
  add(values, half, first + 2, first + 2, of(BY_TURN_TURN));
}

function hang(system: System, first: number, turn: number, load: DeadLoad, share: number, node: Point): void {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const [x, y] = [load.at[0] - node[0], load.at[1] - node[1]];
  const wx = c * x - s * y;
  const wy = s * x + c * y;
  const fx = share * load.force[0];
  const fy = share * load.force[1];
  const { residual, band } = system;
  residual[first]! -= fx;
  residual[first + 1]! -= fy;
  residual[first + 2]! -= wx * fy - wy * fx;
  add(band.values, band.half, first + 2, first + 2, wx * fx + wy * fy);
}

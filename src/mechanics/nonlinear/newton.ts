/** Newton's iteration on a frame with a border of extra unknowns. */
import { clearBorder, newSystem, type System, solveStep } from './bordered.js';
import { assemble, type Frame, newScratch, type Scratch } from './frame.js';

/** No equilibrium was found: past a limit point under load control, or a step that is too large. */
export class NoEquilibrium extends Error {
  constructor(what: string) {
    super(what);
    this.name = 'NoEquilibrium';
  }
}

/** A step that moves a node farther than this many times the frame's size is a failure. */
const WILD = 10;

/** A frame with all the room that its solution needs; allocated once. */
export interface Workspace {
  readonly frame: Frame;
  readonly system: System;
  readonly scratch: Scratch;
  /** Displacements, held ones included [mm, rad]. */
  readonly q: Float64Array;
  /** Extra unknowns. */
  readonly x: Float64Array;
  /** A change of displacement beyond this [mm] is a failure. */
  readonly wild: number;
}

/** @param extras - most extra unknowns */
export const newWorkspace = (frame: Frame, extras: number): Workspace => ({
  frame,
  system: newSystem(frame.equations, frame.half, extras),
  scratch: newScratch(),
  q: new Float64Array(3 * frame.nodes.length),
  x: new Float64Array(extras),
  wild: WILD * sizeOf(frame),
});

/** What acts on the frame besides its own elasticity. */
export interface Border {
  /** How many extra unknowns are in use. */
  readonly extras: number;
  /** First equation that the border touches. */
  readonly from: number;
  /**
   * Adds the outer forces, with a minus, to `system.residual` and their tangent to `system.band`, and fills columns, rows, corner
   * and gaps at the displacements q and extra unknowns x.
   */
  readonly fill: (work: Workspace) => void;
}

/** An iteration stops when no displacement [mm] or turn [rad] changes by more. */
export const TOLERANCE = 1e-9;
const ITERATIONS = 24;

/**
 * Iterates q and x to equilibrium from where they stand.
 *
 * @param tolerance - largest last change [mm, rad]; the error left is far below it, as the convergence is quadratic
 * @returns number of iterations; 0 when there was no convergence, and q and x are then of no use
 * Source: Newton–Raphson (Crisfield, vol. 1, ch. 1 and 9).
 */
export function iterate(work: Workspace, border: Border, tolerance = TOLERANCE): number {
  const { frame, system, q, x, scratch, wild } = work;
  const { equation } = frame;
  const { residual, gaps } = system;
  for (let count = 1; count <= ITERATIONS; count++) {
    assemble(frame, q, system.band, residual, scratch);
    if (border.extras > 0) clearBorder(system);
    border.fill(work);
    if (!solveStep(system, border.extras, border.from)) return 0;
    let change = 0;
    for (let i = 0; i < equation.length; i++) {
      const e = equation[i]!;
      if (e < 0) continue;
      const step = residual[e]!;
      q[i]! += step;
      const size = Math.abs(step);
      // Not Math.max: a NaN must not pass.
      if (!(size <= change)) change = size;
    }
    for (let k = 0; k < border.extras; k++) x[k]! += gaps[k]!;
    if (!(change < wild)) return 0;
    if (change < tolerance) return count;
  }
  return 0;
}

function sizeOf({ nodes }: Frame): number {
  let size = 0;
  for (const [x, y] of nodes) size = Math.max(size, Math.abs(x - nodes[0]![0]) + Math.abs(y - nodes[0]![1]));
  return size;
}

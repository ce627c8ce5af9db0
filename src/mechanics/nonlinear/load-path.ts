/** A plain frame under a growing load: load control, or displacement control through limit points. */
import { type Frame, placeOf } from './frame.js';
import { type Border, iterate, NoEquilibrium, newWorkspace, type Workspace } from './newton.js';

/** Force or moment that keeps its direction [N, N·mm], at load factor 1. */
export interface NodeLoad {
  readonly node: number;
  readonly axis: 'x' | 'y' | 'turn';
  readonly value: number;
}

export interface LoadStep {
  /** Load factor. */
  readonly factor: number;
  /** Displacements (x, y, turn) of each node [mm, rad]. */
  readonly q: Float64Array;
  /** Newton iterations that the step took. */
  readonly iterations: number;
}

export interface LoadPathOptions {
  readonly frame: Frame;
  readonly load: readonly NodeLoad[];
  /** The load's factors in turn, or the values in turn of one displacement [mm] or turn [rad], whose load factor is sought. */
  readonly control:
    | { readonly factors: readonly number[] }
    | { readonly node: number; readonly axis: 'x' | 'y' | 'turn'; readonly values: readonly number[] };
  /** Largest last change of an iteration [mm, rad]; default 1e-9. */
  readonly tolerance?: number;
}

/**
 * Equilibrium at each factor, or at each value of the controlled displacement, starting from rest. Each step starts from the
 * one before, carried on along the last two.
 *
 * Displacement control passes limit points of the load, but not where the controlled displacement itself turns back.
 *
 * @returns one entry per factor or value
 * @throws {NoEquilibrium} where Newton's iteration fails @throws {RangeError} on a controlled displacement that is held
 * Source: Crisfield, Non-linear Finite Element Analysis of Solids and Structures, vol. 1, ch. 9.
 */
export function followLoad(options: LoadPathOptions): readonly LoadStep[] {
  const { frame, load, control, tolerance } = options;
  const byLoad = 'factors' in control;
  const targets = byLoad ? control.factors : control.values;
  const place = byLoad ? -1 : placeOf(control.node, control.axis);
  const held = byLoad ? 0 : frame.equation[place]!;
  if (!(held >= 0)) throw new RangeError('followLoad: the controlled displacement is held');
  const forces = new Float64Array(frame.equations);
  for (const { node, axis, value } of load) {
    const equation = frame.equation[placeOf(node, axis)] ?? -1;
    if (equation < 0) throw new RangeError(`followLoad: the load's ${axis} at node ${node} is held or not there`);
    forces[equation]! += value;
  }
  const work = newWorkspace(frame, 1);
  const { q, x } = work;
  let target = 0;
  const fill = ({ system }: Workspace) => {
    if (byLoad) x[0] = target;
    for (let i = 0; i < forces.length; i++) system.residual[i]! -= x[0]! * forces[i]!;
    if (byLoad) return;
    for (let i = 0; i < forces.length; i++) system.columns[i] = -forces[i]!;
    system.rows[held] = 1;
    system.gaps[0] = q[place]! - target;
  };
  const border: Border = { extras: byLoad ? 0 : 1, from: 0, fill };

  const steps: LoadStep[] = [];
  for (const next of targets) {
    const [last, before] = [steps.at(-1), steps.at(-2)];
    const done = target;
    target = next;
    if (last && before) {
      const span = done - (targets[steps.length - 2] ?? 0);
      const share = span === 0 ? 0 : (next - done) / span;
      for (let i = 0; i < q.length; i++) q[i] = last.q[i]! + share * (last.q[i]! - before.q[i]!);
      x[0] = last.factor + share * (last.factor - before.factor);
    }
    const iterations = iterate(work, border, tolerance);
    if (iterations === 0) throw new NoEquilibrium(`followLoad: no equilibrium found at ${next}`);
    steps.push({ factor: x[0]!, q: q.slice(), iterations });
  }
  return steps;
}

/** Plane frames of corotational beam elements: numbering, assembly, energy. */
import type { Point } from '../path.js';
import type { Band } from './banded.js';
import {
  ANSWER,
  bendElement,
  ENERGY,
  FX,
  FY,
  K11,
  K12,
  K22,
  KX1,
  KX2,
  KXX,
  KXY,
  KY1,
  KY2,
  KYY,
  M1,
  M2,
  REST,
} from './element.js';
import type { NaturalStiffness } from './natural-stiffness.js';

export interface Bar {
  /** Nodes by their place in the list; neighbours in the list keep the band narrow. */
  readonly from: number;
  readonly to: number;
  readonly stiffness: NaturalStiffness;
}

/** What a support holds: displacement in x, in y, turn. */
export interface Support {
  readonly node: number;
  readonly holds: readonly ('x' | 'y' | 'turn')[];
}

/** A frame at rest, ready to be solved. Displacements q: (x, y, turn) of each node in turn [mm, rad]. */
export interface Frame {
  readonly nodes: readonly Point[];
  readonly bars: number;
  /** Two nodes a bar. */
  readonly ends: Int32Array;
  /** `REST` figures a bar. */
  readonly rest: Float64Array;
  /** Equation of each displacement, −1 where it is held. */
  readonly equation: Int32Array;
  readonly equations: number;
  /** Half bandwidth. */
  readonly half: number;
}

const AXES = ['x', 'y', 'turn'] as const;

/** @returns place of a node's displacement in q */
export const placeOf = (node: number, axis: (typeof AXES)[number]): number => 3 * node + AXES.indexOf(axis);

/**
 * @param spec - nodes at rest [mm], bars, supports
 * @throws {RangeError} when a bar or support names a node that isn't there, or a bar has no length
 */
export function newFrame(spec: {
  readonly nodes: readonly Point[];
  readonly bars: readonly Bar[];
  readonly supports: readonly Support[];
}): Frame {
  const { nodes, bars, supports } = spec;
  const isNode = (node: number) => Number.isInteger(node) && node >= 0 && node < nodes.length;
  const equation = new Int32Array(3 * nodes.length);
  for (const { node, holds } of supports) {
    if (!isNode(node)) throw new RangeError(`frame: no node ${node} to support, there are ${nodes.length}`);
    for (const axis of holds) equation[placeOf(node, axis)] = -1;
  }
  let equations = 0;
  for (let i = 0; i < equation.length; i++) if (equation[i] === 0) equation[i] = equations++;

  const ends = new Int32Array(2 * bars.length);
  const rest = new Float64Array(REST * bars.length);
  let half = 0;
  bars.forEach(({ from, to, stiffness }, bar) => {
    if (!(isNode(from) && isNode(to))) throw new RangeError(`frame: bar ${bar} joins ${from} and ${to}`);
    const [x0, y0] = nodes[from]!;
    const [x1, y1] = nodes[to]!;
    const length = Math.hypot(x1 - x0, y1 - y0);
    if (!(length > 0 && length < Infinity)) throw new RangeError(`frame: bar ${bar} has length ${length}`);
    ends.set([from, to], 2 * bar);
    rest.set([length, Math.atan2(y1 - y0, x1 - x0), x1 - x0, y1 - y0, ...stiffness], REST * bar);
    const own = [0, 1, 2].flatMap((i) => [equation[3 * from + i]!, equation[3 * to + i]!]).filter((e) => e >= 0);
    if (own.length > 0) half = Math.max(half, Math.max(...own) - Math.min(...own));
  });
  return { nodes, bars: bars.length, ends, rest, equation, equations, half };
}

/** Room for one element's motion and answer. */
export interface Scratch {
  readonly motion: Float64Array;
  readonly answer: Float64Array;
}

export const newScratch = (): Scratch => ({ motion: new Float64Array(4), answer: new Float64Array(ANSWER) });

/** Bends one bar to the displacements q: its forces and tangent stand in `scratch.answer`. */
export function bendBar(frame: Frame, bar: number, q: Float64Array, scratch: Scratch): void {
  const from = 3 * frame.ends[2 * bar]!;
  const to = 3 * frame.ends[2 * bar + 1]!;
  const { motion } = scratch;
  motion[0] = q[to]! - q[from]!;
  motion[1] = q[to + 1]! - q[from + 1]!;
  motion[2] = q[from + 2]!;
  motion[3] = q[to + 2]!;
  bendElement(frame.rest, REST * bar, motion, scratch.answer);
}

/** Fills `band` with the tangent and `force` with the inner forces at the displacements q, free ones only. */
export function assemble(frame: Frame, q: Float64Array, band: Band, force: Float64Array, scratch: Scratch): void {
  const { ends, equation, bars } = frame;
  const { values, half } = band;
  const a = scratch.answer;
  values.fill(0);
  force.fill(0);
  for (let bar = 0; bar < bars; bar++) {
    bendBar(frame, bar, q, scratch);
    const from = 3 * ends[2 * bar]!;
    const to = 3 * ends[2 * bar + 1]!;
    const x1 = equation[from]!;
    const y1 = equation[from + 1]!;
    const t1 = equation[from + 2]!;
    const x2 = equation[to]!;
    const y2 = equation[to + 1]!;
    const t2 = equation[to + 2]!;
    const fx = a[FX]!;
    const fy = a[FY]!;
    if (x1 >= 0) force[x1]! -= fx;
    if (y1 >= 0) force[y1]! -= fy;
    if (t1 >= 0) force[t1]! += a[M1]!;
    if (x2 >= 0) force[x2]! += fx;
    if (y2 >= 0) force[y2]! += fy;
    if (t2 >= 0) force[t2]! += a[M2]!;
    const kxx = a[KXX]!;
    const kxy = a[KXY]!;
    const kyy = a[KYY]!;
    const kx1 = a[KX1]!;
    const ky1 = a[KY1]!;
    const kx2 = a[KX2]!;
    const ky2 = a[KY2]!;
    add(values, half, x1, x1, kxx);
    add(values, half, x1, y1, kxy);
    add(values, half, y1, y1, kyy);
    add(values, half, x1, t1, -kx1);
    add(values, half, y1, t1, -ky1);
    add(values, half, t1, t1, a[K11]!);
    add(values, half, x1, x2, -kxx);
    add(values, half, x1, y2, -kxy);
    add(values, half, y1, x2, -kxy);
    add(values, half, y1, y2, -kyy);
    add(values, half, x1, t2, -kx2);
    add(values, half, y1, t2, -ky2);
    add(values, half, t1, x2, kx1);
    add(values, half, t1, y2, ky1);
    add(values, half, t1, t2, a[K12]!);
    add(values, half, x2, x2, kxx);
    add(values, half, x2, y2, kxy);
    add(values, half, y2, y2, kyy);
    add(values, half, x2, t2, kx2);
    add(values, half, y2, t2, ky2);
    add(values, half, t2, t2, a[K22]!);
  }
}

/** Adds to the entry (i, j) of a symmetric band, given once; nothing where a displacement is held. */
export function add(values: Float64Array, half: number, i: number, j: number, value: number): void {
  if (i < 0 || j < 0) return;
  values[i >= j ? j * half + i : i * half + j]! += value;
}

/** @returns strain energy at the displacements q [N·mm] */
export function strainEnergy(frame: Frame, q: Float64Array, scratch: Scratch = newScratch()): number {
  let sum = 0;
  for (let bar = 0; bar < frame.bars; bar++) {
    bendBar(frame, bar, q, scratch);
    sum += scratch.answer[ENERGY]!;
  }
  return sum;
}

/** Frames and leaves for the tests of the nonlinear mechanics. */
import type { Bar, Frame, Support } from '../../src/mechanics/nonlinear/frame.js';
import { newFrame } from '../../src/mechanics/nonlinear/frame.js';
import { type BeamSection, straightStiffness } from '../../src/mechanics/nonlinear/natural-stiffness.js';
import type { Point, Stretch } from '../../src/mechanics/path.js';

/** Straight members joined end to end, each cut into equal elements. */
export function chain(options: {
  readonly corners: readonly Point[];
  readonly cuts: readonly number[];
  readonly section: BeamSection;
  readonly supports: readonly Support[];
}): Frame {
  const { corners, cuts, section, supports } = options;
  const nodes: Point[] = [corners[0]!];
  cuts.forEach((count, k) => {
    const [[x0, y0], [x1, y1]] = [corners[k]!, corners[k + 1]!];
    for (let i = 1; i <= count; i++) nodes.push([x0 + ((x1 - x0) * i) / count, y0 + ((y1 - y0) * i) / count]);
  });
  const bars = nodes.slice(1).map(([x, y], i): Bar => {
    const length = Math.hypot(x - nodes[i]![0], y - nodes[i]![1]);
    return { from: i, to: i + 1, stiffness: straightStiffness(length, section) };
  });
  return newFrame({ nodes, bars, supports });
}

export const builtIn = (node: number): Support => ({ node, holds: ['x', 'y', 'turn'] });
export const pinned = (node: number): Support => ({ node, holds: ['x', 'y'] });

/** `count` values, evenly spaced, the last being `to`. */
export const evenly = (to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => (to * (i + 1)) / count);

/** A straight stretch, heading counter-clockwise from +x. */
export const straight = (start: Point, heading: number, length: number): Stretch => ({
  start,
  heading,
  curvature: 0,
  length,
});

/** Off by how much, as a fraction of what is wanted. */
export const off = (have: number, want: number): number => Math.abs(have / want - 1);

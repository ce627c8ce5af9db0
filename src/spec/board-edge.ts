/** Rectangles along a board's edges: jacks, clips, room for plugs. Board coordinates, mm. */
import type { Connector, Edge, Module } from '../components/module.js';

/** x from, y from, x to, y to. */
export type Area = readonly [number, number, number, number];

type Outline = Pick<Module, 'length' | 'width'>;

interface Along {
  readonly along: readonly [number, number];
  /** From the edge outward; inward is negative. */
  readonly out: readonly [number, number];
}

export function atEdge({ length, width }: Outline, edge: Edge, { along: [a, b], out: [near, far] }: Along): Area {
  if (edge === 'left') return [0 - far, a, 0 - near, b];
  if (edge === 'right') return [length.value + near, a, length.value + far, b];
  return edge === 'front' ? [a, 0 - far, b, 0 - near] : [a, width.value + near, b, width.value + far];
}

/** A jack is this much narrower and lower than its plug, and reaches in from the edge by this. Common practice. */
export const JACK = { depth: 7, less: 4 } as const;

/** @returns what a plug from outside goes into, flush with the board's edge */
export function jackOf(outline: Outline, { side, at, width }: Connector): Area {
  const half = Math.max(1, width - JACK.less) / 2;
  return atEdge(outline, side, { along: [at - half, at + half], out: [-JACK.depth, 0] });
}

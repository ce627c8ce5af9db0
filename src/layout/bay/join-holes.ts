/** Holes of one lid that leave no printable plastic between them become one: a lamp beside a window, a knob on a display. mm. */
import type { LidHole, Rect } from './types.js';

/** @returns what a hole reaches: its middle grown by a radius, or its rectangle by none */
const coreOf = (hole: LidHole): { readonly core: Rect; readonly radius: number } =>
  hole.kind === 'rectangle'
    ? { core: hole.rect, radius: 0 }
    : { core: [hole.at[0], hole.at[1], hole.at[0], hole.at[1]], radius: hole.radius };

export function boundsOf(hole: LidHole): Rect {
  const { core, radius } = coreOf(hole);
  return [core[0] - radius, core[1] - radius, core[2] + radius, core[3] + radius];
}

/** @returns the plastic left between two holes [mm], 0 or less where they run into each other */
function webBetween(one: LidHole, other: LidHole): number {
  const [a, b] = [coreOf(one), coreOf(other)];
  const dx = Math.max(0, a.core[0] - b.core[2], b.core[0] - a.core[2]);
  const dy = Math.max(0, a.core[1] - b.core[3], b.core[1] - a.core[3]);
  return Math.hypot(dx, dy) - a.radius - b.radius;
}

/**
 * @param least - the thinnest plastic that may stand between two holes [mm]
 * @returns holes of which any two leave at least that; one that is joined with another is their common rectangle
 */
export function joinHoles(holes: readonly LidHole[], least: number): readonly LidHole[] {
  for (const [i, one] of holes.entries())
    for (const [j, other] of holes.entries()) {
      if (j <= i || webBetween(one, other) >= least - 1e-9) continue;
      const [a, b] = [boundsOf(one), boundsOf(other)];
      const rect: Rect = [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
      return joinHoles([...holes.filter((_, k) => k !== i && k !== j), { kind: 'rectangle', rect }], least);
    }
  return holes;
}

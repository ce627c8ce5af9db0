/** Pairs of placements that may come near each other. */
import { POSES, type Pose } from '../kit/types.js';
import type { Box, Vec3 } from '../solid/mesh.js';
import type { Body, Scene } from './scene.js';

export interface Pair {
  readonly a: Body;
  readonly b: Body;
  /** Poses at which the two can stand differently to each other. */
  readonly poses: readonly Pose[];
}

/** @returns all pairs whose boxes, over all poses, come within `reach` [mm] of each other */
export function nearPairs(scene: Scene, reach: number): Pair[] {
  const held = scene.bodies.map((body) => ({ body, box: boxOverPoses(body) }));
  held.sort((p, q) => p.box.min[0] - q.box.min[0]);
  const pairs: Pair[] = [];
  held.forEach((p, i) => {
    for (let k = i + 1; k < held.length; k++) {
      const q = held[k]!;
      if (q.box.min[0] > p.box.max[0] + reach) break;
      if (q.box.min[1] > p.box.max[1] + reach || p.box.min[1] > q.box.max[1] + reach) continue;
      if (q.box.min[2] > p.box.max[2] + reach || p.box.min[2] > q.box.max[2] + reach) continue;
      const [a, b] = p.body.index < q.body.index ? [p.body, q.body] : [q.body, p.body];
      pairs.push({ a, b, poses: a.changes || b.changes ? POSES : ['level'] });
    }
  });
  return pairs.sort((p, q) => p.a.index - q.a.index || p.b.index - q.b.index);
}

function boxOverPoses({ at }: Body): Box {
  const boxes = POSES.map((pose) => at[pose].box);
  const over = (pick: (...values: number[]) => number, end: 'min' | 'max') =>
    [0, 1, 2].map((k) => pick(...boxes.map((box) => box[end][k]!))) as unknown as Vec3;
  return { min: over(Math.min, 'min'), max: over(Math.max, 'max') };
}

/** Largest overlap that either of the two declares with the other [mm³]; null when none does. */
export function meantOverlap(a: Body, b: Body): number | null {
  const meant = [
    ...a.placement.overlaps.filter((o) => o.with === b.name),
    ...b.placement.overlaps.filter((o) => o.with === a.name),
  ];
  return meant.length === 0 ? null : Math.max(...meant.map((o) => o.most));
}

export const meantToTouch = (a: Body, b: Body): boolean =>
  a.placement.touches.includes(b.name) || b.placement.touches.includes(a.name);

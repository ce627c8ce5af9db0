/** Places of a solid that stay narrow over some height: walls, gaps and holes, found on horizontal sections. */
import type { MeasuringKernel, Narrow, NarrowPlace, Solid } from '../../solid/kernel.js';
import type { Mesh, Vec3 } from '../../solid/mesh.js';
import { type PrintLimits, RELIEF } from './limits.js';

export interface NarrowAt {
  readonly width: number;
  readonly at: Vec3;
  readonly closed: boolean;
  /** Longer side of the box around it [mm]. */
  readonly length: number;
}

/** Sections are this far below whole steps [mm]: faces often lie on them. */
const BELOW = 0.013;
/** A place that is found on so many sections a quarter of the relief apart is no relief. */
const STAYS = 4;

/**
 * A wall that is higher than relief meets one of the sections that lie as far apart as that. Where a section shows a narrow place,
 * more are cut above and below it: letters and marks are not walls.
 */
export function narrowPlaces(
  kernel: MeasuringKernel,
  solid: Solid,
  { limits, mesh }: { readonly limits: PrintLimits; readonly mesh: Mesh },
): { readonly walls: readonly NarrowAt[]; readonly gaps: readonly NarrowAt[] } {
  const top = kernel.box(solid).max[2];
  const levels = levelsOf(mesh.positions);
  const cut = new Map<number, Narrow>();
  const look = (z: number): Narrow => {
    let found = cut.get(z);
    if (!found) {
      found = kernel.narrow(solid, z, { wall: limits.wall, gap: limits.hole, shallow: limits.line });
      cut.set(z, found);
    }
    return found;
  };
  const stays = (z: number, kind: 'walls' | 'gaps', place: NarrowPlace): boolean => {
    let [count, quarter] = [1, RELIEF / 4];
    for (const way of [1, -1]) {
      let last = place;
      for (let n = 1; count < STAYS; n++) {
        const at = z + way * n * quarter;
        if (at <= 0 || at >= top) break;
        const next = look(at)[kind].find((other) => meet(last, other));
        if (!next) break;
        last = next;
        count++;
      }
    }
    return count >= STAYS;
  };
  const found = { walls: [] as NarrowAt[], gaps: [] as NarrowAt[] };
  let before = -1;
  for (let z = RELIEF - BELOW; z < top; z += RELIEF) {
    // No vertices between two sections: what is narrow on the one is narrow on the other.
    if (before > 0 && !levels.some((level) => level > before && level < z)) continue;
    before = z;
    const here = look(z);
    for (const kind of ['walls', 'gaps'] as const)
      for (const place of here[kind]) {
        if (!stays(z, kind, place)) continue;
        const { min, max } = place.box;
        found[kind].push({
          width: place.width,
          at: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, z],
          closed: place.closed,
          length: Math.max(max[0] - min[0], max[1] - min[1]),
        });
      }
  }
  return found;
}

/** Heights at which there are vertices. */
function levelsOf(positions: Float32Array): readonly number[] {
  const levels = new Set<number>();
  for (let i = 2; i < positions.length; i += 3) levels.add(positions[i]!);
  return [...levels];
}

const meet = (a: NarrowPlace, b: NarrowPlace): boolean =>
  [0, 1].every((k) => a.box.min[k]! <= b.box.max[k]! && b.box.min[k]! <= a.box.max[k]!);

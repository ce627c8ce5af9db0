/**
 * Facets without area, which a boolean leaves where an edge is split at a point that lies on it: each is a point on the
 * longest side of the facet. Turning that side over gives the neighbour's corner to both halves: same shape, no sliver.
 */
import type { FineMesh } from './stl-grid.js';

/** A facet less high than this over its longest side is a line [mm]. */
const LEAST_HEIGHT = 1e-6;
/** Turning one side over can make the neighbour a sliver in turn; a chain is followed so far. */
const PASSES = 20;

/** @returns the same mesh where there is no such facet; otherwise a copy in which they are turned over, as far as they can be */
export function withoutSlivers(mesh: FineMesh): FineMesh {
  const { positions } = mesh;
  let slivers = sliversOf(mesh);
  if (slivers.length === 0) return mesh;

  const triangles = mesh.triangles.slice();
  const points = positions.length / 3;
  const sides = new Map<number, number>();
  const side = (from: number, to: number) => from * points + to;
  const sidesOf = (t: number) => [0, 1, 2].map((i) => side(triangles[3 * t + i]!, triangles[3 * t + ((i + 1) % 3)]!));
  const enter = (t: number) => {
    for (const one of sidesOf(t)) sides.set(one, t);
  };
  const leave = (t: number) => {
    for (const one of sidesOf(t)) sides.delete(one);
  };
  for (let t = 0; t < triangles.length / 3; t++) enter(t);
  for (let pass = 0; pass < PASSES && slivers.length > 0; pass++) {
    for (const t of slivers) {
      const { sliver, from, to, middle } = longestSide({ positions, triangles }, t);
      const other = sliver ? sides.get(side(to, from)) : undefined;
      if (other === undefined || other === t) continue;
      const opposite = [0, 1, 2].map((i) => triangles[3 * other + i]!).find((v) => v !== from && v !== to)!;
      // The new side must not exist yet: a third face would meet there.
      if (sides.has(side(middle, opposite)) || sides.has(side(opposite, middle))) continue;
      leave(t);
      leave(other);
      triangles.set([from, opposite, middle], 3 * t);
      triangles.set([opposite, to, middle], 3 * other);
      enter(t);
      enter(other);
    }
    slivers = sliversOf({ positions, triangles });
  }
  return { positions, triangles };
}

function sliversOf({ positions, triangles }: FineMesh): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i < triangles.length; i += 3)
    if (isSliver(positions, 3 * triangles[i]!, 3 * triangles[i + 1]!, 3 * triangles[i + 2]!)) found.push(i / 3);
  return found;
}

/** Twice the area is the height times the longest side. @param a - where the corner's coordinates begin; so b, c */
function isSliver(p: Float64Array, a: number, b: number, c: number): boolean {
  const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
  const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
  const [wx, wy, wz] = [vx - ux, vy - uy, vz - uz];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const longest = Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz, wx * wx + wy * wy + wz * wz);
  return nx * nx + ny * ny + nz * nz < LEAST_HEIGHT * LEAST_HEIGHT * longest;
}

/** The longest side of a facet, and the corner off it. */
function longestSide({ positions: p, triangles }: FineMesh, t: number) {
  const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
  const apart = (v: number, w: number) =>
    Math.hypot(p[3 * w]! - p[3 * v]!, p[3 * w + 1]! - p[3 * v + 1]!, p[3 * w + 2]! - p[3 * v + 2]!);
  const [ab, bc, ca] = [apart(a, b), apart(b, c), apart(c, a)];
  const [from, to, middle] = ab >= bc && ab >= ca ? [a, b, c] : bc >= ca ? [b, c, a] : [c, a, b];
  return { from, to, middle, sliver: isSliver(p, 3 * a, 3 * b, 3 * c) };
}

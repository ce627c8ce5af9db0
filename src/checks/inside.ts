/** Is a point inside a shape? */
import type { Mesh, Vec3 } from '../solid/mesh.js';
import type { Tree } from './tree.js';

/** A direction along no edge that is drawn: rays along it don't run along faces. */
const RAY: Vec3 = [0.741937, 0.313731, 0.592583];

/** Is the point inside? Not decided within rounding of the surface. */
export function holds(tree: Tree, point: Vec3): boolean {
  for (let k = 0; k < 3; k++) if (point[k]! < tree.bounds[k]! || point[k]! > tree.bounds[3 + k]!) return false;
  const reach = [0, 1, 2].reduce((sum, k) => sum + tree.bounds[3 + k]! - tree.bounds[k]!, 0);
  const way: Vec3 = [reach * RAY[0], reach * RAY[1], reach * RAY[2]];
  let turns = 0;
  visitRay(tree, point, (triangle) => {
    turns += crossing(cornersFrom(tree.mesh, triangle, point), way);
  });
  return turns > 0;
}

/** Calls `visit` with each triangle whose node's box the ray from the point along RAY meets. */
function visitRay(tree: Tree, from: Vec3, visit: (triangle: number) => void): void {
  const { bounds, links, counts, order } = tree;
  const stack = [0];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    let enter = 0;
    let leave = Infinity;
    for (let k = 0; k < 3; k++) {
      // RAY runs up every axis, so the least face comes first.
      enter = Math.max(enter, (bounds[6 * node + k]! - from[k]!) / RAY[k]!);
      leave = Math.min(leave, (bounds[6 * node + 3 + k]! - from[k]!) / RAY[k]!);
    }
    if (enter > leave + 1e-9) continue;
    const link = links[node]!;
    if (link >= 0) stack.push(link, link + 1);
    else for (let i = 0; i < counts[node]!; i++) visit(order[-1 - link + i]!);
  }
}

/** A triangle's corners, seen from a point. */
const cornersFrom = ({ positions, triangles }: Mesh, triangle: number, from: Vec3) =>
  [0, 1, 2].map((c) => {
    const v = 3 * triangles[3 * triangle + c]!;
    return [positions[v]! - from[0], positions[v + 1]! - from[1], positions[v + 2]! - from[2]] as const;
  }) as [Vec3, Vec3, Vec3];

/** +1 where the way from the origin leaves through the triangle, −1 where it enters, 0 where it misses. */
function crossing(p: readonly [Vec3, Vec3, Vec3], way: Vec3): number {
  // Signed volumes of the tetrahedra over the three edges: all of one sign when the line passes inside.
  const u = triple(way, p[0], p[1]);
  const v = triple(way, p[1], p[2]);
  const w = triple(way, p[2], p[0]);
  if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0)) || u + v + w === 0) return 0;
  const behind = triple(p[0], p[1], p[2]) / (u + v + w);
  return behind > 0 && behind <= 1 ? Math.sign(u + v + w) : 0;
}

const triple = (a: Vec3, b: Vec3, c: Vec3) =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);

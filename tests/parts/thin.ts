/** How thick a solid is where rays from its faces inward meet a face that looks the other way. */

import type { Mesh, Vec3 } from '../../src/solid/mesh.js';
import { corners, triangleArea, triangleCount } from '../../src/solid/mesh-measures.js';

export interface Thickness {
  readonly thickness: number;
  readonly at: Vec3;
  readonly normal: Vec3;
}

/** Faces count as parallel within 18°: wedges run out to nothing. */
const FACING = -0.95;
/** No facet above this area is left out [mm²]. */
const SMALL = 0.02;

/**
 * @param rays - about how many to send; large facets get more
 * @returns every thickness found up to `below` [mm]
 */
export function thinPlaces(
  mesh: Mesh,
  { rays, below }: { readonly rays: number; readonly below: number },
): Thickness[] {
  const count = triangleCount(mesh);
  const facets = Array.from({ length: count }, (_, t) => facet(mesh, t));
  const total = facets.reduce((sum, one) => sum + one.area, 0);
  const random = sequence();
  const found: Thickness[] = [];
  facets.forEach((from, t) => {
    if (from.area < SMALL) return;
    const sent = Math.max(1, Math.round((rays * from.area) / total));
    for (let i = 0; i < sent; i++) {
      let [a, b] = [random(), random()];
      if (a + b > 1) [a, b] = [1 - a, 1 - b];
      const at = [0, 1, 2].map((k) => from.a[k]! + a * from.u[k]! + b * from.v[k]!) as unknown as Vec3;
      let nearest = below;
      let facing = 0;
      facets.forEach((other, j) => {
        if (j === t || other.area === 0) return;
        const far = cut(at, from.normal, other, nearest);
        if (far === null) return;
        nearest = far;
        facing = dot(from.normal, other.normal);
      });
      if (facing < FACING) found.push({ thickness: nearest, at, normal: from.normal });
    }
  });
  return found;
}

interface Facet {
  readonly a: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly normal: Vec3;
  readonly area: number;
  readonly min: Vec3;
  readonly max: Vec3;
}

function facet(mesh: Mesh, t: number): Facet {
  const [a, b, c] = corners(mesh, t);
  const [u, v] = [minus(b, a), minus(c, a)];
  const n = cross(u, v);
  const length = Math.hypot(...n) || 1;
  const bound = (pick: (...values: number[]) => number) =>
    [0, 1, 2].map((k) => pick(a[k]!, b[k]!, c[k]!)) as unknown as Vec3;
  return {
    a,
    u,
    v,
    normal: [n[0] / length, n[1] / length, n[2] / length],
    area: triangleArea(mesh, t),
    min: bound(Math.min),
    max: bound(Math.max),
  };
}

/** Distance inward (against the normal) to a facet, or null beyond `most`. Möller and Trumbore, 1997. */
function cut(at: Vec3, normal: Vec3, { a, u, v, min, max }: Facet, most: number): number | null {
  for (let k = 0; k < 3; k++) {
    const end = at[k]! - most * normal[k]!;
    if (Math.max(at[k]!, end) < min[k]! - 1e-9 || Math.min(at[k]!, end) > max[k]! + 1e-9) return null;
  }
  const d: Vec3 = [-normal[0], -normal[1], -normal[2]];
  const p = cross(d, v);
  const det = dot(u, p);
  if (Math.abs(det) < 1e-12) return null;
  const s = minus(at, a);
  const x = dot(s, p) / det;
  if (x < 0 || x > 1) return null;
  const q = cross(s, u);
  const y = dot(d, q) / det;
  if (y < 0 || x + y > 1) return null;
  const far = dot(v, q) / det;
  return far > 1e-5 && far < most ? far : null;
}

/** Even numbers in [0, 1), the same each time: a linear congruential sequence (Numerical Recipes' constants, from memory). */
function sequence(): () => number {
  let state = 1;
  return () => {
    state = (1664525 * state + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

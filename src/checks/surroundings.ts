/**
 * What of a shape's surface stands about a place, in figures that don't depend on how its faces are cut into triangles.
 *
 * A rail has the same bay a dozen times, and what is measured in one need not be measured in the next. Two places whose
 * surfaces agree in all these integrals differ, if at all, by less volume than counts as an overlap. (They don't tell how
 * the facets of a round hole are turned: round pins are drawn within their circle and holes about it, so no facet matters.)
 */
import type { Box, Matrix, Vec3 } from '../solid/mesh.js';
import { placedTriangle, type Tree, transformBox, visitBox } from './tree.js';

/** Integrals of 1, x, y, z, x², y², z², xy, yz, zx over the surface, each weighted by ten functions of the normal. */
export type Surroundings = Float64Array;

const TERMS = 10;

/** Two integrals are the same within this, times the box's half diagonal to the power of their degree [mm²]. */
const SAME = 1e-3;

/**
 * @param place - from the shape's coordinates to those of the box
 * @param back - the way back
 */
export function surroundingsIn(
  tree: Tree,
  { box, place, back }: { readonly box: Box; readonly place: Matrix; readonly back: Matrix },
): Surroundings {
  const out = new Float64Array(TERMS * TERMS);
  const middle: Vec3 = [0, 1, 2].map((k) => (box.min[k]! + box.max[k]!) / 2) as unknown as Vec3;
  visitBox(tree, transformBox(box, back), (triangle) => {
    const c = placedTriangle(tree.mesh, triangle, place);
    const points: Vec3[] = [0, 3, 6].map((p) => [c[p]! - middle[0], c[p + 1]! - middle[1], c[p + 2]! - middle[2]]);
    const polygon = clip(points, [0, 1, 2].map((k) => (box.max[k]! - box.min[k]!) / 2) as unknown as Vec3);
    if (polygon.length >= 3) addPolygon(out, polygon);
    return false;
  });
  return out;
}

/** Do they agree to within what can't matter? `reach` is the box's half diagonal [mm]. */
export function sameSurroundings(p: Surroundings, q: Surroundings, reach: number): boolean {
  for (let i = 0; i < p.length; i++) {
    const term = i % TERMS;
    const degree = term === 0 ? 0 : term < 4 ? 1 : 2;
    if (!(Math.abs(p[i]! - q[i]!) <= SAME * reach ** degree)) return false;
  }
  return true;
}

/** The part of a polygon within ± half on each axis (Sutherland and Hodgman). */
function clip(polygon: readonly Vec3[], half: Vec3): readonly Vec3[] {
  let left = polygon;
  for (let k = 0; k < 3; k++)
    for (const sign of [1, -1]) {
      const room = (p: Vec3) => half[k]! - sign * p[k]!;
      if (left.every((p) => room(p) >= 0)) continue;
      const kept: Vec3[] = [];
      left.forEach((p, i) => {
        const q = left[(i + 1) % left.length]!;
        const [a, b] = [room(p), room(q)];
        if (a >= 0) kept.push(p);
        if (a >= 0 !== b >= 0) {
          const t = a / (a - b);
          kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
        }
      });
      left = kept;
    }
  return left;
}

/** Adds a plane polygon's integrals, triangle by triangle: over one, ∫ x_i x_j = area / 12 · (Σ x_i x_j + Σ x_i Σ x_j). */
function addPolygon(out: Surroundings, polygon: readonly Vec3[]): void {
  const a = polygon[0]!;
  for (let i = 1; i + 1 < polygon.length; i++) {
    const b = polygon[i]!;
    const c = polygon[i + 1]!;
    const nx = (b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1]);
    const ny = (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2]);
    const nz = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (twice < 1e-12) continue;
    const [x, y, z] = [nx / twice, ny / twice, nz / twice];
    const area = twice / 2;
    const [sx, sy, sz] = [a[0] + b[0] + c[0], a[1] + b[1] + c[1], a[2] + b[2] + c[2]];
    const terms = [
      area,
      (area / 3) * sx,
      (area / 3) * sy,
      (area / 3) * sz,
      (area / 12) * (a[0] * a[0] + b[0] * b[0] + c[0] * c[0] + sx * sx),
      (area / 12) * (a[1] * a[1] + b[1] * b[1] + c[1] * c[1] + sy * sy),
      (area / 12) * (a[2] * a[2] + b[2] * b[2] + c[2] * c[2] + sz * sz),
      (area / 12) * (a[0] * a[1] + b[0] * b[1] + c[0] * c[1] + sx * sy),
      (area / 12) * (a[1] * a[2] + b[1] * b[2] + c[1] * c[2] + sy * sz),
      (area / 12) * (a[2] * a[0] + b[2] * b[0] + c[2] * c[0] + sz * sx),
    ];
    const weights = [1, x, y, z, x * x, y * y, z * z, x * y, y * z, z * x];
    for (let w = 0; w < TERMS; w++) for (let t = 0; t < TERMS; t++) out[w * TERMS + t]! += weights[w]! * terms[t]!;
  }
}

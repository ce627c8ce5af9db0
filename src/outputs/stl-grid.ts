/**
 * A mesh on a grid, for a file of float32: points that a boolean left closer together than the grid become one, so that no
 * facet collapses when its corners are rounded.
 */
import type { Mesh } from '../solid/mesh.js';
import { meshBox } from '../solid/mesh-measures.js';

/** Step of the grid over the mean of the box's edges. */
const STEP = 1e-5;

/** Like a mesh, with its places still in double precision. */
export interface FineMesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

/**
 * Points that meet take facets between them along; what is left pairs as before, as each facet so lost had one edge of no
 * length and two that cancel.
 *
 * @param mesh - with a triangle at least
 */
export function onGrid(mesh: Mesh): FineMesh {
  const { min, max } = meshBox(mesh);
  const step = (STEP * (max[0] - min[0] + (max[1] - min[1]) + (max[2] - min[2]))) / 3;
  // Zero is added so that −0 and 0 are one place.
  const positions = Float64Array.from(mesh.positions, (c) => Math.round(c / step) * step + 0);
  const same = firstAtPlace(positions);
  const triangles = mesh.triangles.map((v) => same[v]!);
  let kept = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    if (a === b || b === c || c === a) continue;
    triangles[kept++] = a;
    triangles[kept++] = b;
    triangles[kept++] = c;
  }
  return { positions, triangles: triangles.subarray(0, kept) };
}

/** For each point the first one at its place. */
function firstAtPlace(positions: Float64Array): Uint32Array {
  const order = Uint32Array.from({ length: positions.length / 3 }, (_, v) => v);
  const compare = (a: number, b: number) =>
    positions[3 * a]! - positions[3 * b]! ||
    positions[3 * a + 1]! - positions[3 * b + 1]! ||
    positions[3 * a + 2]! - positions[3 * b + 2]!;
  order.sort((a, b) => compare(a, b) || a - b);
  const first = new Uint32Array(order.length);
  order.forEach((v, i) => {
    const before = order[i - 1];
    first[v] = before !== undefined && compare(before, v) === 0 ? first[before]! : v;
  });
  return first;
}

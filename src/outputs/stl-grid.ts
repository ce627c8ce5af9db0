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
 * length and two that cancel. Two facets that come to lie back to back go as well: nothing is between them.
 *
 * @param mesh - with a triangle at least
 */
export function onGrid(mesh: Mesh): FineMesh {
  const { min, max } = meshBox(mesh);
  const step = (STEP * (max[0] - min[0] + (max[1] - min[1]) + (max[2] - min[2]))) / 3;
  // Zero is added so that −0 and 0 are one place.
  const positions = new Float64Array(mesh.positions.length);
  for (let i = 0; i < positions.length; i++) positions[i] = Math.round(mesh.positions[i]! / step) * step + 0;
  const same = firstAtPlace(positions);
  const all = mesh.triangles.map((v) => same[v]!);
  const whole = facetsWhere(all, (a, b, c) => a !== b && b !== c && c !== a);
  // Where no point met another, no facet can have come to lie on another.
  return { positions, triangles: whole.length === all.length ? whole : withoutBacks(whole) };
}

function facetsWhere(
  triangles: Uint32Array,
  keep: (a: number, b: number, c: number, t: number) => boolean,
): Uint32Array {
  const kept = new Uint32Array(triangles.length);
  let length = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    if (!keep(a, b, c, i / 3)) continue;
    kept[length++] = a;
    kept[length++] = b;
    kept[length++] = c;
  }
  return kept.subarray(0, length);
}

/** Leaves out pairs of facets with the same corners and opposite sense. */
function withoutBacks(triangles: Uint32Array): Uint32Array {
  const open = new Map<string, number[]>();
  const gone = new Set<number>();
  for (let t = 0; t < triangles.length / 3; t++) {
    const corners = [...triangles.subarray(3 * t, 3 * t + 3)];
    const first = corners.indexOf(Math.min(...corners));
    const [a, b, c] = [corners[first]!, corners[(first + 1) % 3]!, corners[(first + 2) % 3]!];
    const back = open.get(`${a} ${c} ${b}`)?.pop();
    if (back === undefined) open.set(`${a} ${b} ${c}`, [...(open.get(`${a} ${b} ${c}`) ?? []), t]);
    else gone.add(t).add(back);
  }
  return gone.size === 0 ? triangles : facetsWhere(triangles, (_a, _b, _c, t) => !gone.has(t));
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

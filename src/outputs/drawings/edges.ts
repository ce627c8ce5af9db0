/** Edges of a mesh that a drawing shows: where faces meet at an angle, and where a rounded face turns away from the eye. */
import type { Mesh, Vec3 } from '../../solid/mesh.js';

/** Faces that meet at less than this are one face: cosine of 20°. */
const SMOOTH = 0.94;
/** A face less high than this over its longest side is a sliver [mm]. */
const LEAST = 0.01;

/** Slivers beside slivers: so often a normal is handed on. */
const PASSES = 4;

export interface Edges {
  /** Two corners an edge, three numbers each [mm]. */
  readonly corners: Float64Array;
  /** Normals of the two faces, three numbers each. */
  readonly normals: Float32Array;
  /** Faces meet at an angle: drawn from everywhere. */
  readonly sharp: Uint8Array;
}

/** A part is drawn alone, in the plan and taken apart. */
const found = new WeakMap<Mesh, Edges>();

export function edgesOf(mesh: Mesh): Edges {
  const known = found.get(mesh);
  if (known) return known;
  const edges = findEdges(mesh);
  found.set(mesh, edges);
  return edges;
}

/** @returns what is left without the edges that have both ends where `away` says so, file coordinates */
export function withoutEdges({ corners, normals, sharp }: Edges, away: (point: Vec3) => boolean): Edges {
  const end = (e: number, k: 0 | 3): Vec3 => [corners[6 * e + k]!, corners[6 * e + k + 1]!, corners[6 * e + k + 2]!];
  const kept = [...sharp.keys()].filter((e) => !(away(end(e, 0)) && away(end(e, 3))));
  const six = (of: Float64Array | Float32Array) => kept.flatMap((e) => [...of.subarray(6 * e, 6 * e + 6)]);
  return {
    corners: Float64Array.from(six(corners)),
    normals: Float32Array.from(six(normals)),
    sharp: Uint8Array.from(kept, (e) => sharp[e]!),
  };
}

function findEdges({ positions, triangles }: Mesh): Edges {
  const count = triangles.length / 3;
  const faces = new Float32Array(3 * count);
  const slivers = new Map<number, number>();
  for (let t = 0; t < count; t++) {
    const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    const ux = positions[b]! - positions[a]!;
    const uy = positions[b + 1]! - positions[a + 1]!;
    const uz = positions[b + 2]! - positions[a + 2]!;
    const vx = positions[c]! - positions[a]!;
    const vy = positions[c + 1]! - positions[a + 1]!;
    const vz = positions[c + 2]! - positions[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const longest = Math.max(
      ux * ux + uy * uy + uz * uz,
      vx * vx + vy * vy + vz * vz,
      (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2,
    );
    if (length > LEAST * Math.sqrt(longest)) {
      faces[3 * t] = nx / length;
      faces[3 * t + 1] = ny / length;
      faces[3 * t + 2] = nz / length;
    } else slivers.set(t, longest);
  }
  const { pairs, of } = neighbours(positions.length / 3, triangles);
  // A sliver's own normal says nothing: it takes that of the face along its longest side, and again where that is one, too.
  for (let pass = 0; pass < PASSES && slivers.size > 0; pass++)
    for (const [t, longest] of [...slivers])
      for (let k = 0; k < 3; k++) {
        const other = of[3 * t + k]!;
        if (other < 0 || slivers.has(other)) continue;
        const [p, q] = [3 * triangles[3 * t + k]!, 3 * triangles[3 * t + ((k + 1) % 3)]!];
        const side =
          (positions[q]! - positions[p]!) ** 2 +
          (positions[q + 1]! - positions[p + 1]!) ** 2 +
          (positions[q + 2]! - positions[p + 2]!) ** 2;
        if (side < longest * (1 - 1e-9) && pass < PASSES - 1) continue;
        faces.copyWithin(3 * t, 3 * other, 3 * other + 3);
        slivers.delete(t);
        break;
      }
  const corners: number[] = [];
  const normals: number[] = [];
  const sharp: number[] = [];
  for (let i = 0; i < pairs.length; i += 2) {
    const [half, other] = [pairs[i]!, Math.floor(pairs[i + 1]! / 3)];
    const t = Math.floor(half / 3);
    const dot =
      faces[3 * t]! * faces[3 * other]! +
      faces[3 * t + 1]! * faces[3 * other + 1]! +
      faces[3 * t + 2]! * faces[3 * other + 2]!;
    // Coplanar neighbours are never seen, from nowhere.
    if (dot > 1 - 1e-6 || slivers.has(t) || slivers.has(other)) continue;
    for (const v of [triangles[half]!, triangles[3 * t + ((half + 1) % 3)]!])
      for (let k = 0; k < 3; k++) corners.push(positions[3 * v + k]!);
    for (const f of [t, other]) for (let k = 0; k < 3; k++) normals.push(faces[3 * f + k]!);
    sharp.push(dot < SMOOTH ? 1 : 0);
  }
  return { corners: Float64Array.from(corners), normals: Float32Array.from(normals), sharp: Uint8Array.from(sharp) };
}

/** @returns half edges (3 · triangle + corner where they begin) two by two, and for each the triangle beyond it, −1 where there is none */
function neighbours(
  vertices: number,
  triangles: Uint32Array,
): { readonly pairs: readonly number[]; readonly of: Int32Array } {
  const of = new Int32Array(triangles.length).fill(-1);
  const pairs: number[] = [];
  // Half edges by the vertex of theirs that comes first: few each, so that a walk along them is soon over.
  const first = new Int32Array(vertices).fill(-1);
  const next = new Int32Array(triangles.length).fill(-1);
  const far = new Int32Array(triangles.length);
  for (let i = 0; i < triangles.length; i++) {
    const [p, q] = [triangles[i]!, triangles[i % 3 === 2 ? i - 2 : i + 1]!];
    const [low, high] = p < q ? [p, q] : [q, p];
    let at = first[low]!;
    let before = -1;
    while (at >= 0 && far[at] !== high) {
      before = at;
      at = next[at]!;
    }
    if (at < 0) {
      far[i] = high;
      next[i] = first[low]!;
      first[low] = i;
      continue;
    }
    pairs.push(i, at);
    of[i] = Math.floor(at / 3);
    of[at] = Math.floor(i / 3);
    if (before < 0) first[low] = next[at]!;
    else next[before] = next[at]!;
  }
  return { pairs, of };
}

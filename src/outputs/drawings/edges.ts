/** Edges of a mesh that a drawing shows: where faces meet at an angle, and where a rounded face turns away from the eye. */
import type { Mesh } from '../../solid/mesh.js';

/** Faces that meet at less than this are one face: cosine of 20°. */
const SMOOTH = 0.94;
/** A face less high than this over its longest side is a sliver [mm]. */
const LEAST = 0.01;

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

function findEdges({ positions, triangles }: Mesh): Edges {
  const count = triangles.length / 3;
  const faces = new Float32Array(3 * count);
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
    // A sliver's normal says nothing: it stays 0 and counts as lying in its neighbour's plane.
    const longest = Math.max(
      ux * ux + uy * uy + uz * uz,
      vx * vx + vy * vy + vz * vz,
      (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2,
    );
    if (length > LEAST * Math.sqrt(longest)) {
      faces[3 * t] = nx / length;
      faces[3 * t + 1] = ny / length;
      faces[3 * t + 2] = nz / length;
    }
  }
  const isSliver = (t: number) => faces[3 * t] === 0 && faces[3 * t + 1] === 0 && faces[3 * t + 2] === 0;
  const vertices = positions.length / 3;
  const first = new Map<number, number>();
  const corners: number[] = [];
  const normals: number[] = [];
  const sharp: number[] = [];
  for (let i = 0; i < triangles.length; i++) {
    const t = Math.floor(i / 3);
    const [from, to] = [triangles[i]!, triangles[3 * t + ((i + 1) % 3)]!];
    const key = Math.min(from, to) * vertices + Math.max(from, to);
    const other = first.get(key);
    if (other === undefined) {
      first.set(key, t);
      continue;
    }
    const dot =
      faces[3 * t]! * faces[3 * other]! +
      faces[3 * t + 1]! * faces[3 * other + 1]! +
      faces[3 * t + 2]! * faces[3 * other + 2]!;
    // Coplanar neighbours are never seen, from nowhere.
    if (dot > 1 - 1e-6 || isSliver(t) || isSliver(other)) continue;
    for (const v of [from, to]) for (let k = 0; k < 3; k++) corners.push(positions[3 * v + k]!);
    for (const f of [t, other]) for (let k = 0; k < 3; k++) normals.push(faces[3 * f + k]!);
    sharp.push(dot < SMOOTH ? 1 : 0);
  }
  return { corners: Float64Array.from(corners), normals: Float32Array.from(normals), sharp: Uint8Array.from(sharp) };
}

/**
 * Measures of a closed mesh, from its triangles alone and without a kernel.
 *
 * By the divergence theorem a closed surface encloses the signed sum of the tetrahedra over its triangles, V = Σ a · (b × c) / 6,
 * and its centroid is Σ Vᵢ (a + b + c) / 4 over V.
 */
import { disjointSets } from './disjoint-sets.js';
import type { Box, Mesh, Vec3 } from './mesh.js';

/** Volume enclosed [mm³]; below zero when the mesh is inside out. Meaningful for a closed mesh only. */
export function meshVolume(mesh: Mesh): number {
  return moments(mesh).volume;
}

/** Centre of the volume [mm]. @throws {RangeError} when no volume is enclosed */
export function meshCentroid(mesh: Mesh): Vec3 {
  const { volume, centroid } = moments(mesh);
  if (!(Math.abs(volume) > 0)) throw new RangeError('meshCentroid: the mesh encloses no volume');
  return centroid;
}

/** Sum of the triangles' areas [mm²]. */
export function meshArea(mesh: Mesh): number {
  let area = 0;
  for (let t = 0; t < triangleCount(mesh); t++) area += triangleArea(mesh, t);
  return area;
}

/** Area of one triangle [mm²]. */
export function triangleArea(mesh: Mesh, triangle: number): number {
  const [a, b, c] = corners(mesh, triangle);
  return Math.hypot(...cross(minus(b, a), minus(c, a))) / 2;
}

/** Smallest axis-aligned box around the vertices in use. @throws {RangeError} when there is no triangle */
export function meshBox({ positions, triangles }: Mesh): Box {
  if (triangles.length === 0) throw new RangeError('meshBox: the mesh has no triangle');
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const v of triangles)
    for (let i = 0; i < 3; i++) {
      const c = positions[3 * v + i]!;
      if (c < min[i]!) min[i] = c;
      if (c > max[i]!) max[i] = c;
    }
  return { min, max };
}

export const triangleCount = (mesh: Mesh): number => mesh.triangles.length / 3;

/** How a mesh's edges pair; the surface is closed and orientable when both counts are 0. */
export interface EdgePairing {
  /** Directed edges that no neighbour runs in the other direction. */
  readonly open: number;
  /** Edges that more than two triangles share. */
  readonly shared: number;
  /** Edges in all. */
  readonly edges: number;
}

export function pairEdges({ triangles, positions }: Mesh): EdgePairing {
  const vertices = positions.length / 3;
  // Each edge by the number of its smaller vertex and its larger one, in a table probed in line: its uses forth and back.
  const mask = 2 ** Math.ceil(Math.log2(2 * triangles.length + 2)) - 1;
  const keys = new Float64Array(mask + 1).fill(-1);
  const forth = new Uint32Array(mask + 1);
  const back = new Uint32Array(mask + 1);
  for (let i = 0; i < triangles.length; i++) {
    const from = triangles[i]!;
    const to = triangles[i % 3 === 2 ? i - 2 : i + 1]!;
    const [low, high] = from < to ? [from, to] : [to, from];
    const key = low * vertices + high;
    let slot = (Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b)) >>> 0;
    for (slot = (slot ^ (slot >>> 15)) & mask; keys[slot] !== -1 && keys[slot] !== key; ) slot = (slot + 1) & mask;
    keys[slot] = key;
    if (from < to) forth[slot]!++;
    else back[slot]!++;
  }
  let [open, shared, edges] = [0, 0, 0];
  for (let slot = 0; slot <= mask; slot++) {
    const [f, b] = [forth[slot]!, back[slot]!];
    if (f + b === 0) continue;
    open += Math.abs(f - b);
    if (f + b > 2) shared++;
    edges++;
  }
  return { open, shared, edges };
}

/** Separate closed shells. */
export function shellCount({ triangles, positions }: Mesh): number {
  const { join, root } = disjointSets(positions.length / 3);
  for (let i = 0; i < triangles.length; i += 3) {
    join(triangles[i + 1]!, triangles[i]!);
    join(triangles[i + 2]!, triangles[i]!);
  }
  return new Set(Array.from(triangles, root)).size;
}

/** Handles in all shells together, by Euler's formula: shells − (V − E + F) / 2. For a closed mesh. */
export function handleCount(mesh: Mesh): number {
  const characteristic = new Set(mesh.triangles).size - pairEdges(mesh).edges + triangleCount(mesh);
  return shellCount(mesh) - characteristic / 2;
}

function moments({ positions: p, triangles }: Mesh): { readonly volume: number; readonly centroid: Vec3 } {
  if (triangles.length === 0) return { volume: 0, centroid: [0, 0, 0] };
  // Taken about a vertex of the mesh: far from the origin the sum would cancel digits away.
  const first = 3 * triangles[0]!;
  const [ox, oy, oz] = [p[first]!, p[first + 1]!, p[first + 2]!];
  let [volume, sx, sy, sz] = [0, 0, 0, 0];
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i]!;
    const b = 3 * triangles[i + 1]!;
    const c = 3 * triangles[i + 2]!;
    const ax = p[a]! - ox;
    const ay = p[a + 1]! - oy;
    const az = p[a + 2]! - oz;
    const bx = p[b]! - ox;
    const by = p[b + 1]! - oy;
    const bz = p[b + 2]! - oz;
    const cx = p[c]! - ox;
    const cy = p[c + 1]! - oy;
    const cz = p[c + 2]! - oz;
    const v = (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    volume += v;
    sx += (v * (ax + bx + cx)) / 4;
    sy += (v * (ay + by + cy)) / 4;
    sz += (v * (az + bz + cz)) / 4;
  }
  return { volume, centroid: [ox + sx / volume, oy + sy / volume, oz + sz / volume] };
}

/** The three corners of a triangle. */
export function corners({ positions, triangles }: Mesh, triangle: number): readonly [Vec3, Vec3, Vec3] {
  const at = (i: number): Vec3 => {
    const v = 3 * triangles[3 * triangle + i]!;
    return [positions[v]!, positions[v + 1]!, positions[v + 2]!];
  };
  return [at(0), at(1), at(2)];
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

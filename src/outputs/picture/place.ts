/** Triangles of all items in the assembly's coordinates, less what a cut takes away. */
import type { Matrix, Mesh, Vec3 } from '../../solid/mesh.js';

export interface Item {
  readonly mesh: Mesh;
  /** Rigid; left out: as the mesh stands. */
  readonly matrix?: Matrix;
  /** Red, green and blue, 0 to 255. */
  readonly colour: Vec3;
}

/** Takes away what lies below or above a coordinate. */
export interface Cut {
  readonly axis: 0 | 1 | 2;
  readonly away: '<' | '>';
  readonly at: number;
}

export interface World {
  /** Nine numbers a triangle [mm]. */
  readonly corners: Float64Array;
  /** The item that each triangle belongs to. */
  readonly owner: Uint16Array;
  /** Unit normals, three numbers a triangle. */
  readonly normals: Float32Array;
  readonly items: readonly Item[];
}

export function place(items: readonly Item[], cut: Cut | null): World {
  const capacity = items.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0) * (cut ? 2 : 1);
  const corners = new Float64Array(9 * capacity);
  const owner = new Uint16Array(capacity);
  let count = 0;
  items.forEach(({ mesh, matrix }, item) => {
    const points = moved(mesh.positions, matrix);
    const { triangles } = mesh;
    for (let t = 0; t < triangles.length; t += 3) {
      if (!cut) {
        for (let k = 0; k < 3; k++) {
          const from = 3 * triangles[t + k]!;
          corners[9 * count + 3 * k] = points[from]!;
          corners[9 * count + 3 * k + 1] = points[from + 1]!;
          corners[9 * count + 3 * k + 2] = points[from + 2]!;
        }
        owner[count++] = item;
        continue;
      }
      const triangle = [0, 1, 2].map((k): Vec3 => {
        const from = 3 * triangles[t + k]!;
        return [points[from]!, points[from + 1]!, points[from + 2]!];
      });
      const kept = clip(triangle, cut);
      for (let i = 2; i < kept.length; i++) {
        corners.set([...kept[0]!, ...kept[i - 1]!, ...kept[i]!], 9 * count);
        owner[count++] = item;
      }
    }
  });
  return {
    corners: corners.subarray(0, 9 * count),
    owner: owner.subarray(0, count),
    normals: normalsOf(corners, count),
    items,
  };
}

function moved(positions: Float32Array, m: Matrix | undefined): Float64Array {
  const out = new Float64Array(positions);
  if (!m) return out;
  for (let i = 0; i < out.length; i += 3) {
    const [x, y, z] = [out[i]!, out[i + 1]!, out[i + 2]!];
    out[i] = m[0]! * x + m[1]! * y + m[2]! * z + m[3]!;
    out[i + 1] = m[4]! * x + m[5]! * y + m[6]! * z + m[7]!;
    out[i + 2] = m[8]! * x + m[9]! * y + m[10]! * z + m[11]!;
  }
  return out;
}

/** What of a triangle stays: a polygon of up to four corners, in the same sense. */
function clip(points: readonly Vec3[], { axis, away, at }: Cut): Vec3[] {
  const sign = away === '<' ? -1 : 1;
  const out: Vec3[] = [];
  points.forEach((p, i) => {
    const q = points[(i + 1) % 3]!;
    const [dp, dq] = [sign * (p[axis] - at), sign * (q[axis] - at)];
    if (dp <= 0) out.push(p);
    if (dp < 0 !== dq < 0 && dp !== dq) {
      const s = dp / (dp - dq);
      if (s > 0 && s < 1) out.push([p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1]), p[2] + s * (q[2] - p[2])]);
    }
  });
  return out;
}

function normalsOf(c: Float64Array, count: number): Float32Array {
  const normals = new Float32Array(3 * count);
  for (let t = 0, i = 0; t < count; t++, i += 9) {
    const [ux, uy, uz] = [c[i + 3]! - c[i]!, c[i + 4]! - c[i + 1]!, c[i + 5]! - c[i + 2]!];
    const [vx, vy, vz] = [c[i + 6]! - c[i]!, c[i + 7]! - c[i + 1]!, c[i + 8]! - c[i + 2]!];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const l = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    normals[3 * t] = nx / l;
    normals[3 * t + 1] = ny / l;
    normals[3 * t + 2] = nz / l;
  }
  return normals;
}

/** Points, directions and places, beyond what `solid/` offers. */
import { frame } from '../solid/matrix.js';
import type { Box, Matrix, Vec3 } from '../solid/mesh.js';

/** Distance between two boxes [mm]; 0 when they touch or overlap. */
export function boxDistance(a: Box, b: Box): number {
  const x = Math.max(0, a.min[0] - b.max[0], b.min[0] - a.max[0]);
  const y = Math.max(0, a.min[1] - b.max[1], b.min[1] - a.max[1]);
  const z = Math.max(0, a.min[2] - b.max[2], b.min[2] - a.max[2]);
  return Math.hypot(x, y, z);
}

/** From b's coordinates to a's. */
export const relative = (a: Matrix, b: Matrix): Matrix => {
  const m = new Array<number>(16).fill(0);
  const [dx, dy, dz] = [b[3]! - a[3]!, b[7]! - a[7]!, b[11]! - a[11]!];
  for (let r = 0; r < 3; r++) {
    const [x, y, z] = [a[r]!, a[4 + r]!, a[8 + r]!];
    for (let c = 0; c < 3; c++) m[4 * r + c] = x * b[c]! + y * b[4 + c]! + z * b[8 + c]!;
    m[4 * r + 3] = x * dx + y * dy + z * dz;
  }
  m[15] = 1;
  return m;
};

/** Figures to 1e-6, as a key. */
export function roundedKey(figures: readonly number[]): string {
  let key = '';
  // Adding 0 turns −0 into 0.
  for (const value of figures) key += `${Math.round(value * 1e6) + 0},`;
  return key;
}

/** A frame at the point whose z axis is the unit direction. */
export function frameAlong(from: Vec3, z: Vec3): Matrix {
  // Across the axis that the direction leans on least.
  const least = [0, 1, 2].sort((i, k) => Math.abs(z[i]!) - Math.abs(z[k]!))[0]!;
  const other = [0, 0, 0];
  other[least] = 1;
  const x = unit(cross(other as unknown as Vec3, z));
  return frame(x, cross(z, x), z, from);
}

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** a + t·b */
export const along = (a: Vec3, b: Vec3, t: number): Vec3 => [a[0] + t * b[0], a[1] + t * b[1], a[2] + t * b[2]];

export const unit = (v: Vec3): Vec3 => {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
};

/** Rigid transforms, row major. */
import type { Matrix, Vec3 } from './mesh.js';

/** @returns the move by v [mm] */
export const translation = ([x, y, z]: Vec3): Matrix => [1, 0, 0, x, 0, 1, 0, y, 0, 0, 1, z, 0, 0, 0, 1];

/** @param axis - the coordinate axis turned about @param angle - right-handed [rad] */
export function rotation(axis: 'x' | 'y' | 'z', angle: number): Matrix {
  // Quarter turns are exact, so that boxes stay on their grid.
  const c = snapUnit(Math.cos(angle));
  const s = snapUnit(Math.sin(angle));
  if (axis === 'x') return [1, 0, 0, 0, 0, c, -s, 0, 0, s, c, 0, 0, 0, 0, 1];
  if (axis === 'y') return [c, 0, s, 0, 0, 1, 0, 0, -s, 0, c, 0, 0, 0, 0, 1];
  return [c, -s, 0, 0, s, c, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
}

/** The transform whose columns are the images of the three axes and of the origin. */
export const frame = (x: Vec3, y: Vec3, z: Vec3, origin: Vec3): Matrix => [
  x[0],
  y[0],
  z[0],
  origin[0],
  x[1],
  y[1],
  z[1],
  origin[1],
  x[2],
  y[2],
  z[2],
  origin[2],
  0,
  0,
  0,
  1,
];

/** Product: the last one given is applied first. */
export function multiply(...matrices: readonly Matrix[]): Matrix {
  return matrices.reduce((a, b) => {
    const out = new Array<number>(16).fill(0);
    for (let r = 0; r < 4; r++)
      for (let c = 0; c < 4; c++) for (let k = 0; k < 4; k++) out[4 * r + c]! += a[4 * r + k]! * b[4 * k + c]!;
    return out;
  });
}

/** @returns m applied to the point p [mm] */
export const apply = (m: Matrix, [x, y, z]: Vec3): Vec3 => [
  m[0]! * x + m[1]! * y + m[2]! * z + m[3]!,
  m[4]! * x + m[5]! * y + m[6]! * z + m[7]!,
  m[8]! * x + m[9]! * y + m[10]! * z + m[11]!,
];

/** @returns m applied to the direction v: rotation only */
export const applyDirection = (m: Matrix, [x, y, z]: Vec3): Vec3 => [
  m[0]! * x + m[1]! * y + m[2]! * z,
  m[4]! * x + m[5]! * y + m[6]! * z,
  m[8]! * x + m[9]! * y + m[10]! * z,
];

/** Inverse of a rigid transform: the transposed rotation. */
export function invertRigid(m: Matrix): Matrix {
  const [a, b, c, , d, e, f, , g, h, i] = m as number[];
  const t: Vec3 = [m[3]!, m[7]!, m[11]!];
  const back = (p: number, q: number, r: number) => -(p * t[0] + q * t[1] + r * t[2]);
  return [a!, d!, g!, back(a!, d!, g!), b!, e!, h!, back(b!, e!, h!), c!, f!, i!, back(c!, f!, i!), 0, 0, 0, 1];
}

const snapUnit = (value: number) => (Math.abs(value - Math.round(value)) < 1e-15 ? Math.round(value) : value);

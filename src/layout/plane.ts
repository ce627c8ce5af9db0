/** Rigid motions of the mount's profile plane, by hand and as 4 × 4 matrices. */
import { multiply, rotation, translation } from '../solid/matrix.js';
import type { Matrix, Vec2 } from '../solid/mesh.js';
import type { PlaneMotion } from './leaf-shape.js';

/** @returns the motion applied to p, about an origin given in the same coordinates */
export function moved(motion: PlaneMotion, [u, w]: Vec2, [u0, w0]: Vec2): Vec2 {
  const [c, s] = [Math.cos(motion.angle), Math.sin(motion.angle)];
  const [a, b] = [u - u0, w - w0];
  return [u0 + c * a - s * b + motion.du, w0 + s * a + c * b + motion.dw];
}

/** The same motion on solids whose x and y are the profile's u and w. */
export function planeMatrix(motion: PlaneMotion, [u0, w0]: Vec2): Matrix {
  return multiply(
    translation([u0 + motion.du, w0 + motion.dw, 0]),
    rotation('z', motion.angle),
    translation([-u0, -w0, 0]),
  );
}

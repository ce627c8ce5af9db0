/** Where the eye stands, and how large the picture shows things: parallel projection. */
import { cross, dot, unit } from '../../checks/vectors.js';
import type { Vec3 } from '../../solid/mesh.js';

/** Directions from the thing to the eye. */
export const VIEWS = {
  'iso-front': [-0.6, -1, 0.8],
  'iso-back': [0.6, 1, 0.8],
  'iso-right': [1, -0.6, 0.8],
  'iso-left': [-1, 0.6, 0.8],
  'iso-below': [-0.6, -1, -0.8],
  'iso-below-back': [0.6, 1, -0.8],
  top: [0, 0, 1],
  below: [0, 0, -1],
  near: [0, -1, 0],
  far: [0, 1, 0],
  left: [-1, 0, 0],
  right: [1, 0, 0],
} as const satisfies Record<string, Vec3>;

/** Share of the picture left free on each side. */
const MARGIN = 0.05;

export type Axes = readonly [right: Vec3, up: Vec3, toEye: Vec3];

export function cameraAxes(toEye: Vec3): Axes {
  const z = unit(toEye);
  const up: Vec3 = Math.abs(z[2]) > 0.99 ? [0, 1, 0] : [0, 0, 1];
  const x = unit(cross(up, z));
  return [x, cross(z, x), z];
}

export interface Fit {
  /** Samples per mm. */
  readonly scale: number;
  /** The picture's middle along the first two axes [mm]. */
  readonly u: number;
  readonly v: number;
}

/**
 * @param corners - what the picture is to hold, three numbers a corner [mm]
 * @param size - of the picture [samples]
 * @param zoom - times larger than what fits
 * @throws {RangeError} when there is nothing to show
 */
export function fit(
  corners: Float64Array,
  [x, y]: Axes,
  {
    size: [width, height],
    centre = null,
    zoom = 1,
  }: { readonly size: readonly [number, number]; readonly centre?: Vec3 | null; readonly zoom?: number },
): Fit {
  let [l, r, b, t] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 3) {
    const u = x[0] * corners[i]! + x[1] * corners[i + 1]! + x[2] * corners[i + 2]!;
    const v = y[0] * corners[i]! + y[1] * corners[i + 1]! + y[2] * corners[i + 2]!;
    if (u < l) l = u;
    if (u > r) r = u;
    if (v < b) b = v;
    if (v > t) t = v;
  }
  if (!(r > l)) throw new RangeError('picture: nothing to show: every item is hidden or cut away');
  const scale = zoom * (1 - 2 * MARGIN) * Math.min(width / (r - l), height / (t - b));
  return { scale, u: centre ? dot(x, centre) : (l + r) / 2, v: centre ? dot(y, centre) : (b + t) / 2 };
}

/** Where the eye stands, and how large the picture shows things: parallel projection. */
import { cross, dot, unit } from './vectors.mjs';

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
};

/** Share of the picture left free on each side. */
const MARGIN = 0.05;

/** @returns unit vectors to the right, up, and towards the eye */
export function cameraAxes(toEye) {
  const z = unit(toEye);
  const up = Math.abs(z[2]) > 0.99 ? [0, 1, 0] : [0, 0, 1];
  const x = unit(cross(up, z));
  return [x, cross(z, x), z];
}

/**
 * @param {{ corners: Float64Array }} shown - what the picture is to hold
 * @param axes - from `cameraAxes`
 * @param {{ size: readonly [number, number], centre?: readonly number[] | null, zoom?: number }} options - the middle of the picture; the scale's factor
 * @returns samples per mm at one sample a pixel, and the middle along the first two axes
 * @throws {Error} when there is nothing to show
 */
export function fit({ corners }, [x, y], { size: [width, height], centre = null, zoom = 1 }) {
  let [l, r, b, t] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 3) {
    const u = x[0] * corners[i] + x[1] * corners[i + 1] + x[2] * corners[i + 2];
    const v = y[0] * corners[i] + y[1] * corners[i + 1] + y[2] * corners[i + 2];
    [l, r, b, t] = [Math.min(l, u), Math.max(r, u), Math.min(b, v), Math.max(t, v)];
  }
  if (!(r > l)) throw new Error('nothing to show: every item is hidden or cut away');
  const scale = zoom * (1 - 2 * MARGIN) * Math.min(width / (r - l), height / (t - b));
  return { scale, u: centre ? dot(x, centre) : (l + r) / 2, v: centre ? dot(y, centre) : (b + t) / 2 };
}

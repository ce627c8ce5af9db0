/**
 * Shaded pictures of triangles, to judge parts by eye: parallel projection, z-buffer, flat shading, dark lines where the
 * surface has an edge. Closed solids only: where a cut opens one, the inside of its far wall is painted as the cut.
 */
import { cameraAxes, fit, VIEWS } from './camera.mjs';
import { place } from './place.mjs';
import { rasterize } from './rasterize.mjs';
import { shade } from './shade.mjs';

export { VIEWS } from './camera.mjs';

/**
 * @typedef {readonly [number, number, number]} Vec3
 * @typedef {{ readonly soup: Float32Array, readonly matrix?: readonly number[], readonly colour: Vec3 }} Item
 *   Nine numbers a triangle; a rigid row-major matrix; red, green and blue from 0 to 255.
 * @typedef {{ readonly axis: 0 | 1 | 2, readonly away: '<' | '>', readonly at: number }} Cut - takes away what lies below or above a coordinate
 * @typedef {{ readonly toEye?: Vec3, readonly size?: readonly [number, number], readonly cut?: Cut | null, readonly focus?: readonly Item[], readonly centre?: Vec3 | null, readonly zoom?: number }} View
 *   `focus`: what the picture is fitted to; `centre`: the point in its middle; `zoom`: times larger than what fits.
 */

/** Samples a pixel, each way. */
const SAMPLES = 2;

/**
 * @param {readonly Item[]} items
 * @param {View} view
 * @returns {{ width: number, height: number, rgb: Uint8Array }}
 * @throws {Error} when there is nothing to show
 */
export function picture(
  items,
  { toEye = VIEWS['iso-front'], size = [1200, 900], cut = null, focus = items, centre = null, zoom = 1 } = {},
) {
  const [width, height] = size.map((pixels) => pixels * SAMPLES);
  const axes = cameraAxes(toEye);
  const world = place(items, cut);
  const frame = fit(focus === items ? world : place(focus, cut), axes, { size: [width, height], centre, zoom });
  const buffers = rasterize(world, { axes, ...frame, width, height, fromBehind: cut !== null });
  const fine = shade(world, buffers, { axes, cut: cut !== null });
  return { width: size[0], height: size[1], rgb: shrink(fine, size[0], size[1]) };
}

/** Mean of the samples of each pixel. */
function shrink(fine, width, height) {
  const rgb = new Uint8Array(3 * width * height);
  const stride = 3 * width * SAMPLES;
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      for (let i = 0; i < 3; i++) {
        let sum = 0;
        for (let dy = 0; dy < SAMPLES; dy++)
          for (let dx = 0; dx < SAMPLES; dx++)
            sum += fine[(row * SAMPLES + dy) * stride + 3 * (column * SAMPLES + dx) + i];
        rgb[3 * (row * width + column) + i] = Math.round(sum / SAMPLES ** 2);
      }
  return rgb;
}

/**
 * Shaded pictures of meshes: parallel projection, z-buffer, flat shading, dark lines where the surface has an edge. Closed
 * solids only: where a cut opens one, the inside of its far wall is painted as the cut.
 */
import type { Vec3 } from '../../solid/mesh.js';
import { cameraAxes, fit, VIEWS } from './camera.js';
import { type Cut, type Item, place } from './place.js';
import { rasterize } from './rasterize.js';
import { shade } from './shade.js';

export { VIEWS } from './camera.js';
export type { Cut, Item } from './place.js';

export interface View {
  readonly toEye?: Vec3;
  /** [pixels] */
  readonly size?: readonly [number, number];
  readonly cut?: Cut | null;
  /** What the picture is fitted to; left out: everything. */
  readonly focus?: readonly Item[];
  /** The point in its middle. */
  readonly centre?: Vec3 | null;
  /** Times larger than what fits. */
  readonly zoom?: number;
}

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Three bytes a pixel, row by row from the top. */
  readonly rgb: Uint8Array;
}

/** Samples a pixel, each way. */
const SAMPLES = 2;

/** @throws {RangeError} when there is nothing to show */
export function picture(
  items: readonly Item[],
  { toEye = VIEWS['iso-front'], size = [1200, 900], cut = null, focus = items, centre = null, zoom = 1 }: View = {},
): Picture {
  const fine = [size[0] * SAMPLES, size[1] * SAMPLES] as const;
  const axes = cameraAxes(toEye);
  const world = place(items, cut);
  const corners = focus === items ? world.corners : place(focus, cut).corners;
  const fitted = fit(corners, axes, { size: fine, centre, zoom });
  const buffers = rasterize(world, { axes, fit: fitted, size: fine, fromBehind: cut !== null });
  return { width: size[0], height: size[1], rgb: shrink(shade(world, buffers, { axes, cut: cut !== null }), size) };
}

/** Mean of the samples of each pixel. */
function shrink(fine: Uint8Array, [width, height]: readonly [number, number]): Uint8Array {
  const rgb = new Uint8Array(3 * width * height);
  const stride = 3 * width * SAMPLES;
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const from = row * SAMPLES * stride + 3 * column * SAMPLES;
      for (let i = 0; i < 3; i++) {
        const sum = fine[from + i]! + fine[from + 3 + i]! + fine[from + stride + i]! + fine[from + stride + 3 + i]!;
        // A fourth, rounded to the nearest.
        rgb[3 * (row * width + column) + i] = (sum + 2) >> 2;
      }
    }
  return rgb;
}

/** Colour of every sample: flat shading, dark lines along edges and outlines, hatching where a cut opens a solid. */
import { unit } from '../../checks/vectors.js';
import type { Vec3 } from '../../solid/mesh.js';
import type { Axes } from './camera.js';
import type { World } from './place.js';
import type { Buffers } from './rasterize.js';

const BACKGROUND: Vec3 = [250, 250, 248];
/** Surfaces that meet at more than this are told apart by a line: cosine of 20°. */
const CREASE = 0.94;
/** Samples from one line of the hatching to the next, and its width. */
const HATCH = { every: 12, wide: 2 };

/** @returns red, green and blue of each sample */
export function shade(
  { normals, owner, items }: World,
  { depth, seen, width, height, scale }: Buffers,
  { axes: [ax, ay, az], cut }: { readonly axes: Axes; readonly cut: boolean },
): Uint8Array {
  const light = unit([
    az[0] + 0.45 * ay[0] - 0.5 * ax[0],
    az[1] + 0.45 * ay[1] - 0.5 * ax[1],
    az[2] + 0.45 * ay[2] - 0.5 * ax[2],
  ]);
  const rgb = new Uint8Array(3 * width * height);
  // Once a triangle, not once a sample.
  const facing = new Float32Array(owner.length);
  const brightness = new Float32Array(owner.length);
  for (let t = 0; t < owner.length; t++) {
    const [x, y, z] = [normals[3 * t]!, normals[3 * t + 1]!, normals[3 * t + 2]!];
    facing[t] = x * az[0] + y * az[1] + z * az[2];
    brightness[t] = 0.5 + 0.5 * Math.max(0, x * light[0] + y * light[1] + z * light[2]) + 0.06 * z;
  }
  // The inside of a far wall is seen only through a cut: it stands for the cut face.
  const isCut = (t: number) => cut && facing[t]! < 0;
  /** Of two samples that show different triangles, or one of them nothing. */
  const line = (at: number, to: number): boolean => {
    const ta = seen[at]!;
    const tb = seen[to]!;
    if (ta < 0 || tb < 0) return true;
    const ca = isCut(ta);
    if (owner[ta] !== owner[tb] || ca !== isCut(tb)) return true;
    if (ca) return false;
    const bend =
      normals[3 * ta]! * normals[3 * tb]! +
      normals[3 * ta + 1]! * normals[3 * tb + 1]! +
      normals[3 * ta + 2]! * normals[3 * tb + 2]!;
    if (bend < CREASE) return true;
    // Parallel surfaces one behind the other: a step larger than the surface's own slope explains.
    const slope = 1 / Math.max(0.05, Math.min(facing[ta]!, facing[tb]!));
    return Math.abs(depth[at]! - depth[to]!) * scale > 3 * slope;
  };
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = row * width + column;
      const t = seen[at]!;
      const right = column + 1 < width ? seen[at + 1]! : t;
      const below = row + 1 < height ? seen[at + width]! : t;
      // Most samples show nothing, or what those beside them show.
      if (t < 0 && right < 0 && below < 0) {
        rgb[3 * at] = BACKGROUND[0];
        rgb[3 * at + 1] = BACKGROUND[1];
        rgb[3 * at + 2] = BACKGROUND[2];
        continue;
      }
      const edge = (right !== t && line(at, at + 1)) || (below !== t && line(at, at + width));
      const colour = t < 0 ? BACKGROUND : items[owner[t]!]!.colour;
      let bright = 1;
      if (t >= 0) bright = isCut(t) ? ((row + column) % HATCH.every < HATCH.wide ? 0.55 : 0.8) : brightness[t]!;
      if (edge) bright *= t < 0 ? 0.45 : 0.35;
      rgb[3 * at] = Math.max(0, Math.min(255, colour[0] * bright));
      rgb[3 * at + 1] = Math.max(0, Math.min(255, colour[1] * bright));
      rgb[3 * at + 2] = Math.max(0, Math.min(255, colour[2] * bright));
    }
  return rgb;
}

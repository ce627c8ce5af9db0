/** Colour of every sample: flat shading, dark lines along edges and outlines, hatching where a cut opens a solid. */
import { unit } from './vectors.mjs';

const BACKGROUND = [250, 250, 248];
/** Surfaces that meet at more than this are told apart by a line: cosine of 20°. */
const CREASE = 0.94;
/** Samples from one line of the hatching to the next, and its width. */
const HATCH = { every: 12, wide: 2 };

/**
 * @param world - from `place`
 * @param buffers - from `rasterize`
 * @param {{ axes: readonly (readonly number[])[], cut: boolean }} options
 * @returns {Uint8Array} red, green and blue of each sample
 */
export function shade({ normals, owner, items }, { depth, seen, width, height, scale }, { axes: [ax, ay, az], cut }) {
  const light = unit([0, 1, 2].map((i) => az[i] + 0.45 * ay[i] - 0.5 * ax[i]));
  const rgb = new Uint8Array(3 * width * height);
  const along = (t, v) => normals[3 * t] * v[0] + normals[3 * t + 1] * v[1] + normals[3 * t + 2] * v[2];
  // The inside of a far wall is seen only through a cut: it stands for the cut face.
  const isCut = (t) => cut && along(t, az) < 0;
  const line = (at, to) => {
    const [ta, tb] = [seen[at], seen[to]];
    if (ta === tb) return false;
    if (ta < 0 || tb < 0) return true;
    const [ca, cb] = [isCut(ta), isCut(tb)];
    if (owner[ta] !== owner[tb] || ca !== cb) return true;
    if (ca) return false;
    if (along(ta, normals.subarray(3 * tb, 3 * tb + 3)) < CREASE) return true;
    // Parallel surfaces one behind the other: a step larger than the surface's own slope explains.
    const slope = 1 / Math.max(0.05, Math.min(along(ta, az), along(tb, az)));
    return Math.abs(depth[at] - depth[to]) * scale > 3 * slope;
  };
  const brightness = (t, row, column) => {
    if (isCut(t)) return (row + column) % HATCH.every < HATCH.wide ? 0.55 : 0.8;
    return 0.5 + 0.5 * Math.max(0, along(t, light)) + 0.06 * normals[3 * t + 2];
  };
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = row * width + column;
      const t = seen[at];
      const edge = (column + 1 < width && line(at, at + 1)) || (row + 1 < height && line(at, at + width));
      const colour = t < 0 ? BACKGROUND : items[owner[t]].colour;
      const bright = (t < 0 ? 1 : brightness(t, row, column)) * (edge ? (t < 0 ? 0.45 : 0.35) : 1);
      for (let i = 0; i < 3; i++) rgb[3 * at + i] = Math.max(0, Math.min(255, colour[i] * bright));
    }
  return rgb;
}

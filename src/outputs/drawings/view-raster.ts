/** Depth of what is seen from one side, sample by sample. */
import type { Matrix, Mesh, Vec2 } from '../../solid/mesh.js';
import { rasterize } from '../picture/rasterize.js';

/** Coordinate towards the eye over the view's plane: c + gu·u + gv·v. */
export interface Plane {
  readonly c: number;
  readonly gu: number;
  readonly gv: number;
}

export interface ViewRaster {
  /** Samples a mm. */
  readonly scale: number;
  readonly size: readonly [width: number, height: number];
  /** Of everything, in the view's plane [mm]. */
  readonly min: Vec2;
  readonly max: Vec2;
  /** Coordinate towards the eye of the surface seen at a point of the view's plane, −∞ where there is none [mm]. */
  readonly depthAt: (u: number, v: number) => number;
  /** How much nearer than a plane, taken where the sample's middle lies, the surface is that is seen at the sample of a point [mm]. */
  readonly above: (u: number, v: number, plane: Plane) => number;
  /** Index of the sample at a point of the view's plane, −1 beside the raster. */
  readonly sampleAt: (u: number, v: number) => number;
}

const VIEW_AXES = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

/** @param samples - along the longer side */
export function viewRaster(
  items: readonly { readonly mesh: Mesh; readonly toView: Matrix }[],
  samples: number,
): ViewRaster {
  const corners = new Float64Array(items.reduce((sum, { mesh }) => sum + 3 * mesh.triangles.length, 0));
  let [l, r, b, t] = [Infinity, -Infinity, Infinity, -Infinity];
  let filled = 0;
  for (const { mesh, toView: m } of items) {
    const { positions, triangles } = mesh;
    const moved = new Float64Array(positions.length);
    for (let i = 0; i < positions.length; i += 3) {
      const x = positions[i]!;
      const y = positions[i + 1]!;
      const z = positions[i + 2]!;
      const u = m[0]! * x + m[1]! * y + m[2]! * z + m[3]!;
      const v = m[4]! * x + m[5]! * y + m[6]! * z + m[7]!;
      moved[i] = u;
      moved[i + 1] = v;
      moved[i + 2] = m[8]! * x + m[9]! * y + m[10]! * z + m[11]!;
      if (u < l) l = u;
      if (u > r) r = u;
      if (v < b) b = v;
      if (v > t) t = v;
    }
    for (let i = 0; i < triangles.length; i++) {
      const from = 3 * triangles[i]!;
      corners[filled++] = moved[from]!;
      corners[filled++] = moved[from + 1]!;
      corners[filled++] = moved[from + 2]!;
    }
  }
  const scale = samples / Math.max(r - l, t - b);
  const [width, height] = [Math.ceil((r - l) * scale) + 4, Math.ceil((t - b) * scale) + 4];
  const [middleU, middleV] = [(l + r) / 2, (b + t) / 2];
  const { depth } = rasterize(
    { corners, owner: { length: corners.length / 9 } },
    { axes: VIEW_AXES, fit: { scale, u: middleU, v: middleV }, size: [width, height], fromBehind: false },
  );
  const sampleAt = (u: number, v: number): number => {
    const column = Math.floor(width / 2 + (u - middleU) * scale);
    const row = Math.floor(height / 2 - (v - middleV) * scale);
    return column < 0 || row < 0 || column >= width || row >= height ? -1 : row * width + column;
  };
  const depthAt = (u: number, v: number): number => {
    const at = sampleAt(u, v);
    return at < 0 ? -Infinity : depth[at]!;
  };
  const above = (u: number, v: number, { c, gu, gv }: Plane): number => {
    const column = Math.floor(width / 2 + (u - middleU) * scale);
    const row = Math.floor(height / 2 - (v - middleV) * scale);
    if (column < 0 || row < 0 || column >= width || row >= height) return -Infinity;
    const centreU = middleU + (column + 0.5 - width / 2) / scale;
    const centreV = middleV - (row + 0.5 - height / 2) / scale;
    return depth[row * width + column]! - (c + gu * centreU + gv * centreV);
  };
  return { scale, size: [width, height], min: [l, b], max: [r, t], depthAt, above, sampleAt };
}

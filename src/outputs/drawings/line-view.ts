/** What of a thing's edges is seen from one side: parallel projection, judged by a z-buffer. */

import { apply, multiply } from '../../solid/matrix.js';
import { IDENTITY, type Matrix, type Mesh, type Vec2, type Vec3 } from '../../solid/mesh.js';
import { type Axes, cameraAxes } from '../picture/camera.js';
import type { Edges } from './edges.js';
import { hiddenLines } from './hidden-lines.js';
import type { Segment } from './segment.js';
import { type Plane, viewRaster } from './view-raster.js';

export interface LineItem {
  readonly mesh: Mesh;
  readonly edges: Edges;
  readonly matrix?: Matrix;
}

export interface LineView {
  /** Visible pieces of edges: x to the right, y up, in the view's plane [mm]. */
  readonly segments: readonly Segment[];
  /** Pieces of edges and outlines behind a surface, those that fall on a line already drawn left out; none where not asked for. */
  readonly hidden: readonly Segment[];
  readonly min: Vec2;
  readonly max: Vec2;
  /** A point of the scene in the view, and how far in front of it the surface seen there stands [mm]. */
  readonly cover: (point: Vec3) => { readonly at: Vec2; readonly before: number };
}

export interface LineViewOptions {
  /** Along the longer side of the view. */
  readonly samples?: number;
  readonly hidden?: boolean;
}

const SAMPLES = 640;
/** Depth is compared so far beside the edge, on the face that the edge bounds [samples]. */
const BESIDE = 1.2;
/** A surface so little in front of a face is that face: rounded ones lie off their facets [samples]. */
const SLACK = 0.5;
/** A shorter edge is a point [samples]: small holes are drawn by edges hardly longer. */
const POINT = 0.2;
/** A face that leans more (height over run) is too narrow a strip to be asked: the sample beyond it tells more. */
const STEEP = 3;
/** Rise of a round surface over the step aside from its outline: √(2 · 1.2 · r), r up to 200 [samples]. */
const MOST = 22;
/** A face seen more nearly edge-on than this is not seen. */
const EDGE_ON = 1e-6;

export function lineView(
  items: readonly LineItem[],
  toEye: Vec3,
  { samples = SAMPLES, hidden = false }: LineViewOptions = {},
): LineView {
  const axes = cameraAxes(toEye);
  const inView = items.map(({ matrix = IDENTITY }) => viewMatrix(axes, matrix));
  const raster = viewRaster(
    items.map(({ mesh }, i) => ({ mesh, toView: inView[i]! })),
    samples,
  );
  const { scale, depthAt, above } = raster;
  const slack = SLACK / scale;
  const segments: Segment[] = [];
  const behind: Segment[] = [];

  items.forEach(({ edges: { corners, normals, sharp } }, item) => {
    const m = inView[item]!;
    for (let e = 0; e < sharp.length; e++) {
      const n = 6 * e;
      const az = m[8]! * normals[n]! + m[9]! * normals[n + 1]! + m[10]! * normals[n + 2]!;
      const bz = m[8]! * normals[n + 3]! + m[9]! * normals[n + 4]! + m[10]! * normals[n + 5]!;
      const [aSeen, bSeen] = [az > EDGE_ON, bz > EDGE_ON];
      const isSharp = sharp[e] === 1;
      if (!isSharp && aSeen === bSeen) continue;
      const turnedAway = !aSeen && !bSeen;
      if (turnedAway && !hidden) continue;
      const [ax, ay, aw] = view(m, corners, n);
      const [bx, by, bw] = view(m, corners, n + 3);
      const [dx, dy, dw] = [bx - ax, by - ay, bw - aw];
      const long = Math.sqrt(dx * dx + dy * dy);
      if (long * scale < POINT) continue;
      if (turnedAway) {
        behind.push([
          [ax, ay],
          [bx, by],
        ]);
        continue;
      }
      // Corners run counter-clockwise around a face: the first face lies left of the edge, the second right of it.
      const [px, py] = [(-dy / long) * (BESIDE / scale), (dx / long) * (BESIDE / scale)];
      const aPlane = aSeen ? planeOf(n, az) : null;
      const bPlane = bSeen ? planeOf(n + 3, bz) : null;
      const silhouette = aSeen !== bSeen;
      const outside = silhouette && steep(aPlane ?? bPlane!) ? (aSeen ? -1 : 1) : 0;
      const onFace = (u: number, v: number, w: number, side: number, plane: Plane): boolean => {
        const beside = above(u + side * px, v + side * py, plane);
        // Nothing there: a strip narrower than the step aside, at the outline, or a thing behind that ends there.
        if (beside === -Infinity) return above(u, v, plane) <= slack;
        // A steep face runs far ahead of its edge in a step: what is nearer still than a round one would be is something else.
        return beside <= slack && (!steep(plane) || depthAt(u + side * px, v + side * py) - w <= MOST / scale);
      };
      const seenAt = (u: number, v: number, w: number): boolean => {
        if (outside === 0)
          return (aPlane !== null && onFace(u, v, w, 1, aPlane)) || (bPlane !== null && onFace(u, v, w, -1, bPlane));
        const beyond = above(u + outside * px, v + outside * py, { c: w, gu: 0, gv: 0 });
        return beyond === -Infinity ? onFace(u, v, w, -outside, (aPlane ?? bPlane)!) : beyond <= slack;
      };
      const steps = Math.max(2, Math.ceil((long * scale) / 2));
      let from = 0;
      let was = false;
      for (let i = 0; i <= steps; i++) {
        // Judged at the middle of each step, so that corners, which lie beside other faces, don't decide.
        const s = (i + 0.5) / steps;
        const now = i < steps && seenAt(ax + s * dx, ay + s * dy, aw + s * dw);
        if (i > 0 && now === was && i < steps) continue;
        if (i > 0 && (was || hidden))
          (was ? segments : behind).push([
            [ax + (from / steps) * dx, ay + (from / steps) * dy],
            [ax + (i / steps) * dx, ay + (i / steps) * dy],
          ]);
        from = i;
        was = now;
      }

      function planeOf(at: number, nz: number): Plane {
        const gu = -(m[0]! * normals[at]! + m[1]! * normals[at + 1]! + m[2]! * normals[at + 2]!) / nz;
        const gv = -(m[4]! * normals[at]! + m[5]! * normals[at + 1]! + m[6]! * normals[at + 2]!) / nz;
        return { c: aw - gu * ax - gv * ay, gu, gv };
      }
    }
  });

  const cover = (point: Vec3) => {
    const [u, v, w] = apply(viewMatrix(axes, IDENTITY), point);
    return { at: [u, v] as const, before: depthAt(u, v) - w };
  };
  return {
    segments,
    hidden: hidden ? hiddenLines(behind, segments, raster) : [],
    min: raster.min,
    max: raster.max,
    cover,
  };
}

const steep = ({ gu, gv }: Plane): boolean => gu * gu + gv * gv > STEEP * STEEP;

/** From an item's coordinates to the view's: right, up, towards the eye. */
const viewMatrix = ([x, y, z]: Axes, m: Matrix): Matrix => multiply([...x, 0, ...y, 0, ...z, 0, 0, 0, 0, 1], m);

const view = (m: Matrix, of: Float64Array, at: number): Vec3 => apply(m, [of[at]!, of[at + 1]!, of[at + 2]!]);

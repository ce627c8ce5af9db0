/** What of a thing's edges is seen from one side: parallel projection, hidden parts left out by a z-buffer. */
import { apply, applyDirection } from '../../solid/matrix.js';
import { IDENTITY, type Matrix, type Mesh, type Vec2, type Vec3 } from '../../solid/mesh.js';
import { cameraAxes } from '../picture/camera.js';
import { place } from '../picture/place.js';
import { rasterize } from '../picture/rasterize.js';
import type { Edges } from './edges.js';

export interface LineItem {
  readonly mesh: Mesh;
  readonly edges: Edges;
  readonly matrix?: Matrix;
}

export interface LineView {
  /** Visible pieces of edges: x to the right, y up, in the view's plane [mm]. */
  readonly segments: readonly (readonly [Vec2, Vec2])[];
  readonly min: Vec2;
  readonly max: Vec2;
  /** A point of the scene in the view, and how far in front of it the surface seen there stands [mm]. */
  readonly cover: (point: Vec3) => { readonly at: Vec2; readonly before: number };
}

/** Samples along the longer side of the view. */
const SAMPLES = 640;
/** A point this many samples' depth behind the surface is hidden. */
const SLACK = 2.5;

export function lineView(items: readonly LineItem[], toEye: Vec3, samples = SAMPLES): LineView {
  const axes = cameraAxes(toEye);
  const [ax, ay, az] = axes;
  const world = place(
    items.map(({ mesh, matrix }) => ({ mesh, colour: [0, 0, 0] as const, ...(matrix ? { matrix } : {}) })),
    null,
  );
  const project = (p: Vec3): readonly [number, number, number] => [
    ax[0] * p[0] + ax[1] * p[1] + ax[2] * p[2],
    ay[0] * p[0] + ay[1] * p[1] + ay[2] * p[2],
    az[0] * p[0] + az[1] * p[1] + az[2] * p[2],
  ];
  let [l, r, b, t] = [Infinity, -Infinity, Infinity, -Infinity];
  const { corners } = world;
  for (let i = 0; i < corners.length; i += 3) {
    const [u, v] = project([corners[i]!, corners[i + 1]!, corners[i + 2]!]);
    if (u < l) l = u;
    if (u > r) r = u;
    if (v < b) b = v;
    if (v > t) t = v;
  }
  const scale = samples / Math.max(r - l, t - b);
  const size = [Math.ceil((r - l) * scale) + 4, Math.ceil((t - b) * scale) + 4] as const;
  const fit = { scale, u: (l + r) / 2, v: (b + t) / 2 };
  const { depth } = rasterize(world, { axes, fit, size, fromBehind: false });
  const [width, height] = size;
  const slack = SLACK / scale;
  const seen = (u: number, v: number, z: number): boolean => {
    const column = Math.floor(width / 2 + (u - fit.u) * scale);
    const row = Math.floor(height / 2 - (v - fit.v) * scale);
    // An edge lies between two samples: it is seen where one of those around it is not in front of it.
    for (let dy = -1; dy <= 1; dy++)
      for (let dx = -1; dx <= 1; dx++) {
        const [x, y] = [column + dx, row + dy];
        if (x < 0 || y < 0 || x >= width || y >= height || depth[y * width + x]! <= z + slack) return true;
      }
    return false;
  };
  const segments: (readonly [Vec2, Vec2])[] = [];
  for (const { edges, matrix = IDENTITY } of items) {
    for (let e = 0; e < edges.sharp.length; e++) {
      const normal = (k: number): Vec3 => [
        edges.normals[6 * e + 3 * k]!,
        edges.normals[6 * e + 3 * k + 1]!,
        edges.normals[6 * e + 3 * k + 2]!,
      ];
      const [fa, fb] = [0, 1].map((k) => {
        const n = applyDirection(matrix, normal(k));
        return n[0] * az[0] + n[1] * az[1] + n[2] * az[2];
      }) as [number, number];
      if (fa <= 1e-6 && fb <= 1e-6) continue;
      if (edges.sharp[e] === 0 && fa > 1e-6 === fb > 1e-6) continue;
      const end = (k: number): Vec3 =>
        apply(matrix, [
          edges.corners[6 * e + 3 * k]!,
          edges.corners[6 * e + 3 * k + 1]!,
          edges.corners[6 * e + 3 * k + 2]!,
        ]);
      addVisible(segments, project(end(0)), project(end(1)), { scale, seen });
    }
  }
  const cover = (point: Vec3) => {
    const [u, v, z] = project(point);
    const column = Math.floor(width / 2 + (u - fit.u) * scale);
    const row = Math.floor(height / 2 - (v - fit.v) * scale);
    return { at: [u, v] as const, before: (depth[row * width + column] ?? -Infinity) - z };
  };
  return { segments, min: [l, b], max: [r, t], cover };
}

type Point = readonly [number, number, number];

function addVisible(
  segments: (readonly [Vec2, Vec2])[],
  a: Point,
  b: Point,
  { scale, seen }: { readonly scale: number; readonly seen: (u: number, v: number, z: number) => boolean },
): void {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) * scale;
  if (length < 0.5) return;
  const steps = Math.max(2, Math.ceil(length / 2));
  const at = (i: number): Point => {
    const s = i / steps;
    return [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])];
  };
  let from: Point | null = null;
  for (let i = 0; i <= steps; i++) {
    // Judged at the middle of each step, so that corners, which lie beside other faces, don't decide.
    const visible = i < steps && seen(...middle(at(i), at(i + 1)));
    if (visible && from === null) from = at(i);
    if (!visible && from !== null) {
      const to = at(i);
      segments.push([
        [from[0], from[1]],
        [to[0], to[1]],
      ]);
      from = null;
    }
  }
}

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];

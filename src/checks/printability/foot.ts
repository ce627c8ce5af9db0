/** What a solid stands on: the faces on the bed, and the figure that a string around them makes. */
import type { Box, Mesh, Vec2, Vec3 } from '../../solid/mesh.js';
import { meshCentroid } from '../../solid/mesh-measures.js';

export interface Foot {
  /** Of the faces on the bed [mm²]. */
  readonly area: number;
  /** Convex, counter-clockwise. */
  readonly hull: readonly Vec2[];
  /** The least distance between two parallel lines that hold the foot [mm]. */
  readonly width: number;
  readonly length: number;
  readonly height: number;
  readonly centre: () => Vec3;
}

/** Faces so low lie on the bed [mm]. */
const ON_BED = 1e-3;

/** @param mesh - as printed, its lowest point at z = 0 */
export function footOf(mesh: Mesh): Foot {
  const { positions: p, triangles } = mesh;
  const points: Vec2[] = [];
  const seen = new Uint8Array(p.length);
  let [area, height] = [0, 0];
  for (let i = 2; i < p.length; i += 3) if (p[i]! > height) height = p[i]!;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i]!, 3 * triangles[i + 1]!, 3 * triangles[i + 2]!];
    if (p[a + 2]! > ON_BED || p[b + 2]! > ON_BED || p[c + 2]! > ON_BED) continue;
    area += Math.abs((p[b]! - p[a]!) * (p[c + 1]! - p[a + 1]!) - (p[b + 1]! - p[a + 1]!) * (p[c]! - p[a]!)) / 2;
    for (const v of [a, b, c]) {
      if (seen[v]) continue;
      seen[v] = 1;
      points.push([p[v]!, p[v + 1]!]);
    }
  }
  const hull = hullOf(points);
  return { area, hull, ...callipers(hull), height, centre: () => meshCentroid(mesh) };
}

/** How far the centre of mass is beside the foot; 0 or below where it stands over it [mm]. @param box - the solid's */
export function leansOut({ hull, centre }: Foot, { min, max }: Box): number {
  // Where the foot is as broad as the solid, the centre can't be beside it.
  const ends = [min, max].flatMap(([x]) => [min, max].map(([, y]): Vec2 => [x, y]));
  if (ends.every((end) => beside(hull, end) <= 0)) return 0;
  const [x, y] = centre();
  return beside(hull, [x, y]);
}

const beside = (hull: readonly Vec2[], point: Vec2): number =>
  hull.length < 3
    ? Infinity
    : Math.max(
        ...hull.map((a, i) => {
          const b = hull[(i + 1) % hull.length]!;
          return -turn(a, b, point) / Math.hypot(b[0] - a[0], b[1] - a[1]);
        }),
      );

/** Andrew's monotone chain, without the points that lie within the farthest in eight directions. */
function hullOf(points: readonly Vec2[]): readonly Vec2[] {
  const outer = EIGHT.map(([x, y]) =>
    points.reduce((most, q) => (q[0] * x + q[1] * y > most[0] * x + most[1] * y ? q : most), points[0] ?? [0, 0]),
  );
  const sorted = points
    .filter((q) => outer.some((a, i) => turn(a, outer[(i + 1) % outer.length]!, q) <= 0))
    .sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
  const half = (all: readonly Vec2[]): Vec2[] => {
    const chain: Vec2[] = [];
    for (const q of all) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, q) <= 0) chain.pop();
      chain.push(q);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

const EIGHT: readonly Vec2[] = Array.from({ length: 8 }, (_, i) => [
  Math.cos((i * Math.PI) / 4),
  Math.sin((i * Math.PI) / 4),
]);

/** Least and greatest width, each across a side of the hull. */
function callipers(hull: readonly Vec2[]): { readonly width: number; readonly length: number } {
  if (hull.length < 3) return { width: 0, length: 0 };
  const widths = hull.map((a, i) => {
    const b = hull[(i + 1) % hull.length]!;
    const side = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return Math.max(...hull.map((q) => turn(a, b, q))) / side;
  });
  return { width: Math.min(...widths), length: Math.max(...widths) };
}

const turn = (a: Vec2, b: Vec2, c: Vec2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

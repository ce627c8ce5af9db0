/** What a solid stands on: the faces on the bed, and the figure that a string around them makes. */
import type { Box, Mesh, Vec2, Vec3 } from '../../solid/mesh.js';
import { meshCentroid } from '../../solid/mesh-measures.js';
import { ON_BED } from '../bed.js';

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

/** @param mesh - as printed, its lowest point at z = 0 */
export function footOf(mesh: Mesh): Foot {
  const { positions: p, triangles } = mesh;
  const onBed = new Uint8Array(p.length / 3);
  let [area, height] = [0, 0];
  for (let i = 2; i < p.length; i += 3) if (p[i]! > height) height = p[i]!;
  for (let i = 0; i < triangles.length; i += 3) {
    const u = triangles[i]!;
    const v = triangles[i + 1]!;
    const w = triangles[i + 2]!;
    if (p[3 * u + 2]! > ON_BED || p[3 * v + 2]! > ON_BED || p[3 * w + 2]! > ON_BED) continue;
    const x = p[3 * u]!;
    const y = p[3 * u + 1]!;
    area += Math.abs((p[3 * v]! - x) * (p[3 * w + 1]! - y) - (p[3 * v + 1]! - y) * (p[3 * w]! - x)) / 2;
    onBed[u] = onBed[v] = onBed[w] = 1;
  }
  const hull = hullOf(outermost(p, onBed));
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

/** Points on the bed but for those within the farthest in eight directions: few of a foot full of letters. */
function outermost(p: Float32Array, onBed: Uint8Array): readonly Vec2[] {
  const all: number[] = [];
  for (let v = 0; v < onBed.length; v++) if (onBed[v]) all.push(3 * v);
  if (all.length === 0) return [];
  const at = (i: number): Vec2 => [p[i]!, p[i + 1]!];
  const outer = Array.from({ length: 8 }, (_, k) => {
    const x = Math.cos((k * Math.PI) / 4);
    const y = Math.sin((k * Math.PI) / 4);
    let most = all[0]!;
    let far = -Infinity;
    for (const i of all) {
      const along = p[i]! * x + p[i + 1]! * y;
      if (along <= far) continue;
      most = i;
      far = along;
    }
    return at(most);
  });
  const rest: Vec2[] = [];
  for (const i of all) {
    const x = p[i]!;
    const y = p[i + 1]!;
    for (let k = 0; k < 8; k++) {
      const a = outer[k]!;
      const b = outer[(k + 1) % 8]!;
      if ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) > 0) continue;
      rest.push([x, y]);
      break;
    }
  }
  return rest;
}

/** Andrew's monotone chain. */
function hullOf(points: readonly Vec2[]): readonly Vec2[] {
  const sorted = [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
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

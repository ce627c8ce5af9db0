/**
 * The kit as the checks see it: every placement with its shape, place and box at each pose. What is measured between
 * two shapes is measured once for each way in which they stand to each other, however often that way recurs.
 */
import { type Kit, type Part, type Placement, POSES, type Pose } from '../kit/types.js';
import type { MeasuringKernel, Solid } from '../solid/kernel.js';
import { apply, applyDirection, invertRigid, multiply, translation } from '../solid/matrix.js';
import type { Box, Matrix, Vec3 } from '../solid/mesh.js';
import { rectangle } from '../solid/outlines.js';
import { certainlyApart } from './near.js';
import { slicer } from './slices.js';
import { type Surroundings, sameSurroundings, surroundingsIn } from './surroundings.js';
import { plantTree, type Tree, transformBox } from './tree.js';
import { boxDistance, frameAlong, relative, roundedKey } from './vectors.js';

/** A distinct solid, in its own coordinates. */
export interface Shape {
  readonly id: number;
  readonly solid: Solid;
  readonly box: Box;
  readonly triangles: number;
  /** Made when first asked for. */
  readonly tree: () => Tree;
  /** Slices that together are the solid and meet the box; one, the solid itself, when it is not worth slicing. */
  readonly slices: (near: Box) => readonly Solid[];
}

/** A shape in a place. `box` holds it, in the assembly's coordinates. */
export interface Standing {
  readonly shape: Shape;
  readonly matrix: Matrix;
  readonly box: Box;
}

export interface Body {
  readonly index: number;
  readonly name: string;
  readonly placement: Placement;
  readonly part: Part;
  readonly at: Readonly<Record<Pose, Standing>>;
  /** Its shape or place changes with the mounts' tilt. */
  readonly changes: boolean;
}

export interface Alike {
  /** Names the measurement: its kind, and what else it depends on, seen from b. */
  readonly what: string;
  readonly a: Standing;
  readonly b: Standing;
  /** Box in b's coordinates outside which a doesn't matter; it is grown a little, so that faces on it count. */
  readonly reach: Box;
}

export interface Scene {
  readonly bodies: readonly Body[];
  readonly byName: ReadonlyMap<string, Body>;
  /** Volume that both occupy [mm³]. */
  overlap(a: Standing, b: Standing): number;
  /** Least distance [mm], or `search` when it is no less. */
  gap(a: Standing, b: Standing, search: number): number;
  /** How far what both occupy reaches along a unit direction [mm]; 0 when they share nothing. */
  sharedReach(a: Standing, b: Standing, direction: Vec3): number;
  /** The round bar about the line from a point along a unit direction; it holds the true cylinder [mm]. */
  bar(from: Vec3, direction: Vec3, size: { readonly diameter: number; readonly length: number }): Standing;
  /** The block of a box in a placement's coordinates. */
  block(room: Box, matrix: Matrix): Standing;
  /** Does the segment meet it? */
  hits(body: Standing, from: Vec3, to: Vec3): boolean;
  /** Computes once for each key. */
  once<T>(key: string, compute: () => T): T;
  /** Computes once for each way in which the two stand to each other, and once for all places about b that look the same. */
  alike<T>(two: Alike, compute: () => T): T;
}

/** A bar's flats: 24 sides stand out by 0.9 % of the radius at their corners. */
const BAR_SIDES = 24;

/** Nearer than this two surfaces count as touching [mm]: coordinates are single precision. */
const TOUCH = 1e-3;

/** @returns the scene; its solids live as long as the kernel's scope in which it was made */
export function makeScene(kit: Kit, kernel: MeasuringKernel): Scene {
  const memo = new Map<string, unknown>();
  const once = <T>(key: string, compute: () => T): T => {
    if (!memo.has(key)) memo.set(key, compute());
    return memo.get(key) as T;
  };

  let shapes = 0;
  const shapeOf = (solid: Solid): Shape => {
    let tree: Tree | null = null;
    const box = kernel.box(solid);
    const triangles = kernel.triangleCount(solid);
    return {
      id: shapes++,
      solid,
      box,
      triangles,
      slices: slicer(kernel, { solid, box, triangles }),
      tree: () => {
        tree ??= plantTree(kernel.mesh(solid));
        return tree;
      },
    };
  };
  const stand = (shape: Shape, matrix: Matrix): Standing => ({ shape, matrix, box: transformBox(shape.box, matrix) });

  const bodies = kit.placements.map((placement, index): Body => {
    const part = kit.parts.get(placement.part)!;
    const standing = (pose: Pose) => {
      const shape = once(`shape ${part.id} ${part.posed ? pose : ''}`, () =>
        shapeOf(part.posed ? part.posed[pose] : part.solid),
      );
      const matrix = pose === 'level' || !placement.rides ? placement.matrix : placement.rides[pose];
      return stand(shape, matrix);
    };
    const at = Object.fromEntries(POSES.map((pose) => [pose, standing(pose)])) as Record<Pose, Standing>;
    return {
      index,
      name: placement.name,
      placement,
      part,
      at,
      changes: part.posed !== null || placement.rides !== null,
    };
  });

  /** Runs `measure` on the slices of a that b comes near, with b moved into a's coordinates. */
  const between = (a: Standing, b: Standing, measure: (slices: readonly Solid[], other: Solid) => number): number => {
    const toA = relative(a.matrix, b.matrix);
    const slices = a.shape.slices(transformBox(b.shape.box, toA));
    return kernel.scope(() => ({ keep: [], value: measure(slices, kernel.move(b.shape.solid, toA)) }));
  };

  const apart = (a: Standing, b: Standing, limit: number) =>
    certainlyApart({
      a: a.shape.tree(),
      b: b.shape.tree(),
      toA: relative(a.matrix, b.matrix),
      toB: relative(b.matrix, a.matrix),
      limit,
    });

  const places = new Map<string, { readonly around: Surroundings; readonly value: unknown }[]>();
  const alike: Scene['alike'] = ({ what, a, b, reach }, compute) =>
    once(`${what} ${relationKey(a, b)}`, () => {
      if (!worthComparing(a, b)) return compute();
      const box = grown(reach, MARGIN);
      const key = `${what} ${b.shape.id}`;
      const known = places.get(key) ?? [];
      places.set(key, known);
      const around = surroundingsIn(a.shape.tree(), {
        box,
        place: relative(b.matrix, a.matrix),
        back: relative(a.matrix, b.matrix),
      });
      const half = Math.hypot(...[0, 1, 2].map((k) => box.max[k]! - box.min[k]!)) / 2;
      const same = known.find((place) => sameSurroundings(place.around, around, half));
      if (same) return same.value as ReturnType<typeof compute>;
      const value = compute();
      known.push({ around, value });
      return value;
    });

  return {
    bodies,
    byName: new Map(bodies.map((body) => [body.name, body])),
    once,
    alike,
    overlap(p, q) {
      if (boxDistance(p.box, q.box) > 0) return 0;
      const [a, b] = largerFirst(p, q);
      return once(`overlap ${relationKey(a, b)}`, () =>
        apart(a, b, TOUCH)
          ? 0
          : alike({ what: 'shared', a, b, reach: b.shape.box }, () =>
              between(a, b, (slices, other) => slices.reduce((sum, slice) => sum + kernel.overlap(slice, other), 0)),
            ),
      );
    },
    gap(p, q, search) {
      if (boxDistance(p.box, q.box) >= search) return search;
      const [a, b] = largerFirst(p, q);
      return once(`gap ${search} ${relationKey(a, b)}`, () =>
        apart(a, b, search)
          ? search
          : alike({ what: `apart ${search}`, a, b, reach: grown(b.shape.box, search) }, () =>
              between(a, b, (_, other) => kernel.gap(a.shape.solid, other, search)),
            ),
      );
    },
    sharedReach(p, q, direction) {
      const [a, b] = largerFirst(p, q);
      const seen = roundedKey(applyDirection(invertRigid(b.matrix), direction));
      return alike({ what: `reach ${seen}`, a, b, reach: b.shape.box }, () => {
        const toWay = invertRigid(frameAlong([0, 0, 0], applyDirection(invertRigid(a.matrix), direction)));
        return between(a, b, (slices, other) => {
          const ends = slices.flatMap((slice) => {
            const { min, max } = kernel.box(kernel.move(kernel.intersect(slice, other), toWay));
            return max[2] > min[2] ? [min[2], max[2]] : [];
          });
          return ends.length === 0 ? 0 : Math.max(...ends) - Math.min(...ends);
        });
      });
    },
    hits({ shape, matrix }, from, to) {
      const back = invertRigid(matrix);
      return kernel.rayHit(shape.solid, apply(back, from), apply(back, to)) !== null;
    },
    bar(from, direction, { diameter, length }) {
      const shape = once(`bar ${diameter.toFixed(4)} ${length.toFixed(4)}`, () => {
        const radius = diameter / 2 / Math.cos(Math.PI / BAR_SIDES);
        const corner = (i: number) => (2 * Math.PI * i) / BAR_SIDES;
        const ring = Array.from(
          { length: BAR_SIDES },
          (_, i) => [radius * Math.cos(corner(i)), radius * Math.sin(corner(i))] as const,
        );
        return shapeOf(kernel.extrude([ring], length));
      });
      return stand(shape, frameAlong(from, direction));
    },
    block({ min, max }, matrix) {
      const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]] as const;
      const shape = once(`block ${size.map((v) => v.toFixed(4)).join(' ')}`, () =>
        shapeOf(kernel.extrude(rectangle(0, 0, size[0], size[1]), size[2])),
      );
      return stand(shape, multiply(matrix, translation(min)));
    },
  };
}

/** Smaller shapes are measured sooner than looked at [triangles]. */
const LARGE = 300;

/** Faces of a that lie on b's box, where the two touch, are looked at as well [mm]. */
const MARGIN = 0.053;

/** Is a so much larger that what b is measured against may recur on it? */
function worthComparing(a: Standing, b: Standing): boolean {
  const near = transformBox(b.shape.box, relative(a.matrix, b.matrix));
  const size = (box: Box, k: number) => box.max[k]! - box.min[k]!;
  return a.shape.triangles >= LARGE && [0, 1, 2].some((k) => size(near, k) < size(a.shape.box, k) / 2);
}

const grown = ({ min, max }: Box, by: number): Box => ({
  min: [min[0] - by, min[1] - by, min[2] - by],
  max: [max[0] + by, max[1] + by, max[2] + by],
});

/** The same for every two pairs that stand to each other in the same way, to 1e-6 mm. */
export function relationKey(a: Standing, b: Standing): string {
  return `${a.shape.id} ${b.shape.id} ${roundedKey(relative(a.matrix, b.matrix))}`;
}

/** Where the point stands at the pose, if it keeps its place on the body. */
export const carried = (body: Body, pose: Pose, point: Vec3): Vec3 =>
  apply(body.at[pose].matrix, apply(invertRigid(body.at.level.matrix), point));

const largerFirst = (a: Standing, b: Standing): readonly [Standing, Standing] =>
  b.shape.triangles > a.shape.triangles || (b.shape.triangles === a.shape.triangles && b.shape.id < a.shape.id)
    ? [b, a]
    : [a, b];

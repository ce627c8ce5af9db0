/**
 * Does a shape that travels along a straight line meet another on its way?
 *
 * Both are cut into lines along the travel, so the way is exact along it and sampled across it. Lines stand a step apart
 * (0.1 to 0.35 mm by the size of what the two have in common across the travel), and only where a square of four lines
 * meets the other does it count: what slides along a wall, or overlaps by less than a step, is a graze, and so may be what
 * overlaps by less than two. Parts are measured exactly where they stand; this only asks whether they can get there.
 */
import { apply, applyDirection, invertRigid, multiply } from '../solid/matrix.js';
import { type Box, IDENTITY, type Matrix, type Vec3 } from '../solid/mesh.js';
import { holds } from './inside.js';
import { cutLines, eachStretch, type Grid, lengthInTheWay, sumOfSquares, trianglesIn } from './lines.js';
import type { Standing } from './scene.js';
import { type Corners, transformBox } from './tree.js';
import { along, frameAlong, roundedKey } from './vectors.js';

/** A straight move by `travel` along a unit direction that ends `offset` away from where the shape stands [mm]. */
export interface Leg {
  readonly direction: Vec3;
  readonly travel: number;
  readonly offset: Vec3;
}

/** Steps between lines [mm], and how many lines to aim at. */
const FINEST = 0.1;
const COARSEST = 0.35;
const LINES = 12_000;

/** Finest step, and step along the way, where a shared volume is followed [mm]. */
const FINE = 0.03;
const TIME = 1;
const FEWER = 8000;

/** Beyond every kit [mm]. */
const FAR = 1e5;

/** Overlaps along the way below this are contact at its ends [mm]: coordinates are single precision. */
const CONTACT = 0.02;

/** Something moves past something that stands. */
export interface Way {
  readonly mover: Standing;
  readonly leg: Leg;
  readonly still: Standing;
}

/** @returns volume of the still shape that lies in the way, without grazes [mm³] */
export function volumeInTheWay(way: Way): number {
  const { mover, leg, still } = way;
  // Coordinates in which the way runs up z, and the shape ends where it stands.
  const toWay = invertRigid(frameAlong(leg.offset, leg.direction));
  const moverPlace = multiply(toWay, moved(mover.matrix, leg.offset));
  const stillPlace = multiply(toWay, still.matrix);
  const moverBox = transformBox(mover.shape.box, moverPlace);
  const stillBox = transformBox(still.shape.box, stillPlace);
  const common = meetingBox(moverBox, stillBox, leg.travel);
  if (!common) return 0;
  const tree = still.shape.tree();
  const inside = (p: Vec3) => holds(tree, apply(invertRigid(stillPlace), p));
  const area = whereSurfacesAre(trianglesIn(tree, stillPlace, common), { common, inside });
  if (area === 'free') return 0;
  if (area === 'solid') return sizeOf(common, 0) * sizeOf(common, 1) * leg.travel;

  const grid = gridOver(area);
  if (!grid) return 0;
  const column: Box = { min: [area.min[0], area.min[1], -FAR], max: [area.max[0], area.max[1], FAR] };
  const moverLines = cutLines(grid, trianglesIn(mover.shape.tree(), moverPlace, column));
  const stillLines = cutLines(grid, trianglesIn(tree, stillPlace, column));
  const met = new Float32Array(grid.counts[0] * grid.counts[1]);
  for (let i = 0; i < met.length; i++) {
    const length = lengthInTheWay({ mover: moverLines, still: stillLines, travel: leg.travel }, i);
    if (length > CONTACT) met[i] = length;
  }
  return sumOfSquares(met, grid) * grid.step * grid.step;
}

/**
 * Largest volume that both share at any time on the way, at steps of at most a millimetre, the last place included:
 * for pairs that overlap by intent. Lines stand finer here, about 0.06 mm for what is as small as a screw; a thread's ring
 * comes out within 3 %.
 *
 * @returns [mm³]
 */
export function mostSharedOnTheWay({ mover, leg, still }: Way): number {
  const toWay = invertRigid(frameAlong(leg.offset, leg.direction));
  const moverPlace = multiply(toWay, moved(mover.matrix, leg.offset));
  const stillPlace = multiply(toWay, still.matrix);
  const common = meetingBox(
    transformBox(mover.shape.box, moverPlace),
    transformBox(still.shape.box, stillPlace),
    leg.travel,
  );
  const grid = common && gridOver(common, { finest: FINE, lines: FEWER });
  if (!grid) return 0;
  const column: Box = { min: [common.min[0], common.min[1], -FAR], max: [common.max[0], common.max[1], FAR] };
  const moverLines = cutLines(grid, trianglesIn(mover.shape.tree(), moverPlace, column));
  const stillLines = cutLines(grid, trianglesIn(still.shape.tree(), stillPlace, column));
  const times = Math.max(1, Math.ceil(leg.travel / TIME));
  const shared = new Float64Array(times + 1);
  for (let i = 0; i < grid.counts[0] * grid.counts[1]; i++)
    eachStretch(moverLines, i, (from, to) =>
      eachStretch(stillLines, i, (low, high) => {
        // They share something while from − high < back < to − low.
        const last = Math.min(times, Math.floor(((to - low) * times) / leg.travel));
        for (let t = Math.max(0, Math.ceil(((from - high) * times) / leg.travel)); t <= last; t++) {
          const back = (leg.travel * t) / times;
          shared[t]! += Math.max(0, Math.min(high, to - back) - Math.max(low, from - back));
        }
      }),
    );
  return Math.max(...shared) * grid.step * grid.step;
}

/** Where the boxes meet across the way, and what of the way lies between the contacts at its ends. */
function meetingBox(mover: Box, still: Box, travel: number): Box | null {
  const common: Box = {
    min: [Math.max(mover.min[0], still.min[0]), Math.max(mover.min[1], still.min[1]), mover.min[2] - travel + CONTACT],
    max: [Math.min(mover.max[0], still.max[0]), Math.min(mover.max[1], still.max[1]), mover.max[2] - CONTACT],
  };
  if (still.min[2] > common.max[2] || still.max[2] < common.min[2]) return null;
  return sizeOf(common, 0) >= FINEST && sizeOf(common, 1) >= FINEST ? common : null;
}

/**
 * The part of the common box over which the still shape has surfaces. Beside it each strip lies wholly inside or wholly
 * outside; where one is inside, all of the box is taken.
 */
function whereSurfacesAre(
  triangles: readonly Corners[],
  { common, inside }: { readonly common: Box; readonly inside: (p: Vec3) => boolean },
): Box | 'free' | 'solid' {
  const middle = (min: readonly number[], max: readonly number[]): Vec3 => [
    (min[0]! + max[0]!) / 2,
    (min[1]! + max[1]!) / 2,
    (common.min[2] + common.max[2]) / 2,
  ];
  const { min, max } = common;
  if (triangles.length === 0) return inside(middle(min, max)) ? 'solid' : 'free';
  const low = [max[0], max[1]] as [number, number];
  const high = [min[0], min[1]] as [number, number];
  for (const c of triangles)
    for (let k = 0; k < 2; k++) {
      low[k] = Math.max(min[k]!, Math.min(low[k]!, c[k]!, c[3 + k]!, c[6 + k]!));
      high[k] = Math.min(max[k]!, Math.max(high[k]!, c[k]!, c[3 + k]!, c[6 + k]!));
    }
  const strips = [
    [min, [low[0], max[1]]],
    [[high[0], min[1]], max],
    [
      [low[0], min[1]],
      [high[0], low[1]],
    ],
    [
      [low[0], high[1]],
      [high[0], max[1]],
    ],
  ] as const;
  const wide = strips.filter(([from, to]) => to[0] - from[0] > CONTACT && to[1] - from[1] > CONTACT);
  if (wide.some(([from, to]) => inside(middle(from, to)))) return common;
  return { min: [low[0], low[1], min[2]], max: [high[0], high[1], max[2]] };
}

const sizeOf = ({ min, max }: Box, k: 0 | 1): number => max[k] - min[k];

/** The same shape moved by v. */
export const shifted = ({ shape, matrix, box }: Standing, v: Vec3): Standing => ({
  shape,
  matrix: moved(matrix, v),
  box: { min: along(box.min, v, 1), max: along(box.max, v, 1) },
});

/** Box of everything the shape passes on the leg. */
export function wayBox(mover: Standing, leg: Leg): Box {
  const start = shifted(mover, along(leg.offset, leg.direction, -leg.travel)).box;
  const end = shifted(mover, leg.offset).box;
  return {
    min: start.min.map((x, k) => Math.min(x, end.min[k]!)) as unknown as Vec3,
    max: start.max.map((x, k) => Math.max(x, end.max[k]!)) as unknown as Vec3,
  };
}

/** The same, in the shape's own coordinates. */
export function wayBoxOf(mover: Standing, leg: Leg): Box {
  const back = invertRigid(mover.matrix);
  const own = { shape: mover.shape, matrix: IDENTITY, box: mover.shape.box };
  return wayBox(own, {
    direction: applyDirection(back, leg.direction),
    travel: leg.travel,
    offset: applyDirection(back, leg.offset),
  });
}

/** The leg as seen from the mover, as a key: with `relationKey`, the same for every like way past a like thing. */
export function legKey(mover: Standing, { direction, travel, offset }: Leg): string {
  const back = invertRigid(mover.matrix);
  return roundedKey([...applyDirection(back, direction), travel, ...applyDirection(back, offset)]);
}

const moved = (m: Matrix, [x, y, z]: Vec3): Matrix =>
  m.map((value, i) => (i === 3 ? value + x : i === 7 ? value + y : i === 11 ? value + z : value));

function gridOver(area: Box, { finest, lines } = { finest: FINEST, lines: LINES }): Grid | null {
  const [x, y] = [sizeOf(area, 0), sizeOf(area, 1)];
  const step = Math.min(COARSEST, Math.max(finest, Math.sqrt((x * y) / lines)));
  const counts = [Math.floor(x / step), Math.floor(y / step)] as const;
  return counts[0] < 2 || counts[1] < 2 ? null : { least: [area.min[0], area.min[1]], step, counts };
}

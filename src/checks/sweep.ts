/**
 * Does a shape that travels along a straight line meet another on its way?
 *
 * Both are cut into lines along the travel, so the way is exact along it and sampled across it. Lines stand a step apart
 * (0.1 to 0.25 mm by the size of what the two have in common across the travel), and only where a square of four lines
 * meets the other does it count: what slides along a wall, or overlaps by less than a step, is a graze, and so may be what
 * overlaps by less than two. Parts are measured exactly where they stand; this only asks whether they can get there.
 */
import { apply, applyDirection, invertRigid, multiply } from '../solid/matrix.js';
import type { Box, Matrix, Vec3 } from '../solid/mesh.js';
import { along, frameAlong, roundedKey, type Standing } from './scene.js';
import { holds, placedTriangle, type Tree, transformBox, visitBox } from './tree.js';

/** A straight move by `travel` along a unit direction that ends `offset` away from where the shape stands [mm]. */
export interface Leg {
  readonly direction: Vec3;
  readonly travel: number;
  readonly offset: Vec3;
}

/** Steps between lines [mm], and how many lines to aim at. */
const FINEST = 0.1;
const COARSEST = 0.25;
const LINES = 20_000;

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
export function volumeInTheWay({ mover, leg, still }: Way): number {
  // Coordinates in which the way runs up z, and the shape ends where it stands.
  const way = frameAlong(leg.offset, leg.direction);
  const toWay = invertRigid(way);
  const moverPlace = multiply(toWay, moved(mover.matrix, leg.offset));
  const stillPlace = multiply(toWay, still.matrix);
  const moverBox = transformBox(mover.shape.box, moverPlace);
  const stillBox = transformBox(still.shape.box, stillPlace);
  const bottom = moverBox.min[2] - leg.travel;
  const least = [0, 1].map((k) => Math.max(moverBox.min[k]!, stillBox.min[k]!)) as [number, number];
  const size = [0, 1].map((k) => Math.min(moverBox.max[k]!, stillBox.max[k]!) - least[k]!) as [number, number];
  if (size[0] < FINEST || size[1] < FINEST) return 0;
  if (stillBox.min[2] > moverBox.max[2] || stillBox.max[2] < bottom) return 0;

  const column = ({ shape }: Standing, place: Matrix, [low, high] = [-FAR, FAR] as readonly [number, number]) =>
    trianglesIn(shape.tree(), place, {
      min: [least[0], least[1], low],
      max: [least[0] + size[0], least[1] + size[1], high],
    });
  if (column(still, stillPlace, [bottom, moverBox.max[2]]).length === 0) {
    // No surface in the way: all of it lies in one body of material, or in none.
    const middle: Vec3 = [least[0] + size[0] / 2, least[1] + size[1] / 2, (bottom + moverBox.max[2]) / 2];
    return holds(still.shape.tree(), apply(invertRigid(stillPlace), middle)) ? size[0] * size[1] * leg.travel : 0;
  }
  const step = Math.min(COARSEST, Math.max(FINEST, Math.sqrt((size[0] * size[1]) / LINES)));
  const grid: Grid = { least, step, counts: [Math.floor(size[0] / step), Math.floor(size[1] / step)] };
  if (grid.counts[0] < 2 || grid.counts[1] < 2) return 0;
  const moverLines = cutLines(grid, column(mover, moverPlace));
  const stillLines = cutLines(grid, column(still, stillPlace));

  const lines = grid.counts[0] * grid.counts[1];
  const met = new Float32Array(lines);
  for (let i = 0; i < lines; i++) {
    const length = lengthInTheWay({ mover: moverLines, still: stillLines, travel: leg.travel }, i);
    if (length > CONTACT) met[i] = length;
  }
  return sumOfSquares(met, grid) * step * step;
}

/** The same shape moved by v. */
export const shifted = ({ shape, matrix, box }: Standing, v: Vec3): Standing => ({
  shape,
  matrix: moved(matrix, v),
  box: { min: along(box.min, v, 1), max: along(box.max, v, 1) },
});

/** By how much a shape is away from its place when `left` of the leg is still to go. */
export const shortOf = ({ offset, direction }: Leg, left: number): Vec3 => along(offset, direction, -left);

/** Box of everything the shape passes on the leg. */
export function wayBox(mover: Standing, leg: Leg): Box {
  const start = shifted(mover, shortOf(leg, leg.travel)).box;
  const end = shifted(mover, leg.offset).box;
  return {
    min: start.min.map((x, k) => Math.min(x, end.min[k]!)) as unknown as Vec3,
    max: start.max.map((x, k) => Math.max(x, end.max[k]!)) as unknown as Vec3,
  };
}

/** The leg as seen from the mover, as a key: with `relationKey`, the same for every like way past a like thing. */
export function legKey(mover: Standing, { direction, travel, offset }: Leg): string {
  const back = invertRigid(mover.matrix);
  return roundedKey([...applyDirection(back, direction), travel, ...applyDirection(back, offset)]);
}

const moved = (m: Matrix, [x, y, z]: Vec3): Matrix =>
  m.map((value, i) => (i === 3 ? value + x : i === 7 ? value + y : i === 11 ? value + z : value));

/** Lines at least + (i + ½) step, counted row by row. */
interface Grid {
  readonly least: readonly [number, number];
  readonly step: number;
  readonly counts: readonly [number, number];
}

/** Crossings of each line with a surface: those of line i are at starts[i] up to starts[i + 1], sorted by height. */
interface Lines {
  readonly starts: Uint32Array;
  readonly heights: Float64Array;
  /** +1 into the solid, −1 out of it. */
  readonly turns: Int8Array;
}

/** Triangles whose boxes meet the box, as nine coordinates each. */
function trianglesIn(tree: Tree, place: Matrix, { min, max }: Box): Float64Array[] {
  const found: Float64Array[] = [];
  visitBox(tree, transformBox({ min, max }, invertRigid(place)), (triangle) => {
    const corners = placedTriangle(tree.mesh, triangle, place);
    for (let k = 0; k < 3; k++) {
      const [p, q, r] = [corners[k]!, corners[3 + k]!, corners[6 + k]!];
      if (Math.min(p, q, r) > max[k]! || Math.max(p, q, r) < min[k]!) return false;
    }
    found.push(corners);
    return false;
  });
  return found;
}

function cutLines(grid: Grid, triangles: readonly Float64Array[]): Lines {
  const lines = grid.counts[0] * grid.counts[1];
  const starts = new Uint32Array(lines + 1);
  for (const corners of triangles) eachCrossing(corners, grid, (line) => starts[line + 1]!++);
  for (let i = 1; i < starts.length; i++) starts[i]! += starts[i - 1]!;
  const next = starts.slice(0, lines);
  const total = starts[lines]!;
  const heights = new Float64Array(total);
  const turns = new Int8Array(total);
  for (const corners of triangles)
    eachCrossing(corners, grid, (line, height, turn) => {
      // Insertion keeps each line sorted.
      let at = next[line]!++;
      for (; at > starts[line]! && heights[at - 1]! > height; at--) {
        heights[at] = heights[at - 1]!;
        turns[at] = turns[at - 1]!;
      }
      heights[at] = height;
      turns[at] = turn;
    });
  return { starts, heights, turns };
}

/** Calls `visit` with each line that passes through the triangle. An edge shared by two is cut at the same place in both. */
function eachCrossing(c: Float64Array, grid: Grid, visit: (line: number, height: number, turn: number) => void): void {
  const [x0, y0, z0, x1, y1, z1, x2, y2, z2] = c as unknown as readonly number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const area = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  if (Math.abs(area) < 1e-12) return;
  const turn = area < 0 ? 1 : -1;
  const slopeX = ((z1 - z0) * (y2 - y0) - (z2 - z0) * (y1 - y0)) / area;
  const slopeY = ((x1 - x0) * (z2 - z0) - (x2 - x0) * (z1 - z0)) / area;
  const { least, step, counts } = grid;
  const row = (y: number) => Math.ceil((y - least[1]) / step - 0.5);
  const first = Math.max(0, row(Math.min(y0, y1, y2)));
  const end = Math.min(counts[1], row(Math.max(y0, y1, y2)));
  for (let j = first; j < end; j++) {
    const y = least[1] + (j + 0.5) * step;
    let left = Infinity;
    let right = -Infinity;
    for (let e = 0; e < 3; e++) {
      const p = 3 * e;
      const q = 3 * ((e + 1) % 3);
      const below = c[p + 1]! <= c[q + 1]!;
      const [ax, ay] = below ? [c[p]!, c[p + 1]!] : [c[q]!, c[q + 1]!];
      const [bx, by] = below ? [c[q]!, c[q + 1]!] : [c[p]!, c[p + 1]!];
      if (!(ay <= y && y < by)) continue;
      const x = ax + ((bx - ax) * (y - ay)) / (by - ay);
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
    if (!(left < right)) continue;
    const from = Math.max(0, Math.ceil((left - least[0]) / step - 0.5));
    const to = Math.min(counts[0], Math.ceil((right - least[0]) / step - 0.5));
    for (let i = from; i < to; i++) {
      const x = least[0] + (i + 0.5) * step;
      visit(j * counts[0] + i, z0 + slopeX * (x - x0) + slopeY * (y - y0), turn);
    }
  }
}

/** Length of the still shape on line i that the mover, coming from `travel` below, passes through. */
function lengthInTheWay(
  { mover, still, travel }: { readonly mover: Lines; readonly still: Lines; readonly travel: number },
  i: number,
): number {
  if (mover.starts[i] === mover.starts[i + 1] || still.starts[i] === still.starts[i + 1]) return 0;
  const passed: [number, number][] = [];
  eachStretch(mover, i, (low, high) => {
    const last = passed.at(-1);
    if (last && low - travel <= last[1]) last[1] = Math.max(last[1], high);
    else passed.push([low - travel, high]);
  });
  let length = 0;
  eachStretch(still, i, (low, high) => {
    for (const [from, to] of passed) length += Math.max(0, Math.min(high, to) - Math.max(low, from));
  });
  return length;
}

function eachStretch({ starts, heights, turns }: Lines, i: number, visit: (low: number, high: number) => void): void {
  let depth = 0;
  let low = 0;
  for (let at = starts[i]!; at < starts[i + 1]!; at++) {
    if (depth === 0) low = heights[at]!;
    depth += turns[at]!;
    if (depth === 0) visit(low, heights[at]!);
  }
}

/** Sum over the lines that stand in a square of four that are all met. */
function sumOfSquares(met: Float32Array, { counts }: Grid): number {
  const [columns, rows] = counts;
  const full = new Uint8Array(met.length);
  for (let j = 0; j + 1 < rows; j++)
    for (let i = 0; i + 1 < columns; i++) {
      const at = j * columns + i;
      if (met[at]! > 0 && met[at + 1]! > 0 && met[at + columns]! > 0 && met[at + columns + 1]! > 0)
        full[at] = full[at + 1] = full[at + columns] = full[at + columns + 1] = 1;
    }
  let sum = 0;
  for (let i = 0; i < met.length; i++) if (full[i]) sum += met[i]!;
  return sum;
}

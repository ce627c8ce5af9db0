/** Shapes cut into parallel lines: for each line, where it enters and leaves the shape. */
import { invertRigid } from '../solid/matrix.js';
import type { Box, Matrix } from '../solid/mesh.js';
import { type Corners, placedTriangle, type Tree, transformBox, visitBox } from './tree.js';

/** Lines at least + (i + ½) step, counted row by row. */
export interface Grid {
  readonly least: readonly [number, number];
  readonly step: number;
  readonly counts: readonly [number, number];
}

/** Crossings of each line with a surface: those of line i are at starts[i] up to starts[i + 1], sorted by height. */
export interface Lines {
  readonly starts: Uint32Array;
  readonly heights: Float64Array;
  /** +1 into the solid, −1 out of it. */
  readonly turns: Int8Array;
}

/** Triangles whose boxes meet the box, as nine coordinates each. */
export function trianglesIn(tree: Tree, place: Matrix, { min, max }: Box): Corners[] {
  const found: Corners[] = [];
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

export function cutLines(grid: Grid, triangles: readonly Corners[]): Lines {
  const found: Found = {
    count: 0,
    lines: new Uint32Array(4096),
    heights: new Float64Array(4096),
    turns: new Int8Array(4096),
  };
  for (const corners of triangles) addCrossings(found, corners, grid);
  const lines = grid.counts[0] * grid.counts[1];
  const starts = new Uint32Array(lines + 1);
  for (let i = 0; i < found.count; i++) starts[found.lines[i]! + 1]!++;
  for (let i = 1; i < starts.length; i++) starts[i]! += starts[i - 1]!;
  const next = starts.slice(0, lines);
  const heights = new Float64Array(found.count);
  const turns = new Int8Array(found.count);
  for (let i = 0; i < found.count; i++) {
    const line = found.lines[i]!;
    const height = found.heights[i]!;
    // Insertion keeps each line sorted.
    let at = next[line]!++;
    for (; at > starts[line]! && heights[at - 1]! > height; at--) {
      heights[at] = heights[at - 1]!;
      turns[at] = turns[at - 1]!;
    }
    heights[at] = height;
    turns[at] = found.turns[i]!;
  }
  return { starts, heights, turns };
}

/** Crossings in the order in which they are found; the arrays grow. */
interface Found {
  count: number;
  lines: Uint32Array;
  heights: Float64Array;
  turns: Int8Array;
}

function grow(found: Found): void {
  const size = 2 * found.heights.length;
  const [lines, heights, turns] = [new Uint32Array(size), new Float64Array(size), new Int8Array(size)];
  lines.set(found.lines);
  heights.set(found.heights);
  turns.set(found.turns);
  Object.assign(found, { lines, heights, turns });
}

/** Adds each line that passes through the triangle. An edge shared by two is cut at the same place in both. */
function addCrossings(found: Found, c: Corners, grid: Grid): void {
  const x0 = c[0]!;
  const y0 = c[1]!;
  const z0 = c[2]!;
  const [ux, uy, uz] = [c[3]! - x0, c[4]! - y0, c[5]! - z0];
  const [vx, vy, vz] = [c[6]! - x0, c[7]! - y0, c[8]! - z0];
  const area = ux * vy - vx * uy;
  if (Math.abs(area) < 1e-12) return;
  const turn = area < 0 ? 1 : -1;
  const slopeX = (uz * vy - vz * uy) / area;
  const slopeY = (ux * vz - vx * uz) / area;
  const { step } = grid;
  const leastX = grid.least[0];
  const leastY = grid.least[1];
  const columns = grid.counts[0];
  const first = Math.max(0, Math.ceil((Math.min(y0, c[4]!, c[7]!) - leastY) / step - 0.5));
  const end = Math.min(grid.counts[1], Math.ceil((Math.max(y0, c[4]!, c[7]!) - leastY) / step - 0.5));
  for (let j = first; j < end; j++) {
    const y = leastY + (j + 0.5) * step;
    let left = Infinity;
    let right = -Infinity;
    for (let p = 0; p < 9; p += 3) {
      const q = p === 6 ? 0 : p + 3;
      const lower = c[p + 1]! <= c[q + 1]! ? p : q;
      const upper = lower === p ? q : p;
      const ay = c[lower + 1]!;
      const by = c[upper + 1]!;
      if (!(ay <= y && y < by)) continue;
      const x = c[lower]! + ((c[upper]! - c[lower]!) * (y - ay)) / (by - ay);
      if (x < left) left = x;
      if (x > right) right = x;
    }
    if (!(left < right)) continue;
    const from = Math.max(0, Math.ceil((left - leastX) / step - 0.5));
    const to = Math.min(columns, Math.ceil((right - leastX) / step - 0.5));
    const start = z0 + slopeX * (leastX - x0) + slopeY * (y - y0);
    while (found.count + to - from > found.heights.length) grow(found);
    const { lines, heights, turns } = found;
    for (let i = from; i < to; i++) {
      const at = found.count++;
      lines[at] = j * columns + i;
      heights[at] = start + slopeX * (i + 0.5) * step;
      turns[at] = turn;
    }
  }
}

/** Length of the still shape on line i that the mover, coming from `travel` below, passes through. */
export function lengthInTheWay(
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

export function eachStretch(
  { starts, heights, turns }: Lines,
  i: number,
  visit: (low: number, high: number) => void,
): void {
  let depth = 0;
  let low = 0;
  for (let at = starts[i]!; at < starts[i + 1]!; at++) {
    if (depth === 0) low = heights[at]!;
    depth += turns[at]!;
    if (depth === 0) visit(low, heights[at]!);
  }
}

/** Sum over the lines that stand in a square of four that are all met. */
export function sumOfSquares(met: Float32Array, { counts }: Grid): number {
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

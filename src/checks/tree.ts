/**
 * A tree of boxes over a shape's triangles, by which those near a place are found.
 */
import type { Box, Matrix, Mesh, Vec3 } from '../solid/mesh.js';

/** Triangles a leaf of the tree may hold. */
const LEAF = 4;

export interface Tree {
  readonly mesh: Mesh;
  /** Triangle numbers, leaf by leaf. */
  readonly order: Uint32Array;
  /** Six bounds a node: least x, y, z, then greatest. */
  readonly bounds: Float64Array;
  /** First child (the second follows it), or −1 − first place in `order`; and the count of a leaf's triangles. */
  readonly links: Int32Array;
  readonly counts: Int32Array;
  /** Some vertices of each piece that hangs together. */
  readonly pieces: readonly (readonly Vec3[])[];
}

/** @returns the tree of a mesh with at least one triangle */
export function plantTree(mesh: Mesh): Tree {
  const { positions, triangles } = mesh;
  const count = triangles.length / 3;
  const middles = new Float64Array(3 * count);
  for (let t = 0; t < count; t++)
    for (let k = 0; k < 3; k++)
      middles[3 * t + k] =
        positions[3 * triangles[3 * t]! + k]! +
        positions[3 * triangles[3 * t + 1]! + k]! +
        positions[3 * triangles[3 * t + 2]! + k]!;
  const order = Uint32Array.from({ length: count }, (_, i) => i);
  const room = 2 * count;
  const bounds = new Float64Array(6 * room);
  const links = new Int32Array(room);
  const counts = new Int32Array(room);
  let used = 1;
  // A list of what is still to be split, not a function in this one that calls itself: as that, it was compiled for each
  // tree anew, and given up as often.
  const waiting = [0, 0, count];
  while (waiting.length > 0) {
    const end = waiting.pop()!;
    const first = waiting.pop()!;
    const node = waiting.pop()!;
    boundNode({ mesh, order, bounds }, { node, first, end });
    if (end - first <= LEAF) {
      links[node] = -1 - first;
      counts[node] = end - first;
      continue;
    }
    const middle = partition(order, middles, first, end);
    const children = used;
    used += 2;
    links[node] = children;
    // The first half is split whole before the second: that numbers the nodes.
    waiting.push(children + 1, middle, end, children, first, middle);
  }
  return { mesh, order, bounds, links, counts, pieces: pieceVertices(mesh) };
}

/** Notes the box of order[first, end) as the node's. */
function boundNode(
  { mesh: { positions, triangles }, order, bounds }: Pick<Tree, 'mesh' | 'order' | 'bounds'>,
  { node, first, end }: { readonly node: number; readonly first: number; readonly end: number },
): void {
  for (let k = 0; k < 3; k++) {
    let least = Infinity;
    let most = -Infinity;
    for (let i = first; i < end; i++)
      for (let c = 0; c < 3; c++) {
        const x = positions[3 * triangles[3 * order[i]! + c]! + k]!;
        if (x < least) least = x;
        if (x > most) most = x;
      }
    bounds[6 * node + k] = least;
    bounds[6 * node + 3 + k] = most;
  }
}

/** Calls `visit` with each triangle whose node's box meets the box; ends early, with true, once it returns true. */
export function visitBox(tree: Tree, { min: least, max: most }: Box, visit: (triangle: number) => boolean): boolean {
  const { bounds, links, counts, order } = tree;
  const stack = [0];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    const b = 6 * node;
    if (bounds[b]! > most[0] || bounds[b + 1]! > most[1] || bounds[b + 2]! > most[2]) continue;
    if (bounds[b + 3]! < least[0] || bounds[b + 4]! < least[1] || bounds[b + 5]! < least[2]) continue;
    const link = links[node]!;
    if (link >= 0) stack.push(link, link + 1);
    else for (let i = 0; i < counts[node]!; i++) if (visit(order[-1 - link + i]!)) return true;
  }
  return false;
}

/** Box of a box moved by a rigid transform, grown by `margin`. */
export function transformBox(box: Box, m: Matrix, margin = 0): Box {
  const min = [0, 0, 0];
  const max = [0, 0, 0];
  for (let r = 0; r < 3; r++) {
    let low = m[4 * r + 3]!;
    let high = low;
    for (let c = 0; c < 3; c++) {
      const p = m[4 * r + c]! * box.min[c]!;
      const q = m[4 * r + c]! * box.max[c]!;
      low += Math.min(p, q);
      high += Math.max(p, q);
    }
    min[r] = low - margin;
    max[r] = high + margin;
  }
  return { min: min as unknown as Vec3, max: max as unknown as Vec3 };
}

/** A triangle's nine coordinates. A plain array: typed ones of this size are dear to make. */
export type Corners = readonly number[];

/** @returns a triangle's nine coordinates, moved by m */
export function placedTriangle({ positions, triangles }: Mesh, triangle: number, m: Matrix): number[] {
  const a = 3 * triangles[3 * triangle]!;
  const b = 3 * triangles[3 * triangle + 1]!;
  const c = 3 * triangles[3 * triangle + 2]!;
  const [ax, ay, az] = [positions[a]!, positions[a + 1]!, positions[a + 2]!];
  const [bx, by, bz] = [positions[b]!, positions[b + 1]!, positions[b + 2]!];
  const [cx, cy, cz] = [positions[c]!, positions[c + 1]!, positions[c + 2]!];
  const [m0, m1, m2, m3] = [m[0]!, m[1]!, m[2]!, m[3]!];
  const [m4, m5, m6, m7] = [m[4]!, m[5]!, m[6]!, m[7]!];
  const [m8, m9, m10, m11] = [m[8]!, m[9]!, m[10]!, m[11]!];
  return [
    m0 * ax + m1 * ay + m2 * az + m3,
    m4 * ax + m5 * ay + m6 * az + m7,
    m8 * ax + m9 * ay + m10 * az + m11,
    m0 * bx + m1 * by + m2 * bz + m3,
    m4 * bx + m5 * by + m6 * bz + m7,
    m8 * bx + m9 * by + m10 * bz + m11,
    m0 * cx + m1 * cy + m2 * cz + m3,
    m4 * cx + m5 * cy + m6 * cz + m7,
    m8 * cx + m9 * cy + m10 * cz + m11,
  ];
}

/** Sorts order[first, end) about the middle of its triangles' longest side. @returns where the second half starts */
function partition(order: Uint32Array, middles: Float64Array, first: number, end: number): number {
  let axis = 0;
  let size = -1;
  let cut = 0;
  for (let k = 0; k < 3; k++) {
    let low = Infinity;
    let high = -Infinity;
    for (let i = first; i < end; i++) {
      const x = middles[3 * order[i]! + k]!;
      if (x < low) low = x;
      if (x > high) high = x;
    }
    if (high - low > size) {
      axis = k;
      size = high - low;
      cut = (low + high) / 2;
    }
  }
  let from = first;
  let to = end;
  while (from < to) {
    if (middles[3 * order[from]! + axis]! < cut) from++;
    else {
      to--;
      const swap = order[from]!;
      order[from] = order[to]!;
      order[to] = swap;
    }
  }
  return from === first || from === end ? (first + end) >> 1 : from;
}

/** @returns the box of a node; of the whole for the first */
export const boxOf = ({ bounds }: Tree, node: number): Box => {
  const n = 6 * node;
  return { min: [bounds[n]!, bounds[n + 1]!, bounds[n + 2]!], max: [bounds[n + 3]!, bounds[n + 4]!, bounds[n + 5]!] };
};

/** @returns the box of a triangle's nine coordinates, grown by `margin` */
export function boxOfCorners(c: Corners, margin: number): Box {
  const over = (k: number) => Math.max(c[k]!, c[3 + k]!, c[6 + k]!) + margin;
  const under = (k: number) => Math.min(c[k]!, c[3 + k]!, c[6 + k]!) - margin;
  return { min: [under(0), under(1), under(2)], max: [over(0), over(1), over(2)] };
}

export function triangleMeetsBox({ positions, triangles }: Mesh, triangle: number, { min, max }: Box): boolean {
  const a = 3 * triangles[3 * triangle]!;
  const b = 3 * triangles[3 * triangle + 1]!;
  const c = 3 * triangles[3 * triangle + 2]!;
  for (let k = 0; k < 3; k++) {
    const p = positions[a + k]!;
    const q = positions[b + k]!;
    const r = positions[c + k]!;
    if (Math.min(p, q, r) > max[k]! || Math.max(p, q, r) < min[k]!) return false;
  }
  return true;
}

/** Vertices taken of each piece, spread over it. */
const OF_PIECE = 12;

function pieceVertices({ positions, triangles }: Mesh): Vec3[][] {
  const parent = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
  const root = (i: number) => {
    while (parent[i] !== i) {
      parent[i] = parent[parent[i]!]!;
      i = parent[i]!;
    }
    return i;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    parent[root(triangles[t + 1]!)] = root(triangles[t]!);
    parent[root(triangles[t + 2]!)] = root(triangles[t]!);
  }
  const pieces = new Map<number, number[]>();
  for (const vertex of new Set(triangles)) {
    const piece = pieces.get(root(vertex));
    if (piece) piece.push(vertex);
    else pieces.set(root(vertex), [vertex]);
  }
  return [...pieces.values()].map((piece) => {
    const every = Math.max(1, Math.floor(piece.length / OF_PIECE));
    return piece
      .filter((_, i) => i % every === 0)
      .map((v): Vec3 => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!]);
  });
}

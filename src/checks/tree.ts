/**
 * A tree of boxes over a shape's triangles. It answers cheaply what the kernel would answer dearly: that two shapes
 * come nowhere near each other. What it can't rule out is left to the kernel.
 */
import { apply } from '../solid/matrix.js';
import type { Box, Matrix, Mesh, Vec3 } from '../solid/mesh.js';

/** Triangles a leaf of the tree may hold. */
const LEAF = 4;

/** A direction along no edge that is drawn: rays along it don't run along faces. */
const RAY: Vec3 = [0.741937, 0.313731, 0.592583];

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

  const split = (node: number, first: number, end: number): void => {
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (let i = first; i < end; i++)
      for (let c = 0; c < 3; c++) {
        const v = 3 * triangles[3 * order[i]! + c]!;
        for (let k = 0; k < 3; k++) {
          const x = positions[v + k]!;
          if (x < least[k]!) least[k] = x;
          if (x > most[k]!) most[k] = x;
        }
      }
    for (let k = 0; k < 3; k++) {
      bounds[6 * node + k] = least[k]!;
      bounds[6 * node + 3 + k] = most[k]!;
    }
    if (end - first <= LEAF) {
      links[node] = -1 - first;
      counts[node] = end - first;
      return;
    }
    const middle = partition(order, middles, first, end);
    const children = used;
    used += 2;
    links[node] = children;
    split(children, first, middle);
    split(children + 1, middle, end);
  };
  split(0, 0, count);
  return { mesh, order, bounds, links, counts, pieces: pieceVertices(mesh) };
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

export interface Two {
  readonly a: Tree;
  readonly b: Tree;
  /** From b's coordinates to a's, and back. */
  readonly toA: Matrix;
  readonly toB: Matrix;
  /** [mm] */
  readonly limit: number;
}

/**
 * Calls `visit` with each pair of triangles, one of a and one of b, whose boxes in a's coordinates are within the limit;
 * ends early, with true, once it returns true.
 */
export function visitNear(
  { a, b, toA, limit }: Omit<Two, 'toB'>,
  visit: (ofA: number, ofB: number) => boolean,
): boolean {
  // Boxes of b's nodes and triangles in a's coordinates, each computed once.
  const nodes: (Box | undefined)[] = [];
  const nodeBox = (node: number): Box => {
    nodes[node] ??= transformBox(boxOf(b, node), toA, limit);
    return nodes[node]!;
  };
  const leaves: (Box[] | undefined)[] = [];
  const leafBoxes = (node: number): Box[] => {
    leaves[node] ??= trianglesOf(b, node).map((t) => boxOfCorners(placedTriangle(b.mesh, t, toA), limit));
    return leaves[node]!;
  };
  const stack = [0, 0];
  while (stack.length > 0) {
    const nb = stack.pop()!;
    const na = stack.pop()!;
    if (!nodeMeetsBox(a, na, nodeBox(nb))) continue;
    const [la, lb] = [a.links[na]!, b.links[nb]!];
    if (la < 0 && lb < 0) {
      const boxes = leafBoxes(nb);
      for (let i = 0; i < b.counts[nb]!; i++)
        for (let k = 0; k < a.counts[na]!; k++) {
          const other = a.order[-1 - la + k]!;
          if (triangleMeetsBox(a.mesh, other, boxes[i]!) && visit(other, b.order[-1 - lb + i]!)) return true;
        }
    } else if (lb < 0 || (la >= 0 && sizeOfNode(a, na) > sizeOfNode(b, nb))) stack.push(la, nb, la + 1, nb);
    else stack.push(na, lb, na, lb + 1);
  }
  return false;
}

const trianglesOf = ({ links, counts, order }: Tree, leaf: number): number[] =>
  Array.from(order.subarray(-1 - links[leaf]!, -1 - links[leaf]! + counts[leaf]!));

function nodeMeetsBox({ bounds }: Tree, node: number, { min, max }: Box): boolean {
  const n = 6 * node;
  return !(
    bounds[n]! > max[0] ||
    bounds[n + 1]! > max[1] ||
    bounds[n + 2]! > max[2] ||
    bounds[n + 3]! < min[0] ||
    bounds[n + 4]! < min[1] ||
    bounds[n + 5]! < min[2]
  );
}

function sizeOfNode({ bounds }: Tree, node: number): number {
  const n = 6 * node;
  return Math.max(bounds[n + 3]! - bounds[n]!, bounds[n + 4]! - bounds[n + 1]!, bounds[n + 5]! - bounds[n + 2]!);
}

/**
 * Are the two certainly at least `limit` apart, neither holding a piece of the other?
 *
 * False may also mean "perhaps not": boxes of triangles are compared, not the triangles.
 */
export function certainlyApart({ a, b, toA, toB, limit }: Two): boolean {
  if (visitNear({ a, b, toA, limit }, () => true)) return false;
  // No surface is near the other, so each piece is wholly inside or wholly outside.
  return !b.pieces.some(([p]) => holds(a, apply(toA, p!))) && !a.pieces.some(([p]) => holds(b, apply(toB, p!)));
}

/** Is the point inside? Not decided within rounding of the surface. */
export function holds(tree: Tree, point: Vec3): boolean {
  for (let k = 0; k < 3; k++) if (point[k]! < tree.bounds[k]! || point[k]! > tree.bounds[3 + k]!) return false;
  const reach = [0, 1, 2].reduce((sum, k) => sum + tree.bounds[3 + k]! - tree.bounds[k]!, 0);
  const way: Vec3 = [reach * RAY[0], reach * RAY[1], reach * RAY[2]];
  let turns = 0;
  visitRay(tree, point, (triangle) => {
    turns += crossing(cornersFrom(tree.mesh, triangle, point), way);
  });
  return turns > 0;
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
const boxOf = ({ bounds }: Tree, node: number): Box => {
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

/** Calls `visit` with each triangle whose node's box the ray from the point along RAY meets. */
function visitRay(tree: Tree, from: Vec3, visit: (triangle: number) => void): void {
  const { bounds, links, counts, order } = tree;
  const stack = [0];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    let enter = 0;
    let leave = Infinity;
    for (let k = 0; k < 3; k++) {
      // RAY runs up every axis, so the least face comes first.
      enter = Math.max(enter, (bounds[6 * node + k]! - from[k]!) / RAY[k]!);
      leave = Math.min(leave, (bounds[6 * node + 3 + k]! - from[k]!) / RAY[k]!);
    }
    if (enter > leave + 1e-9) continue;
    const link = links[node]!;
    if (link >= 0) stack.push(link, link + 1);
    else for (let i = 0; i < counts[node]!; i++) visit(order[-1 - link + i]!);
  }
}

/** A triangle's corners, seen from a point. */
const cornersFrom = ({ positions, triangles }: Mesh, triangle: number, from: Vec3) =>
  [0, 1, 2].map((c) => {
    const v = 3 * triangles[3 * triangle + c]!;
    return [positions[v]! - from[0], positions[v + 1]! - from[1], positions[v + 2]! - from[2]] as const;
  }) as [Vec3, Vec3, Vec3];

/** +1 where the way from the origin leaves through the triangle, −1 where it enters, 0 where it misses. */
function crossing(p: readonly [Vec3, Vec3, Vec3], way: Vec3): number {
  // Signed volumes of the tetrahedra over the three edges: all of one sign when the line passes inside.
  const u = triple(way, p[0], p[1]);
  const v = triple(way, p[1], p[2]);
  const w = triple(way, p[2], p[0]);
  if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0)) || u + v + w === 0) return 0;
  const behind = triple(p[0], p[1], p[2]) / (u + v + w);
  return behind > 0 && behind <= 1 ? Math.sign(u + v + w) : 0;
}

const triple = (a: Vec3, b: Vec3, c: Vec3) =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);

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

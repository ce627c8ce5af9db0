/**
 * Whether two shapes come near each other at all. It answers cheaply what the kernel would answer dearly; what it can't
 * rule out is left to the kernel.
 */
import { apply } from '../solid/matrix.js';
import type { Box, Matrix } from '../solid/mesh.js';
import { holds } from './inside.js';
import { boxOf, boxOfCorners, placedTriangle, type Tree, transformBox, triangleMeetsBox } from './tree.js';

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

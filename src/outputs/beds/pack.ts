/**
 * Parts onto beds, by the rectangles they stand on: few beds, and the same ones every time. Bin packing has no fast best
 * answer, so several orders are tried and the one with the fewest beds is kept.
 */
import { MaxRectsPacker, PACKING_LOGIC } from 'maxrects-packer/dist/maxrects-packer.mjs';
import { ON_BED } from '../../checks/bed.js';
import { ORDERS, shuffled } from './orders.js';

export interface Piece {
  readonly id: string;
  readonly width: number;
  readonly depth: number;
}

export interface Spot {
  readonly id: string;
  /** Near left corner of its rectangle on the bed [mm]. */
  readonly x: number;
  readonly y: number;
  /** A quarter turn, counter-clockwise. */
  readonly turned: boolean;
}

export interface Room {
  /** Usable, within the edge margin [mm]. */
  readonly width: number;
  readonly depth: number;
  readonly spacing: number;
}

type Layout = readonly (readonly Spot[])[];

const LOGICS = [PACKING_LOGIC.MAX_EDGE, PACKING_LOGIC.MAX_AREA];
/** Orders tried where the plain ones miss the bound by area. Kits with a bed to save mostly show it in the first 20. */
const SHUFFLES = 60;

/**
 * @returns for each bed where its pieces stand; each piece stands on exactly one
 * @throws {RangeError} when a piece does not fit an empty bed: longer or wider than the check of the bed lets pass
 */
export function packBeds(pieces: readonly Piece[], room: Room): Layout {
  for (const { id, width, depth } of pieces)
    if (
      Math.max(width, depth) > Math.max(room.width, room.depth) + ON_BED ||
      Math.min(width, depth) > Math.min(room.width, room.depth) + ON_BED
    )
      throw new RangeError(`packBeds: ${id}, ${width} × ${depth}, does not fit ${room.width} × ${room.depth}`);
  const areas = new Map(pieces.map(({ id, width, depth }) => [id, width * depth]));
  const onLast = (beds: Layout) => (beds.at(-1) ?? []).reduce((sum, { id }) => sum + areas.get(id)!, 0);
  // With as many beds, the last one emptier, so that more room is left in one piece.
  const better = (a: Layout, b: Layout) => (a.length === b.length ? onLast(a) < onLast(b) : a.length < b.length);

  const plain = ORDERS.flatMap((order) => LOGICS.map((logic) => packOnce([...pieces].sort(order), room, logic)));
  let best = plain.reduce((kept, one) => (better(one, kept) ? one : kept));
  const least = leastBeds(pieces, room);
  if (best.length === least) return best;
  for (const [i, order] of shuffled(pieces, SHUFFLES).entries()) {
    const one = packOnce(order, room, LOGICS[i % LOGICS.length]!);
    if (better(one, best)) best = one;
    if (best.length === least) break;
  }
  return best;
}

/** Each rectangle carries its spacing on its far and right side; the bed is that much larger, so that the last needs none. */
function packOnce(pieces: readonly Piece[], { width, depth, spacing }: Room, logic: PACKING_LOGIC): Layout {
  const packer = new MaxRectsPacker(width + spacing + ON_BED, depth + spacing + ON_BED, 0, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: true,
    logic,
  });
  for (const piece of pieces) packer.add(piece.width + spacing, piece.depth + spacing, piece.id);
  return packer.bins.map((bin) =>
    bin.rects.map((rect) => ({ id: rect.data as string, x: rect.x, y: rect.y, turned: rect.rot === true })),
  );
}

/** @returns beds at the least by area alone: no packing can do with fewer */
export const leastBeds = (pieces: readonly Piece[], { width, depth, spacing }: Room): number =>
  Math.ceil(
    pieces.reduce((sum, piece) => sum + (piece.width + spacing) * (piece.depth + spacing), 0) /
      ((width + spacing + ON_BED) * (depth + spacing + ON_BED)) -
      1e-9,
  );

/**
 * Parts onto beds, by the rectangles they stand on: few beds, and the same ones every time. Bin packing has no fast best
 * answer, so several orders are tried and the one with the fewest beds is kept.
 */
import { MaxRectsPacker, PACKING_LOGIC } from 'maxrects-packer/dist/maxrects-packer.mjs';

/** Between neighbours on a bed [mm] (common practice, no source: a skirt or a finger's breadth of a scraper). */
export const SPACING = 5;

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

type Order = (a: Piece, b: Piece) => number;
const area = ({ width, depth }: Piece) => width * depth;
const long = ({ width, depth }: Piece) => Math.max(width, depth);
const short = ({ width, depth }: Piece) => Math.min(width, depth);
const ORDERS: readonly Order[] = [
  (a, b) => long(b) - long(a) || short(b) - short(a),
  (a, b) => area(b) - area(a),
  (a, b) => short(b) - short(a) || long(b) - long(a),
  (a, b) => b.width + b.depth - (a.width + a.depth),
];
const LOGICS = [PACKING_LOGIC.MAX_EDGE, PACKING_LOGIC.MAX_AREA];

/**
 * @returns for each bed where its pieces stand; each piece stands on exactly one
 * @throws {RangeError} when a piece does not fit an empty bed
 */
export function packBeds(pieces: readonly Piece[], room: Room): readonly (readonly Spot[])[] {
  for (const { id, width, depth } of pieces)
    if (
      Math.max(width, depth) > Math.max(room.width, room.depth) ||
      Math.min(width, depth) > Math.min(room.width, room.depth)
    )
      throw new RangeError(`packBeds: ${id}, ${width} × ${depth}, does not fit ${room.width} × ${room.depth}`);
  const tries = ORDERS.flatMap((order) => LOGICS.map((logic) => packOnce([...pieces].sort(order), room, logic)));
  return tries.reduce((best, one) => (better(one, best) ? one : best));
}

/** Fewer beds; with as many, the last one emptier, so that more room is left in one piece. */
const better = (a: readonly (readonly Spot[])[], b: readonly (readonly Spot[])[]): boolean =>
  a.length !== b.length ? a.length < b.length : a.length > 0 && a.at(-1)!.length < b.at(-1)!.length;

function packOnce(pieces: readonly Piece[], { width, depth, spacing }: Room, logic: PACKING_LOGIC): Spot[][] {
  // Each rectangle carries its spacing on its far and right side; the bed is that much larger, so that the last needs none.
  const packer = new MaxRectsPacker(width + spacing, depth + spacing, 0, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: true,
    logic,
  });
  // A hair off, so that sums of decimals do not turn a piece away that fits exactly.
  const HAIR = 1e-9;
  for (const piece of pieces) packer.add(piece.width + spacing - HAIR, piece.depth + spacing - HAIR, piece.id);
  return packer.bins.map((bin) =>
    bin.rects.map((rect) => ({ id: rect.data as string, x: rect.x, y: rect.y, turned: rect.rot === true })),
  );
}

/** @returns beds at the least by area alone: no packing can do with fewer */
export const leastBeds = (pieces: readonly Piece[], { width, depth, spacing }: Room): number =>
  Math.ceil(
    pieces.reduce((sum, piece) => sum + (piece.width + spacing) * (piece.depth + spacing), 0) /
      ((width + spacing) * (depth + spacing)) -
      1e-9,
  );

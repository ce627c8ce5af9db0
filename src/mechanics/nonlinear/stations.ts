/** Where along a leaf its stress is read. */
import { along, type Stretch } from '../path.js';
import { neutralShift } from './natural-stiffness.js';

/** A place along the leaf where stress is read. */
export interface Station {
  readonly bar: number;
  /** Along the chord as a share of it; off the chord at rest [mm]; heading against the chord at rest. */
  readonly share: number;
  readonly off: number;
  readonly cos: number;
  readonly sin: number;
  readonly thickness: number;
  /** Counter-clockwise positive [1/mm], 0 when straight. */
  readonly curvature: number;
  /** Shift of a curved piece's neutral axis [mm]. */
  readonly shift: number;
  /** Length from the path's start [mm]. */
  readonly s: number;
  /** At the fillets of post and arm. */
  readonly root: boolean;
  /** Which of the path's arcs it lies on, counted from 0; −1: a straight stretch. */
  readonly turn: number;
}

export interface Reading {
  readonly piece: Stretch;
  readonly bar: number;
  /** Length from the leaf's root to the piece, below 0 where the leaf was lengthened. */
  readonly from: number;
  readonly at: (s: number) => number;
  readonly stations: Station[];
  /** Which of the path's arcs the piece is of; −1: none. */
  readonly turn: number;
  /** The leaf's own length, and whether this is its last piece. */
  readonly whole: number;
  readonly last: boolean;
}

/**
 * Both ends and the middle of a piece: the moment is linear along a straight one and largest within a turn. A lengthened leaf is
 * read between post and arm only, a shortened one up to them.
 */
export function readStations({ piece, bar, from, at, stations, turn, whole, last }: Reading): void {
  const [x0, y0] = piece.start;
  const [x1, y1] = along(piece, piece.length);
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const [c, z] = [(x1 - x0) / chord, (y1 - y0) / chord];
  const start = bar === 0 || from < 0 ? -from : 0;
  const end = last || from + piece.length > whole ? whole - from : piece.length;
  if (start >= piece.length || end <= 0) return;
  for (const s of [start, (start + end) / 2, end]) {
    const [x, y] = along(piece, s);
    const heading = piece.heading + piece.curvature * s;
    stations.push({
      bar,
      share: ((x - x0) * c + (y - y0) * z) / chord,
      off: (y - y0) * c - (x - x0) * z,
      cos: Math.cos(heading) * c + Math.sin(heading) * z,
      sin: Math.sin(heading) * c - Math.cos(heading) * z,
      thickness: at(s),
      curvature: piece.curvature,
      shift: piece.curvature === 0 ? 0 : neutralShift(Math.abs(1 / piece.curvature), at(s)),
      s: from + s,
      root: Math.abs(from + s) < 1e-9 || Math.abs(from + s - whole) < 1e-9,
      turn,
    });
  }
}

/** Strips onto one panel: do they all fit, and where? */
import { MaxRectsPacker, PACKING_LOGIC } from 'maxrects-packer/dist/maxrects-packer.mjs';

export interface Strip {
  readonly id: string;
  /** Along the strip, and across it [mm]. */
  readonly length: number;
  readonly height: number;
}

export interface PanelSpot {
  readonly id: string;
  /** Lower left corner of its rectangle on the panel [mm]. */
  readonly x: number;
  readonly y: number;
  /** A quarter turn, counter-clockwise. */
  readonly turned: boolean;
}

export interface PanelLimit {
  readonly x: number;
  readonly y: number;
}

/** Left between strips for the cut [mm]. */
export const CUT = 2;
/** Sums of tenths are not longer than they are. */
const HAIR = 1e-6;

type Order = (a: Strip, b: Strip) => number;
const ORDERS: readonly Order[] = [
  (a, b) => b.length - a.length,
  (a, b) => b.length * b.height - a.length * a.height,
  (a, b) => a.length - b.length,
];
const LOGICS = [PACKING_LOGIC.MAX_EDGE, PACKING_LOGIC.MAX_AREA];

/** @returns where each strip lies, or null where no try brings all onto one panel */
export function packPanel(strips: readonly Strip[], limit: PanelLimit): readonly PanelSpot[] | null {
  const area = strips.reduce((sum, { length, height }) => sum + (length + CUT) * (height + CUT), 0);
  if (area > (limit.x + CUT) * (limit.y + CUT) + HAIR) return null;
  for (const rows of [inRows(strips, limit, false), inRows(strips, limit, true)]) if (rows) return rows;
  for (const order of ORDERS)
    for (const logic of LOGICS) {
      const packer = new MaxRectsPacker(limit.x + CUT + HAIR, limit.y + CUT + HAIR, 0, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: true,
        logic,
      });
      for (const { id, length, height } of [...strips].sort(order)) packer.add(length + CUT, height + CUT, id);
      const [bin, other] = packer.bins;
      if (bin === undefined || other !== undefined || bin.rects.length !== strips.length) continue;
      // A piece too large for any bin is given one of its own size.
      if (
        bin.rects.some(
          ({ x, y, width, height }) => x + width - CUT > limit.x + HAIR || y + height - CUT > limit.y + HAIR,
        )
      )
        continue;
      return bin.rects.map(({ x, y, rot, data }) => ({ id: data as string, x, y, turned: rot === true }));
    }
  return null;
}

/** Strips of one height in rows, the longest first into the fullest row that takes it: saws cut such panels with fewest cuts. */
function inRows(strips: readonly Strip[], limit: PanelLimit, turned: boolean): readonly PanelSpot[] | null {
  const [along, across] = turned ? [limit.y, limit.x] : [limit.x, limit.y];
  const height = Math.max(...strips.map((strip) => strip.height));
  const count = Math.floor((across + CUT + HAIR) / (height + CUT));
  const used: number[] = [];
  const spots: PanelSpot[] = [];
  for (const { id, length } of [...strips].sort((a, b) => b.length - a.length)) {
    const open = used.map((at, row) => ({ at, row })).filter(({ at }) => at + length <= along + HAIR);
    const best = open.sort((a, b) => b.at - a.at)[0];
    if (!best && (used.length >= count || length > along + HAIR)) return null;
    const { at, row } = best ?? { at: 0, row: used.length };
    const up = row * (height + CUT);
    spots.push(turned ? { id, x: up, y: at, turned } : { id, x: at, y: up, turned });
    used[row] = at + length + CUT;
  }
  return spots;
}

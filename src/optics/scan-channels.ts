/** Which receiver is read where: lines onto multiplexer channels, what is left over onto spare pins. */

/** One line's receiver. */
export interface ScanLine {
  /** Unique, such as `row-0`. */
  readonly name: string;
  readonly line: 'row' | 'column';
  readonly index: number;
  /** The board that carries the receiver; a multiplexer serves one board only. */
  readonly board: string;
}

export type Place =
  | { readonly kind: 'multiplexer'; readonly multiplexer: number; readonly address: number }
  | { readonly kind: 'pin'; readonly pin: number };

export interface Channel {
  readonly line: ScanLine;
  readonly place: Place;
}

export interface ChannelPlan {
  /** In the order of the lines given. */
  readonly channels: readonly Channel[];
  /** Board of each multiplexer. */
  readonly multiplexers: readonly string[];
  /** Spare pins used. */
  readonly pins: number;
}

/**
 * Shares lines out: as few multiplexers as the spare pins allow, the lines of a board spread evenly over its own, in order.
 *
 * A board's last multiplexer carries what the others leave; where spare pins can take that rest, the multiplexer is saved. The
 * smallest rests go first, so that the fewest pins save the most. Pins are not used where they save nothing.
 *
 * @param lines - in the order in which they are to be numbered, names unique
 * @param size - channels of a multiplexer @param spare - input pins that are free, whole, ≥ 0
 * @throws {RangeError} on a name given twice or a number of pins that is none
 */
export function shareOut(lines: readonly ScanLine[], size: 8 | 16, spare: number): ChannelPlan {
  if (!(Number.isInteger(spare) && spare >= 0))
    throw new RangeError(`shareOut: spare must be whole and ≥ 0, got ${spare}`);
  const names = new Set(lines.map(({ name }) => name));
  if (names.size < lines.length) throw new RangeError('shareOut: names must be unique');

  const boards = [...new Set(lines.map(({ board }) => board))];
  const linesOf = (board: string) => lines.filter((line) => line.board === board);
  const direct = directLines(
    boards.map((board) => linesOf(board).length),
    size,
    spare,
  );

  const places = new Map<string, Place>();
  const multiplexers: string[] = [];
  let pins = 0;
  for (const [i, board] of boards.entries()) {
    const own = linesOf(board);
    const through = own.length - direct[i]!;
    const chips = Math.ceil(through / size);
    for (const [k, line] of own.slice(0, through).entries()) {
      // Even shares keep the number of addresses to step through small; the first ones take one more.
      const chip = Math.floor((k * chips) / through);
      const address = k - Math.ceil((chip * through) / chips);
      places.set(line.name, { kind: 'multiplexer', multiplexer: multiplexers.length + chip, address });
    }
    for (let chip = 0; chip < chips; chip += 1) multiplexers.push(board);
    for (const line of own.slice(through)) {
      places.set(line.name, { kind: 'pin', pin: pins });
      pins += 1;
    }
  }
  return { channels: lines.map((line) => ({ line, place: places.get(line.name)! })), multiplexers, pins };
}

/** @returns how many lines of each board go to spare pins */
function directLines(counts: readonly number[], size: number, spare: number): readonly number[] {
  const direct = counts.map(() => 0);
  let left = spare;
  for (;;) {
    const rests = counts
      .map((count, board) => ({ board, through: count - direct[board]! }))
      .filter(({ through }) => through > 0)
      .map(({ board, through }) => ({ board, rest: through % size === 0 ? size : through % size }))
      .sort((a, b) => a.rest - b.rest || a.board - b.board);
    const [next] = rests;
    if (next === undefined || next.rest > left) return direct;
    direct[next.board]! += next.rest;
    left -= next.rest;
  }
}

/** Beams of one piece of rail shared among boards no longer than the panel takes. mm. */

export interface PieceOptions {
  /** Places of the beams, ascending. */
  readonly beams: readonly number[];
  /** From a board's end to its outermost beam. */
  readonly end: number;
  readonly longest: number;
}

const HAIR = 1e-9;

/** @returns the fewest pieces, by their first and last beam: even in beams where that fits, so that pieces are alike */
export function pieces({ beams, end, longest }: PieceOptions): readonly (readonly [first: number, last: number])[] {
  const fits = ([first, last]: readonly [number, number]) => beams[last]! - beams[first]! + 2 * end <= longest + HAIR;
  const greedy: [number, number][] = [];
  beams.forEach((_, i) => {
    const open = greedy.at(-1);
    if (open && fits([open[0], i])) open[1] = i;
    else greedy.push([i, i]);
  });
  const even = Array.from({ length: greedy.length }, (_, i): [number, number] => [
    Math.ceil((i * beams.length) / greedy.length),
    Math.ceil(((i + 1) * beams.length) / greedy.length) - 1,
  ]);
  return even.every(fits) ? even : greedy;
}

/** @returns the longest board across which a panel still holds its height; 0 where it does not */
export function longestOn({ x, y }: { readonly x: number; readonly y: number }, height: number): number {
  const [short, long] = [Math.min(x, y), Math.max(x, y)];
  return height <= short + HAIR ? long : height <= long + HAIR ? short : 0;
}

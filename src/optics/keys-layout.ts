/** Which crossings of a grid are keys, and what the receivers of a scan say. Rows and columns count from 0. */

/** keys[row][column]: whether there is a key at that crossing. Every row is as long as the first. */
export type KeyLayout = readonly (readonly boolean[])[];

export interface Key {
  readonly row: number;
  readonly column: number;
}

/** Rows and columns whose receivers are dark, each once. */
export interface Blocked {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/** Keys held down together, in reading order: by row, then column. */
export type KeySet = readonly Key[];

/** @returns a layout with a key at every crossing @throws {RangeError} unless both are whole and above zero */
export function fullLayout(rows: number, columns: number): KeyLayout {
  if (![rows, columns].every((n) => Number.isInteger(n) && n > 0))
    throw new RangeError(`fullLayout: rows and columns must be whole and > 0, got ${rows} and ${columns}`);
  return Array.from({ length: rows }, () => new Array<boolean>(columns).fill(true));
}

/** @returns the layout without these keys */
export const without = (layout: KeyLayout, gone: readonly Key[]): KeyLayout =>
  layout.map((line, row) => line.map((key, column) => key && !gone.some((g) => g.row === row && g.column === column)));

export const hasKey = (layout: KeyLayout, { row, column }: Key): boolean => layout[row]?.[column] === true;

/** @returns every key, in reading order */
export const keysOf = (layout: KeyLayout): KeySet =>
  layout.flatMap((line, row) => line.flatMap((key, column) => (key ? [{ row, column }] : [])));

/** @returns what the receivers say while these keys are held: each line once, rising */
export function blockedBy(keys: KeySet): Blocked {
  const rising = (lines: readonly number[]) => [...new Set(lines)].sort((a, b) => a - b);
  return { rows: rising(keys.map(({ row }) => row)), columns: rising(keys.map(({ column }) => column)) };
}

/** @returns keys in reading order */
export const inOrder = (keys: readonly Key[]): KeySet => [...keys].sort((a, b) => a.row - b.row || a.column - b.column);

/** Text that is equal for equal sets, whatever their order. */
export const setName = (keys: KeySet): string =>
  inOrder(keys)
    .map(({ row, column }) => `${row},${column}`)
    .join(' ');

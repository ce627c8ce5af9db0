/** What the receivers of one scan can mean: every set of keys that darkens exactly those lines. */
import { type Blocked, hasKey, inOrder, type Key, type KeyLayout, type KeySet } from './keys-layout.js';

/** Lines beyond which sets are not counted: the count goes through all subsets of the shorter side. */
export const MOST_COUNTED = 20;

export interface ConsistentSets {
  readonly sets: readonly KeySet[];
  /** False when the limit cut the list short. */
  readonly complete: boolean;
}

/**
 * Lists the sets of existing keys that darken exactly these rows and columns.
 *
 * Row by row, each takes some of its keys, and in any case those whose columns no later row can darken: so no way ends in nothing, and
 * the time is that of the sets listed.
 *
 * @param layout - keys that exist @param blocked - dark rows and columns @param most - sets to list at most
 * @returns sets in a fixed order; none when the lines can't be explained by keys: a fault, or a hand across the grid
 * @throws {RangeError} unless `most` is a whole number above zero
 */
export function consistentSets(layout: KeyLayout, blocked: Blocked, most: number): ConsistentSets {
  if (!(Number.isInteger(most) && most > 0))
    throw new RangeError(`consistentSets: most must be whole and > 0, got ${most}`);
  const { rows, columns } = blocked;
  const choices = rows.map((row) => columns.filter((column) => hasKey(layout, { row, column })));
  const later = choices.map((_, i) => new Set(choices.slice(i + 1).flat()));
  const sets: KeySet[] = [];
  let complete = true;

  const walk = (i: number, taken: readonly Key[], open: ReadonlySet<number>): void => {
    if (i === rows.length) {
      if (sets.length < most) sets.push(inOrder(taken));
      else complete = false;
      return;
    }
    // A column that no later row can darken has to be taken here.
    const must = choices[i]!.filter((column) => open.has(column) && !later[i]!.has(column));
    const may = choices[i]!.filter((column) => !must.includes(column));
    for (const picked of someOf(may, must.length > 0 ? 0 : 1)) {
      const here = [...must, ...picked];
      const left = new Set([...open].filter((column) => !here.includes(column)));
      walk(i + 1, [...taken, ...here.map((column) => ({ row: rows[i]!, column }))], left);
      if (!complete) return;
    }
  };
  const explained = columns.every((column) => rows.some((row) => hasKey(layout, { row, column })));
  if (explained && choices.every((choice) => choice.length > 0)) walk(0, [], new Set(columns));
  return { sets, complete };
}

/** Every choice of at least so many, smallest first: fewest fingers are the likeliest. Generated one at a time. */
function* someOf(of: readonly number[], least: number): Generator<readonly number[]> {
  for (let size = least; size <= of.length; size += 1) yield* choose(of, size);
}

function* choose(of: readonly number[], size: number): Generator<readonly number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = 0; i + size <= of.length; i += 1)
    for (const rest of choose(of.slice(i + 1), size - 1)) yield [of[i]!, ...rest];
}

/**
 * Number of such sets on a full grid with r dark rows and c dark columns: Σ_i (−1)^i C(r, i) (2^(r−i) − 1)^c, i from 0 to r.
 *
 * @param rows - r @param columns - c, whole, ≥ 0 @returns exact; 1 for no dark line at all
 * @throws {RangeError} unless both are whole and ≥ 0
 * Source: inclusion–exclusion over rows left out; it counts matrices of 0 and 1 without an empty row or column.
 */
export function countFull(rows: number, columns: number): bigint {
  if (![rows, columns].every((n) => Number.isInteger(n) && n >= 0))
    throw new RangeError(`countFull: rows and columns must be whole and ≥ 0, got ${rows} and ${columns}`);
  let sum = 0n;
  let ways = 1n;
  for (let i = 0; i <= rows; i += 1) {
    const term = ways * (2n ** BigInt(rows - i) - 1n) ** BigInt(columns);
    sum += i % 2 === 0 ? term : -term;
    ways = (ways * BigInt(rows - i)) / BigInt(i + 1);
  }
  return sum;
}

/**
 * Number of such sets on any layout: Σ_S (−1)^|S| Π_l (2^|K_l \\ S| − 1), S through the subsets of the shorter side's dark lines, l
 * through the longer side's, K_l the keys on l.
 *
 * @returns exact, or null where the shorter side has more than `MOST_COUNTED` dark lines
 * Source: inclusion–exclusion over lines left out.
 */
export function countConsistent(layout: KeyLayout, { rows, columns }: Blocked): bigint | null {
  const [long, short, at] =
    rows.length >= columns.length
      ? [rows, columns, (l: number, s: number): Key => ({ row: l, column: s })]
      : [columns, rows, (l: number, s: number): Key => ({ row: s, column: l })];
  if (short.length > MOST_COUNTED) return null;
  // The keys of each longer line as bits of the shorter side.
  const masks = long.map((l) =>
    short.reduce((mask, s, bit) => (hasKey(layout, at(l, s)) ? mask | (1 << bit) : mask), 0),
  );
  let sum = 0n;
  for (let subset = 0; subset < 2 ** short.length; subset += 1) {
    let product = 1n;
    for (const mask of masks) {
      product *= (1n << BigInt(ones(mask & ~subset))) - 1n;
      if (product === 0n) break;
    }
    sum += ones(subset) % 2 === 0 ? product : -product;
  }
  return sum;
}

function ones(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count += 1;
  return count;
}

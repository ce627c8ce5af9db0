/** Two keys pressed in one scan: which pairs can be mistaken for others. */
import { hasKey, type Key, type KeyLayout, keysOf } from './keys-layout.js';

/**
 * `clear`: the receivers can only mean these two. `weak`: one opposite corner is a key, which may be held as well without showing.
 * `strong`: both opposite corners are keys, and the receivers say the same for either pair.
 */
export type PairKind = 'clear' | 'weak' | 'strong';

/** @returns how sure a pair of keys is when both are pressed in one scan; sharing a line makes it clear */
export function pairKind(layout: KeyLayout, a: Key, b: Key): PairKind {
  if (a.row === b.row || a.column === b.column) return 'clear';
  const corners = [
    { row: a.row, column: b.column },
    { row: b.row, column: a.column },
  ].filter((corner) => hasKey(layout, corner)).length;
  return (['clear', 'weak', 'strong'] as const)[corners]!;
}

export interface PairCounts {
  readonly pairs: number;
  readonly strong: number;
  readonly weak: number;
  readonly clear: number;
}

/**
 * Counts pairs without listing them. For two rows that share b columns of keys, with o and p columns of their own:
 * b (b − 1) strong pairs, b (o + p) weak ones. On a full grid of m × n the strong share of all is (m − 1)(n − 1) / (m n − 1).
 *
 * Source: counting, worked out here; tests hold it to enumeration.
 */
export function countPairs(layout: KeyLayout): PairCounts {
  const keys = keysOf(layout).length;
  const pairs = (keys ** 2 - keys) / 2;
  let [strong, weak] = [0, 0];
  for (const [i, upper] of layout.entries())
    for (const lower of layout.slice(i + 1)) {
      const both = upper.filter((key, column) => key && lower[column]).length;
      const own = upper.filter((key, column) => key !== (lower[column] ?? false)).length;
      strong += both * (both - 1);
      weak += both * own;
    }
  return { pairs, strong, weak, clear: pairs - strong - weak };
}

export interface AmbiguousPair {
  readonly keys: readonly [Key, Key];
  readonly kind: 'weak' | 'strong';
  /** Keys at the opposite corners: what the receivers could mean as well. */
  readonly corners: readonly Key[];
}

/**
 * Lists pairs that can be mistaken, in reading order of their first key.
 *
 * @param most - no more than these; the counts say how many there are in all
 */
export function ambiguousPairs(layout: KeyLayout, most: number): readonly AmbiguousPair[] {
  const found: AmbiguousPair[] = [];
  const keys = keysOf(layout);
  for (const [i, a] of keys.entries())
    for (const b of keys.slice(i + 1)) {
      const kind = pairKind(layout, a, b);
      if (kind === 'clear') continue;
      if (found.length >= most) return found;
      const corners = [
        { row: a.row, column: b.column },
        { row: b.row, column: a.column },
      ].filter((corner) => hasKey(layout, corner));
      found.push({ keys: [a, b], kind, corners });
    }
  return found;
}

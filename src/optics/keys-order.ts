/** What order in time tells: between two scans at most one key goes down or up. */
import { requirePositive } from '../positive.js';
import { type Blocked, blockedBy, inOrder, type Key, type KeyLayout, type KeySet, setName } from './keys-layout.js';

/** What is known after a scan. Two sets or more: the receivers can't tell. */
export interface Step {
  /** Sets that hold now, each once, fewest keys first, then in reading order. */
  readonly now: readonly KeySet[];
  /** Which of the sets possible before led here: a release tells what was held. */
  readonly before: readonly KeySet[];
}

/**
 * Keeps what differs from the last scan by at most one key.
 *
 * From a known set: a new row and a new column mean one key, for certain; a new row alone, one of the active columns.
 * Keys pressed within one scan are beyond this: then nothing is kept, and the scan has to be read afresh with `consistentSets`.
 *
 * @param layout - keys that exist @param last - sets possible at the last scan; `[[]]` for none held @param blocked - dark lines now
 */
export function step(layout: KeyLayout, last: readonly KeySet[], blocked: Blocked): Step {
  const want = linesName(blocked);
  const now = new Map<string, KeySet>();
  const before: KeySet[] = [];
  for (const held of last) {
    const reached = oneKeyAway(layout, held, blocked).filter((keys) => linesName(blockedBy(keys)) === want);
    for (const keys of reached) now.set(setName(keys), keys);
    if (reached.length > 0) before.push(held);
  }
  return { now: [...now.values()].sort(byKeys), before };
}

/** The set itself, each key less, each key more among the dark lines. */
function oneKeyAway(layout: KeyLayout, held: KeySet, { rows, columns }: Blocked): KeySet[] {
  const less = held.map((_, i) => held.filter((_, j) => j !== i));
  const more = rows.flatMap((row) =>
    columns
      .filter((column) => layout[row]?.[column] && !held.some((key) => key.row === row && key.column === column))
      .map((column): KeySet => inOrder([...held, { row, column }])),
  );
  return [inOrder(held), ...less.map(inOrder), ...more];
}

const linesName = ({ rows, columns }: Blocked): string =>
  `${[...rows].sort((a, b) => a - b).join()}|${[...columns].sort((a, b) => a - b).join()}`;

const byKeys = (a: KeySet, b: KeySet): number => a.length - b.length || compareKeys(a, b);

/** First difference in reading order; both as long. */
const compareKeys = (a: KeySet, b: KeySet): number =>
  a.map((key, i) => position(key) - position(b[i]!)).find((apart) => apart !== 0) ?? 0;

const position = ({ row, column }: Key): number => row * 1e6 + column;

/**
 * Chance that two presses at random in a window fall less than a scan apart: 1 − (1 − x)², x = Ts / W; 1 from x = 1 on.
 *
 * @param scan - scan time Ts [s] @param window - W, within which both fall, each anywhere [s]
 * @throws {RangeError} unless both are above zero
 * Source: area of the band |t1 − t2| < Ts in a square of side W.
 */
export function chanceWithin(scan: number, window: number): number {
  const x = share(scan, window);
  return x >= 1 ? 1 : 1 - (1 - x) ** 2;
}

/**
 * Chance that they fall into one scan, the scans running at any phase to the window: x − x² / 3 for x = Ts / W ≤ 1, 1 − 1 / (3 x) beyond.
 * Where scans fill the window exactly it is x, which is never less for x ≤ 1.
 *
 * @throws {RangeError} as above
 * Source: E[max(0, 1 − |t1 − t2| / Ts)], |t1 − t2| having the density 2 (W − d) / W²; worked out here.
 */
export function chanceSameScan(scan: number, window: number): number {
  const x = share(scan, window);
  return x <= 1 ? x - x ** 2 / 3 : 1 - 1 / (3 * x);
}

function share(scan: number, window: number): number {
  requirePositive('chance of one scan', { scan, window });
  return scan / window;
}

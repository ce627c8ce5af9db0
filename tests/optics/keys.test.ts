import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Blocked,
  blockedBy,
  fullLayout,
  type Key,
  type KeyLayout,
  type KeySet,
  keysOf,
  setName,
  without,
} from '../../src/optics/keys-layout.js';
import { chanceSameScan, chanceWithin, step } from '../../src/optics/keys-order.js';
import { ambiguousPairs, countPairs, pairKind } from '../../src/optics/keys-pairs.js';
import { consistentSets, countConsistent, countFull } from '../../src/optics/keys-sets.js';
import { random } from './random.js';

const at = (row: number, column: number): Key => ({ row, column });
const lines = (count: number) => Array.from({ length: count }, (_, i) => i);
const all = (rows: number, columns: number): Blocked => ({ rows: lines(rows), columns: lines(columns) });

/** Every subset of a layout's keys: what the formulas are held to, on small grids. */
function everySet(layout: KeyLayout): KeySet[] {
  const keys = keysOf(layout);
  return Array.from({ length: 2 ** keys.length }, (_, bits) => keys.filter((_, i) => (bits >> i) & 1));
}
const says = (keys: KeySet) => JSON.stringify(blockedBy(keys));

const small = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 4 }))
  .chain(([m, n]) => fc.array(fc.array(fc.boolean(), { minLength: n, maxLength: n }), { minLength: m, maxLength: m }));

describe('pairs pressed in one scan', () => {
  test('full 4 × 10: .692308 of all pairs, (m − 1)(n − 1) / (m n − 1)', () => {
    const { pairs, strong, weak } = countPairs(fullLayout(4, 10));
    expect(pairs).toBe(780);
    expect(strong / pairs).toBeCloseTo(0.692308, 6);
    expect(weak).toBe(0);
  });
  test('3 × 4 without two corners: 45 pairs, 14 strong, 10 weak, 21 clear (worked out by hand)', () => {
    const sparse = without(fullLayout(3, 4), [at(0, 0), at(2, 3)]);
    expect(countPairs(sparse)).toEqual({ pairs: 45, strong: 14, weak: 10, clear: 21 });
  });
  test('a single row, or a single column, is always clear', () => {
    expect(countPairs(fullLayout(1, 9))).toEqual({ pairs: 36, strong: 0, weak: 0, clear: 36 });
    expect(countPairs(fullLayout(9, 1)).clear).toBe(36);
  });

  test('a pair is what brute force says: strong if two other keys say the same, weak if only more keys do', () => {
    fc.assert(
      fc.property(small, (layout) => {
        const sets = everySet(layout);
        const seen = { pairs: 0, strong: 0, weak: 0, clear: 0 };
        for (const pair of sets.filter((set) => set.length === 2)) {
          const others = sets.filter((set) => says(set) === says(pair) && setName(set) !== setName(pair));
          const kind = others.some((set) => set.length === 2) ? 'strong' : others.length > 0 ? 'weak' : 'clear';
          seen.pairs += 1;
          seen[kind] += 1;
          expect(pairKind(layout, pair[0]!, pair[1]!)).toBe(kind);
        }
        expect(countPairs(layout)).toEqual(seen);
        const listed = ambiguousPairs(layout, 1000);
        expect(listed.filter(({ kind }) => kind === 'strong')).toHaveLength(seen.strong);
        expect(listed.filter(({ kind }) => kind === 'weak')).toHaveLength(seen.weak);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  test('lists no more than asked, with the corners that could be meant', () => {
    const sparse = without(fullLayout(2, 2), [at(0, 1)]);
    expect(ambiguousPairs(sparse, 9)).toEqual([{ keys: [at(0, 0), at(1, 1)], kind: 'weak', corners: [at(1, 0)] }]);
    expect(ambiguousPairs(fullLayout(6, 6), 4)).toHaveLength(4);
  });
});

describe('sets that a scan can mean', () => {
  test.for([
    { r: 1, c: 7, want: 1n, from: 'by hand: one row, every column' },
    { r: 2, c: 2, want: 7n, from: 'worked out: (2² − 1)² − 2' },
    { r: 2, c: 3, want: 25n, from: 'worked out: 3³ − 2' },
    { r: 3, c: 3, want: 265n, from: 'published: OEIS A048291, 0–1 matrices without empty line' },
    { r: 4, c: 4, want: 41503n, from: 'published: OEIS A048291, from memory' },
    { r: 5, c: 5, want: 24997921n, from: 'published: OEIS A048291, from memory' },
    { r: 0, c: 0, want: 1n, from: 'nothing dark: nothing held' },
    { r: 2, c: 0, want: 0n, from: 'a row without a column is no key' },
  ])('$r rows × $c columns: $want; $from', ({ r, c, want }) => {
    expect(countFull(r, c)).toBe(want);
    expect(countFull(c, r)).toBe(want);
    expect(countConsistent(fullLayout(6, 8), all(r, c))).toBe(want);
  });

  test('enumeration, the sparse count and brute force agree', () => {
    fc.assert(
      fc.property(small, fc.nat(), (layout, pick) => {
        const sets = everySet(layout);
        const blocked = blockedBy(sets[pick % sets.length]!);
        const want = sets.filter((set) => says(set) === JSON.stringify(blocked)).map(setName);
        const { sets: found, complete } = consistentSets(layout, blocked, 5000);
        expect(complete).toBe(true);
        expect(found.map(setName).sort()).toEqual(want.sort());
        expect(countConsistent(layout, blocked)).toBe(BigInt(want.length));
      }),
      { numRuns: 80, seed: 5 },
    );
  });

  test('the limit cuts the list and says so; as many as there are do not', () => {
    const layout = fullLayout(3, 3);
    expect(consistentSets(layout, all(3, 3), 264)).toMatchObject({ complete: false });
    const whole = consistentSets(layout, all(3, 3), 265);
    expect(whole.complete).toBe(true);
    expect(new Set(whole.sets.map(setName)).size).toBe(265);
  });
  test('a large grid is listed up to the limit without going through the rest', () => {
    const { sets, complete } = consistentSets(fullLayout(64, 64), all(40, 40), 20);
    expect(complete).toBe(false);
    expect(sets).toHaveLength(20);
    for (const set of sets) expect(blockedBy(set)).toEqual(all(40, 40));
    expect(countFull(40, 40)).toBeGreaterThan(2n ** 1500n);
    expect(countConsistent(fullLayout(64, 64), all(40, 40))).toBeNull();
  });
  test('lines that no key explains give no set', () => {
    const sparse = without(fullLayout(2, 3), [at(1, 0), at(1, 1), at(1, 2)]);
    expect(consistentSets(sparse, { rows: [1], columns: [0] }, 9)).toEqual({ sets: [], complete: true });
    expect(consistentSets(sparse, { rows: [0], columns: [] }, 9).sets).toEqual([]);
    expect(consistentSets(sparse, { rows: [], columns: [] }, 9).sets).toEqual([[]]);
    expect(countConsistent(sparse, { rows: [0, 1], columns: [0] })).toBe(0n);
  });
  test('k presses on k rows and k columns alone: k! of the sets', () => {
    for (const [k, want] of [
      [2, 2],
      [3, 6],
      [4, 24],
    ] as const) {
      const { sets } = consistentSets(fullLayout(k, k), all(k, k), 50_000);
      expect(sets.filter((set) => set.length === k)).toHaveLength(want);
    }
  });
  test('refuses nonsense', () => {
    expect(() => consistentSets(fullLayout(2, 2), all(2, 2), 0)).toThrow('most');
    expect(() => countFull(-1, 2)).toThrow('whole');
    expect(() => fullLayout(0, 3)).toThrow('whole');
  });
});

describe('order in time', () => {
  const layout = fullLayout(3, 4);
  const scan = (...keys: Key[]) => blockedBy(keys);

  test('a new row and a new column: one key, for certain', () => {
    expect(step(layout, [[at(0, 0)]], scan(at(0, 0), at(2, 3))).now).toEqual([[at(0, 0), at(2, 3)]]);
  });
  test('a new row alone: one of the active columns', () => {
    const { now } = step(layout, [[at(0, 0), at(0, 2)]], { rows: [0, 1], columns: [0, 2] });
    expect(now).toEqual([
      [at(0, 0), at(0, 2), at(1, 0)],
      [at(0, 0), at(0, 2), at(1, 2)],
    ]);
  });
  test('sets stand in order, whatever the order of those before: fewest keys, then rows, then columns', () => {
    const last = [
      [at(1, 0), at(0, 1)],
      [at(0, 0), at(1, 1)],
    ];
    const { now, before } = step(layout, last, { rows: [0, 1], columns: [0, 1] });
    expect(before).toEqual(last);
    expect(now).toEqual([
      [at(0, 0), at(1, 1)],
      [at(0, 1), at(1, 0)],
      [at(0, 0), at(0, 1), at(1, 0)],
      [at(0, 0), at(0, 1), at(1, 1)],
      [at(0, 0), at(1, 0), at(1, 1)],
      [at(0, 1), at(1, 0), at(1, 1)],
    ]);
  });
  test('no change of the lines: nothing, or a key hidden among them', () => {
    const { now } = step(layout, [[at(0, 0), at(1, 1)]], scan(at(0, 0), at(1, 1)));
    expect(now).toEqual([
      [at(0, 0), at(1, 1)],
      [at(0, 0), at(0, 1), at(1, 1)],
      [at(0, 0), at(1, 0), at(1, 1)],
    ]);
  });
  test('a release tells which pair was held, though both were pressed in one scan', () => {
    const both = consistentSets(layout, { rows: [0, 2], columns: [1, 3] }, 100).sets;
    expect(both).toHaveLength(7);
    const { before, now } = step(layout, both, { rows: [2], columns: [1] });
    expect(now).toEqual([[at(2, 1)]]);
    expect(before).toEqual([[at(0, 3), at(2, 1)]]);
  });
  test('two keys within one scan are beyond it: nothing is kept', () => {
    expect(step(layout, [[]], scan(at(0, 0), at(1, 1)))).toEqual({ now: [], before: [] });
  });
  test('everything let go', () => expect(step(layout, [[at(1, 2)]], scan()).now).toEqual([[]]));

  test('it keeps exactly what brute force finds one key away', () => {
    fc.assert(
      fc.property(small, fc.nat(), fc.nat(), (grid, a, b) => {
        const sets = everySet(grid);
        const last = [sets[a % sets.length]!, sets[(7 * a + 3) % sets.length]!];
        const blocked = blockedBy(sets[b % sets.length]!);
        const away = (one: KeySet, two: KeySet) => {
          const [x, y] = [new Set(one.map((k) => setName([k]))), new Set(two.map((k) => setName([k])))];
          return [...x].filter((k) => !y.has(k)).length + [...y].filter((k) => !x.has(k)).length;
        };
        const want = sets.filter(
          (set) => says(set) === JSON.stringify(blocked) && last.some((held) => away(held, set) <= 1),
        );
        expect(step(grid, last, blocked).now.map(setName).sort()).toEqual(want.map(setName).sort());
      }),
      { numRuns: 120, seed: 7 },
    );
  });

  test('typed one at a time, what is held is always among what is kept', () => {
    const next = random(17);
    const held: Key[] = [];
    let kept: readonly KeySet[] = [[]];
    for (let i = 0; i < 300; i += 1) {
      const key = at(Math.floor(next() * 3), Math.floor(next() * 4));
      const there = held.findIndex((k) => setName([k]) === setName([key]));
      if (there >= 0) held.splice(there, 1);
      else if (held.length < 4) held.push(key);
      kept = step(layout, kept, blockedBy(held)).now;
      expect(kept.map(setName)).toContain(setName(held));
      if (held.length <= 1) expect(kept).toHaveLength(1);
    }
  });
});

describe('chance of one scan', () => {
  test('30 ms window, 2 ms scan: .12888889 less than a scan apart', () => {
    expect(chanceWithin(2e-3, 30e-3)).toBeCloseTo(0.12888889, 8);
    expect(chanceWithin(30e-3, 30e-3)).toBe(1);
    expect(chanceWithin(31e-3, 30e-3)).toBe(1);
  });
  test('in one scan: x = .0667 where scans fill the window, x − x²/3 at any phase', () => {
    expect(chanceSameScan(2e-3, 30e-3)).toBeCloseTo(1 / 15 - 1 / 675, 12);
    expect(chanceSameScan(2e-3, 30e-3)).toBeLessThan(1 / 15);
  });
  test.for([
    { scan: 2, window: 30, seed: 1 },
    { scan: 11, window: 30, seed: 2 },
    { scan: 50, window: 30, seed: 3 },
  ])('200 000 pairs drawn at random: scan $scan, window $window', ({ scan, window, seed }) => {
    const next = random(seed);
    let [near, same, filled] = [0, 0, 0];
    const draws = 200_000;
    for (let i = 0; i < draws; i += 1) {
      const [a, b, phase] = [next() * window, next() * window, next() * scan];
      if (Math.abs(a - b) < scan) near += 1;
      if (Math.floor((a + phase) / scan) === Math.floor((b + phase) / scan)) same += 1;
      if (Math.floor(a / scan) === Math.floor(b / scan)) filled += 1;
    }
    // Four standard deviations of a binomial share.
    const within = (share: number) => 4 * Math.sqrt((share * (1 - share)) / draws) + 1e-9;
    const [wantNear, wantSame] = [chanceWithin(scan, window), chanceSameScan(scan, window)];
    expect(Math.abs(near / draws - wantNear)).toBeLessThanOrEqual(within(wantNear));
    expect(Math.abs(same / draws - wantSame)).toBeLessThanOrEqual(within(wantSame));
    if (scan === 2) expect(Math.abs(filled / draws - 1 / 15)).toBeLessThanOrEqual(within(1 / 15));
  });
  test('continuous where the scan is as long as the window, and refuses nothing at all', () => {
    expect(chanceSameScan(1, 1)).toBeCloseTo(2 / 3, 12);
    expect(chanceSameScan(1 + 1e-9, 1)).toBeCloseTo(2 / 3, 8);
    expect(() => chanceWithin(0, 1)).toThrow('scan');
    expect(() => chanceSameScan(1, 0)).toThrow('window');
  });
});

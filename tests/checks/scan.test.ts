import { expect, test } from 'vitest';
import { scan } from '../../src/checks/scan.js';
import type { Spec } from '../../src/spec/spec.js';
import { spec } from './sound-figures.js';

const having = (
  change: Partial<Spec['scan']>,
  cells: { rows: number; columns: number } = { rows: 2, columns: 3 },
): Spec => ({
  ...spec,
  grid: {
    rows: new Array<number>(cells.rows).fill(22),
    columns: new Array<number>(cells.columns).fill(22),
    labels: null,
  },
  scan: { ...spec.scan, ...change },
});
const ask = (of: Spec) => scan.run({ spec: of });

test('two rows of three, by hand: (m − 1)(n − 1)/(m n − 1) = 2/5 of all pairs, in one scan 1 time in 300', () => {
  // By hand: 3 addresses of 11 µs and 5 readings of 12: 93 µs; x − x²/3 for x = .093/30 is .3097 %.
  const [found, ...more] = ask(having({}));
  expect(more).toEqual([]);
  expect(found).toMatchObject({ code: 'scan/together', severity: 'note' });
  expect(found!.measured).toBeCloseTo(40, 9);
  expect(found!.message).toMatch(/one scan of 0\.093 ms.*0\.31 % of the time/s);
});

test('a single row has no such pair', () => expect(ask(having({}, { rows: 1, columns: 8 }))).toEqual([]));

test('a scan lit line by line with many repeats is too slow', () => {
  // By hand: 18 lines one at a time, 1 + 10 + 12 + 977 = 1000 µs each: 18 ms a scan. The first line is sampled at .988 ms.
  // Debounce 5: 6 · 18 − .988 = 107.012 ms at the latest; one scan less is 89.
  const slow = { address: 'single', lightUs: 977 } as const;
  const size = { rows: 6, columns: 12 };
  const found = ask(having({ ...slow, debounce: 5 }, size)).find(({ code }) => code === 'scan/latency');
  expect(found).toMatchObject({ severity: 'warning', limit: 100, unit: 'ms' });
  expect(found!.measured).toBeCloseTo(107.012, 9);
  expect(found!.remedies).toContain('scan.debounce');
  expect(ask(having({ ...slow, debounce: 4 }, size)).map(({ code }) => code)).toEqual(['scan/together']);
});

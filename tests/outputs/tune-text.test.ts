import { describe, expect, test } from 'vitest';
import { type Column, tableText } from '../../src/outputs/columns.js';
import { tuneText } from '../../src/outputs/tune-text.js';
import { sampleSweep } from './tune-sample.js';

const report = sampleSweep();
const longest = (text: string) => Math.max(...text.split('\n').map((line) => line.length));

describe('the account of a sweep', () => {
  test.for([80, 100, 120, 200])('fits into %i columns', (width) => {
    expect(longest(tuneText(report, { width, all: true }))).toBeLessThanOrEqual(width);
  });

  test('has a line for every design, and a meaning for every letter', () => {
    const text = tuneText(report, { width: 120, all: true });
    for (const { point } of report.rows) expect(text).toMatch(new RegExp(`^ *${point.number}[>* ]?=? +\\S`, 'm'));
    for (const letter of ['S', 'l']) expect(text).toMatch(new RegExp(`^  ${letter}  \\S`, 'm'));
    expect(text).toContain('Taken:');
    expect(text).toContain('unbeaten: no other');
  });

  test('a long one shows the best, says how many it leaves out, and why the rest fails', () => {
    const large = sampleSweep('', [
      { path: 'leaf.legs', text: '1,2,3' },
      { path: 'leaf.length', text: '4..12/0.5' },
    ]);
    const short = tuneText(large, { width: 100, all: false });
    const rows = short.match(/^ *\d+[>* ]?=? +(?:in-line|fold|[fi]\d? )/gm)!;
    expect(rows.length).toBeLessThan(large.rows.length);
    expect(short.replaceAll('\n', ' ')).toContain(`${large.rows.length - rows.length} designs more in tune.csv`);
    expect(short).toMatch(/fail: strain \d+/);
    expect(tuneText(large, { width: 100, all: true })).not.toContain('more in tune.csv');
  });

  test('when nothing passes: the nearest, what it misses by how much, and what would help', () => {
    const none = sampleSweep('aim: { tilt: 9 }\n', [{ path: 'leaf.length', text: '9,10' }]);
    const text = tuneText(none, { width: 100, all: false }).replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/Nothing passes\. Nearest comes \d, .*strain [\d.]+ %, limit 0\.7 %, off by \d+ %/);
    expect(text).toMatch(/With aim\.tilt [\d.]+ its strain for years would hold/);
  });
});

describe('tableText', () => {
  const columns: readonly Column<readonly [string, string]>[] = [
    { head: ['a'], cell: ([a]) => a, left: true },
    { head: ['two', 'b'], cell: ([, b]) => b, short: ([, b]) => b.slice(0, 2) },
    { head: ['long'], cell: () => 'xxxxxxxx', rank: 1 },
  ];
  const rows = [
    ['one', '12.5'],
    ['three', '7'],
  ] as const;

  // By hand.
  test.for([
    {
      width: 40,
      want: ['        two', 'a         b      long', 'one    12.5  xxxxxxxx', 'three     7  xxxxxxxx'],
      dropped: [],
    },
    {
      width: 20,
      want: ['       two', 'a        b     long', 'one   12.5 xxxxxxxx', 'three    7 xxxxxxxx'],
      dropped: [],
    },
    { width: 12, want: ['        two', 'a         b', 'one    12.5', 'three     7'], dropped: ['long'] },
    { width: 3, want: ['      two', 'a       b', 'one    12', 'three   7'], dropped: ['long'] },
  ])('in $width columns', ({ width, want, dropped }) => {
    const table = tableText(rows, columns, width);
    expect(table.text.split('\n')).toEqual(want);
    expect(table.dropped).toEqual(dropped);
  });
});

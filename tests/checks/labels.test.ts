import { expect, test } from 'vitest';
import { labels } from '../../src/checks/labels.js';
import type { Kit } from '../../src/kit/types.js';
import { spec } from './sound-figures.js';

const ask = (rows: readonly (readonly string[])[] | null) =>
  labels.run({ kit: { legends: [] } as unknown as Kit, spec: { ...spec, grid: { ...spec.grid, labels: rows } } });

test('two keys of one label are a note that says where', () => {
  const found = ask([
    ['UP', 'DOWN', ''],
    ['LEFT', 'UP ', ''],
  ]);
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ code: 'label/twice', severity: 'note', measured: 2 });
  expect(found[0]!.message).toContain('column 0 row 0, column 1 row 1');
});

test('blank keys and no labels at all are nothing to tell', () => {
  expect(ask([['', '', 'A']])).toEqual([]);
  expect(ask(null)).toEqual([]);
});

const askSet = (labelSets: readonly { name: string; labels: readonly (readonly string[])[] }[]) =>
  labels.run({
    kit: { legends: [] } as unknown as Kit,
    spec: { ...spec, grid: { columns: [22, 11], rows: [20], labels: [['UP', 'UP2']], labelSets } },
  });

test('two keys of one label in a further set: a note that names the set; the same label in two sets is none', () => {
  const found = askSet([
    { name: 'winter', labels: [['go', 'go']] },
    { name: 'dress', labels: [['UP', 'go']] },
  ]);
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ code: 'label/twice', severity: 'note', subject: 'label go in set winter' });
});

test('a printed label longer than its key: 7 letters fit 11 mm at 1.2 mm, 8 don’t', () => {
  // By hand: (11 − 3) / (.95 · 7) = 1.203; (11 − 3) / (.95 · 8) = 1.053.
  expect(askSet([{ name: 'winter', labels: [['', '1234567']] }])).toEqual([]);
  const found = askSet([{ name: 'winter', labels: [['12345678', '12345678']] }]);
  expect(found.map(({ code, severity }) => [code, severity])).toEqual([
    ['label/too-long', 'warning'],
    ['label/twice', 'note'],
  ]);
  expect(found[0]!.measured).toBeCloseTo(1.053, 3);
  expect(found[0]!.message).toContain('label set winter, row 0 and column 1');
});

test('letters that a PDF’s own faces lack are told, letters of Latin-1 are not', () => {
  expect(askSet([{ name: 'winter', labels: [['größer', '']] }])).toEqual([]);
  const found = askSet([{ name: 'winter', labels: [['Ω', '']] }]);
  expect(found.map(({ code }) => code)).toEqual(['label/not-in-pdf']);
  expect(found[0]!.message).toContain('sheets/winter/legend.svg');
});

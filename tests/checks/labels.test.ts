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

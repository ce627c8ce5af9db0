import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { presetJsonSchema } from '../../src/spec/json-schema.js';
import { readPreset } from '../../src/spec/read-preset.js';

const FOLDER = new URL('../../presets/', import.meta.url);
const files = readdirSync(FOLDER).filter((file) => file.endsWith('.yaml'));
const textOf = (file: string) => readFileSync(new URL(file, FOLDER), 'utf8');
const specOf = (name: string) => readPreset(textOf(`${name}.yaml`), `presets/${name}.yaml`);
const total = (cells: readonly number[]) => cells.reduce((sum, cell) => sum + cell, 0);

test('five presets are shipped, and each reads', () => {
  expect(files.sort()).toEqual([
    'foyer-row.yaml',
    'glaze-selector.yaml',
    'greenhouse-bench.yaml',
    'seed-library.yaml',
    'tight-cue-strip.yaml',
  ]);
  for (const file of files) expect(readPreset(textOf(file), file).grid.labels, file).not.toBeNull();
});

test('each shows what it is there for', () => {
  const plain = specOf('greenhouse-bench').grid;
  expect([plain.rows, plain.columns]).toEqual([new Array(4).fill(22), new Array(6).fill(22)]);

  const unequal = specOf('glaze-selector');
  expect(new Set(unequal.grid.columns).size).toBeGreaterThan(1);
  expect(total(unequal.grid.columns)).toBeGreaterThan(unequal.printer.machine.bedX.value);

  const tight = specOf('tight-cue-strip');
  expect(tight.emitters.part.diameter.value).toBe(6);
  expect(Math.max(...tight.grid.columns)).toBeLessThan(15);

  expect(specOf('foyer-row').grid.rows).toHaveLength(1);

  const large = specOf('seed-library');
  expect([large.grid.rows.length, large.grid.columns.length, large.printer.name]).toEqual([12, 24, 'bed-300']);
});

test('they differ in printer and plastic', () => {
  const specs = files.map((file) => readPreset(textOf(file), file));
  expect(new Set(specs.map(({ printer }) => printer.name)).size).toBeGreaterThanOrEqual(4);
  expect(new Set(specs.map(({ material }) => material.name)).size).toBeGreaterThanOrEqual(2);
});

test('the schema file beside them is the one of the program (vitest -u writes it anew)', async () => {
  await expect(`${JSON.stringify(presetJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    '../../presets/preset.schema.json',
  );
});

test('each names the schema file for editors, and passes it', () => {
  // By the schema file alone, read back from JSON: what an editor sees.
  const schema = z.fromJSONSchema(JSON.parse(textOf('preset.schema.json')));
  for (const file of files) {
    const text = textOf(file);
    expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=preset.schema.json');
    expect(schema.safeParse(parse(text)).error, file).toBeUndefined();
  }
  expect(schema.safeParse({ grid: { rows: 0, columns: 3, pitch: 22 } }).success).toBe(false);
  expect(schema.safeParse({ grid: { rows: 2, columns: 3, pitch: 22 }, materal: 'petg' }).success).toBe(false);
});

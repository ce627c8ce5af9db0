import { describe, expect, test } from 'vitest';
import { tuneCsv } from '../../src/outputs/tune-csv.js';
import { tuneJson } from '../../src/outputs/tune-json.js';
import { FAULTS, REMARKS } from '../../src/tune/types.js';
import { sampleSweep } from './tune-sample.js';

const report = sampleSweep();
const text = new TextDecoder().decode(tuneCsv(report).bytes);
/** By RFC 4180; no cell here holds a break. */
const lines = text
  .split('\r\n')
  .slice(0, -1)
  .map((line) =>
    [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map((m) => m[1]?.replaceAll('""', '"') ?? m[2]!),
  );
const [header, ...rows] = lines;
const column = (name: string) => rows.map((row) => row[header!.indexOf(name)]!);

test('the sample has all three kinds of design', () => {
  const all = report.rows.map(({ faults }) => faults.map(({ code }) => code).join());
  expect(all).toContain('');
  expect(all.some((codes) => codes.includes('strain'))).toBe(true);
  expect(report.best).toBeDefined();
});

describe('tune.csv', () => {
  test('one line a design, as many cells as the header, CR LF at every end', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(rows).toHaveLength(report.rows.length);
    for (const row of rows) expect(row).toHaveLength(header!.length);
    expect(new Set(header).size).toBe(header!.length);
  });

  test('holds what was asked for, and numbers in every row that can be bent', () => {
    expect(column('length_mm').slice(0, 2)).toEqual(['6', '9']);
    for (const name of [
      'tilt_held_deg',
      'force_highest_n',
      'force_lowest_n',
      'screw_stiffness_n_per_mm',
      'strain_pct',
      'safety',
      'preload_left_n',
      'deg_per_turn',
      'mm_per_turn',
      'thinner_005_stiffness_pct',
      'thicker_005_strain_pct',
      'mount_length_mm',
    ]) {
      column(name).forEach((cell, i) => {
        if (report.rows[i]!.figures) expect(cell, `${name} of row ${i + 1}`).toMatch(/^-?\d+(\.\d+)?$/);
        else expect(cell).toBe('');
      });
    }
  });

  test('what passes has no fault, what fails has one', () => {
    for (const [i, cell] of column('passes').entries()) expect(cell === 'yes').toBe(column('fails')[i] === '');
    expect(column('passes')).toContain('yes');
    expect(column('passes')).toContain('no');
  });
});

describe('tune.json', () => {
  const data = JSON.parse(new TextDecoder().decode(tuneJson(report).bytes));

  test('says the same as the table', () => {
    expect(data.format).toBe('beamloom-tune/1');
    expect(data.designs.map((d: { mm_per_turn: number | null }) => String(d.mm_per_turn ?? ''))).toEqual(
      column('mm_per_turn'),
    );
    expect(data.unbeaten).toEqual(column('unbeaten').flatMap((cell, i) => (cell === 'yes' ? [i + 1] : [])));
    expect(data.best).toBe(report.best!.point.number);
  });

  test('explains every code that it uses, and the objectives', () => {
    for (const { fails, remarks } of data.designs) {
      for (const code of fails.split(' ').filter(Boolean))
        expect(data.meanings.fails[code]).toBe(FAULTS[code as keyof typeof FAULTS].what);
      for (const code of remarks.split(' ').filter(Boolean))
        expect(data.meanings.remarks[code]).toBe(REMARKS[code as keyof typeof REMARKS].what);
    }
    expect(data.objectives.map(({ name }: { name: string }) => name)).toEqual(
      expect.arrayContaining(['strain margin', 'mount length']),
    );
  });

  test('the same sweep gives the same bytes', () => {
    const again = sampleSweep();
    expect(tuneJson(again).bytes).toEqual(tuneJson(report).bytes);
    expect(tuneCsv(again).bytes).toEqual(tuneCsv(report).bytes);
  });
});

test('letters of the table are all different', () => {
  const letters = [...Object.values(FAULTS), ...Object.values(REMARKS)].map(({ letter }) => letter);
  expect(new Set(letters).size).toBe(letters.length);
});

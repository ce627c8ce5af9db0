import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readPreset } from '../../src/spec/read-preset.js';
import { type NewPreset, writePreset } from '../../src/spec/write-preset.js';

const few: NewPreset = { title: 'Potting shed: "north"', rows: 3, columns: [30, 22, 22], pitch: { x: 22, y: 20 } };

test('a new preset reads as what was asked for', () => {
  const spec = readPreset(
    writePreset({ ...few, material: 'asa', printer: 'bed-180', schema: 'preset.schema.json' }),
    'potting-shed.yaml',
  );
  expect(spec.title).toBe('Potting shed: "north"');
  expect([spec.grid.rows, spec.grid.columns]).toEqual([
    [20, 20, 20],
    [30, 22, 22],
  ]);
  expect([spec.material.name, spec.printer.name]).toEqual(['asa', 'bed-180']);
});

test('a key in a comment stands at its default: taking every # away changes nothing but what is told as chosen', () => {
  for (const preset of [few, { ...few, emitter: 'barrel-8x13', receiver: 'side-looker' }]) {
    const text = writePreset(preset);
    const opened = text.replaceAll(/^#(?=[a-z]| {2}[a-z_]+: )/gm, '');
    expect(opened).not.toBe(text);
    const [before, after] = [readPreset(text, 'a.yaml'), readPreset(opened, 'a.yaml')];
    expect({ ...after, chosen: [] }).toEqual({ ...before, chosen: [] });
    expect(after.chosen.map(({ path }) => path)).toEqual([
      'grid.labels',
      // Solved, with no default to write down.
      'receivers.part.aperture_diameter',
      'receivers.part.aperture_depth',
    ]);
  }
});

test('any title that is allowed comes back as it was', () => {
  const printable = fc.string({
    unit: fc.constantFrom(...'aZ09 #:-"\'\\{}[]|>&*!%@`,?~üß…'),
    minLength: 1,
    maxLength: 40,
  });
  fc.assert(
    fc.property(printable, (text) => {
      fc.pre(text.trim() !== '');
      expect(readPreset(writePreset({ ...few, title: text }), 'a.yaml').title).toBe(text.trim());
    }),
    { numRuns: 200 },
  );
});

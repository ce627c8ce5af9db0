import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { readPreset } from '../../src/spec/read-preset.js';

/** Reads a spec or throws a PresetError with placed, coded mistakes: nothing else may happen. */
function holds(text: string, file = 'a.yaml') {
  try {
    expect(readPreset(text, file).grid.rows.length).toBeGreaterThan(0);
  } catch (error) {
    if (!(error instanceof PresetError)) throw error;
    expect(error.mistakes.length).toBeGreaterThan(0);
    for (const { code, message, line, column } of error.mistakes) {
      expect(code).toMatch(/^preset\/[a-z-]+$/);
      expect(message).not.toBe('');
      if (code !== 'preset/name') expect(Math.min(line!, column!)).toBeGreaterThan(0);
    }
  }
}

/** Words of the language and of presets, so that random text gets past the first character. */
const word = fc.constantFrom(
  ...[
    'grid',
    'rows',
    'columns',
    'pitch',
    'labels',
    'x',
    'y',
    'beam',
    'height',
    'emitters',
    'part',
    'base',
    'barrel-6x12',
    'material',
  ],
  ...[
    'petg',
    'printer',
    'bed-220',
    'bed_x',
    'screws',
    'fix',
    'M3',
    'leaf',
    'legs',
    '__proto__',
    'constructor',
    'toString',
    '<<',
    '22',
    '3',
  ],
  ...[
    '1e9',
    '.nan',
    '-.inf',
    '~',
    'null',
    '0x1F',
    ': ',
    ':',
    '- ',
    ', ',
    '{ ',
    ' }',
    '[',
    ']',
    '\n',
    '\n  ',
    '\n    ',
    '\t',
    '&a ',
    '*a',
    '!!set ',
  ],
  ...[
    '!!binary ',
    '? ',
    '"',
    "'",
    '|\n',
    '>\n',
    '#',
    '%YAML 1.1\n',
    '---\n',
    '...\n',
    '\r',
    '\u0000',
    '\ud800',
    '\ufeff',
    '…',
  ],
);

test('text of any characters', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => holds(text)),
    { numRuns: 500 },
  );
});

test('text of YAML and preset words', () => {
  fc.assert(
    fc.property(fc.array(word, { maxLength: 60 }), (words) => holds(words.join(''))),
    { numRuns: 1500 },
  );
});

test('a sound preset with one stretch replaced', () => {
  const sound =
    'title: T\ngrid:\n  rows: 2\n  columns: [22, 30]\n  pitch: { x: 22, y: 20 }\n  labels:\n    - [a, b]\n    - [c, d]\nprinter: { base: bed-220, snug: 0.2 }\n';
  fc.assert(
    fc.property(fc.nat(sound.length), fc.nat(12), fc.array(word, { maxLength: 4 }), (at, length, words) =>
      holds(sound.slice(0, at) + words.join('') + sound.slice(at + length)),
    ),
    { numRuns: 1500 },
  );
});

test('any data at the place of any key', () => {
  const keys = [
    'title',
    'grid',
    'beam',
    'emitters',
    'receivers',
    'aim',
    'leaf',
    'material',
    'printer',
    'screws',
    'frame',
  ];
  const sound = { grid: { rows: 2, columns: 3, pitch: 22 } };
  fc.assert(
    fc.property(fc.constantFrom(...keys), fc.json({ maxDepth: 3 }), (key, value) =>
      // JSON is YAML 1.2: a number such as 1e400 or a key such as __proto__ has to be met here too.
      holds(JSON.stringify(sound).replace(/\}$/, `,${JSON.stringify(key)}:${value}}`)),
    ),
    { numRuns: 500 },
  );
});

test('any file name', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (file) => {
      holds('grid: { rows: 2, columns: 3, pitch: 22 }', file);
      try {
        // By the rule of the kit's folder: nothing that could leave `out/`.
        expect(readPreset('grid: { rows: 2, columns: 3, pitch: 22 }', file).name).toMatch(/^[a-z0-9-]{1,64}$/);
      } catch (error) {
        if (!(error instanceof PresetError)) throw error;
      }
    }),
    { numRuns: 300 },
  );
});

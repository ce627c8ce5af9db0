import { expect, test } from 'vitest';
import { type Mistake, PresetError } from '../../src/errors.js';
import { readPreset } from '../../src/spec/read-preset.js';

function mistakesOf(text: string, file = 'a.yaml'): readonly Mistake[] {
  try {
    readPreset(text, file);
  } catch (error) {
    if (error instanceof PresetError) return error.mistakes;
    throw error;
  }
  return [];
}

const GRID = 'grid: { rows: 2, columns: 3, pitch: 22 }\n';

/** Lines and columns are counted by hand in the text beside them. */
test.for([
  {
    what: 'unknown key',
    text: `${GRID}materal: petg`,
    want: ['preset/unknown-key', 'materal', 2, 1],
    says: /material/,
  },
  {
    what: 'unknown key inside',
    text: `${GRID}frame: { walls: 3 }`,
    want: ['preset/unknown-key', 'frame.walls', 2, 10],
    says: /wall/,
  },
  {
    what: 'key in the wrong place',
    text: `${GRID}rows_from: left`,
    want: ['preset/unknown-key', 'rows_from', 2, 1],
    says: /emitters\.rows_from/,
  },
  {
    what: 'unknown figure',
    text: `${GRID}printer: { base: bed-220, bed_xx: 200 }`,
    want: ['preset/unknown-key', 'printer.bed_xx', 2, 27],
    says: /bed_x/,
  },
  {
    what: 'figure spelled as in the program',
    text: `${GRID}printer: { base: bed-220, lineWidth: 0.5 }`,
    want: ['preset/unknown-key', 'printer.lineWidth', 2, 27],
    says: /line_width/,
  },
  {
    what: 'key that belongs to every object',
    text: `${GRID}__proto__: 1`,
    want: ['preset/unknown-key', '__proto__', 2, 1],
    says: /known here/,
  },
  { what: 'missing grid', text: 'title: T', want: ['preset/missing', 'grid', 1, 1], says: /rows, columns, pitch/ },
  { what: 'empty file', text: '', want: ['preset/missing', 'grid', 1, 1], says: /rows, columns, pitch/ },
  {
    what: 'missing pitch',
    text: 'title: T\ngrid: { rows: 2, columns: 3 }',
    want: ['preset/missing', 'grid.pitch', 2, 1],
    says: /8 to 100 mm/,
  },
  {
    what: 'missing pitch of one axis',
    text: 'grid: { rows: 2, columns: 3, pitch: { x: 22 } }',
    want: ['preset/missing', 'grid.pitch.y', 1, 30],
    says: /rows/,
  },
  {
    what: 'text for a number',
    text: 'grid: { rows: two, columns: 3, pitch: 22 }',
    want: ['preset/wrong-type', 'grid.rows', 1, 15],
    says: /"two".*1 to 64/,
  },
  {
    what: 'unit behind a number',
    text: 'grid: { rows: 2, columns: 3, pitch: 22mm }',
    want: ['preset/wrong-type', 'grid.pitch', 1, 37],
    says: /bare/,
  },
  {
    what: 'a lean below none',
    text: `${GRID}aim: { wedge: -1 }`,
    want: ['preset/too-small', 'aim.wedge', 2, 15],
    says: /-1.*0 to 4/,
  },
  {
    what: 'a lean beyond 4°',
    text: `${GRID}aim: { wedge: 4.1 }`,
    want: ['preset/too-large', 'aim.wedge', 2, 15],
    says: /4\.1.*0 to 4/,
  },
  {
    what: 'text for a lean',
    text: `${GRID}aim: { wedge: some }`,
    want: ['preset/wrong-type', 'aim.wedge', 2, 15],
    says: /"some".*0 to 4/,
  },
  {
    what: 'number for a mapping',
    text: `${GRID}beam: 5`,
    want: ['preset/wrong-type', 'beam', 2, 7],
    says: /mapping with height/,
  },
  { what: 'list for a mapping', text: '- grid', want: ['preset/wrong-type', '', 1, 1], says: /list of 1/ },
  {
    what: 'nothing in a list',
    text: 'grid: { rows: [22, ~], columns: 3, pitch: 22 }',
    want: ['preset/wrong-type', 'grid.rows.1', 1, 20],
    says: /nothing/,
  },
  {
    what: 'half a row',
    text: 'grid: { rows: 2.5, columns: 3, pitch: 22 }',
    want: ['preset/wrong-type', 'grid.rows', 1, 15],
    says: /whole number/,
  },
  {
    what: 'no rows',
    text: 'grid: { rows: 0, columns: 3, pitch: 22 }',
    want: ['preset/too-small', 'grid.rows', 1, 15],
    says: /found 0.*least allowed, 1/,
  },
  {
    what: 'an empty list',
    text: 'grid: { rows: [], columns: 3, pitch: 22 }',
    want: ['preset/too-short', 'grid.rows', 1, 15],
    says: /1 to 64/,
  },
  {
    what: 'negative',
    text: 'grid: { rows: 2, columns: -3, pitch: 22 }',
    want: ['preset/too-small', 'grid.columns', 1, 27],
    says: /found -3/,
  },
  {
    what: 'a billion rows',
    text: 'grid: { rows: 1e9, columns: 3, pitch: 22 }',
    want: ['preset/too-large', 'grid.rows', 1, 15],
    says: /found 1000000000.*most allowed, 64/,
  },
  {
    what: 'past every integer',
    text: 'grid: { rows: 1e300, columns: 3, pitch: 22 }',
    want: ['preset/too-large', 'grid.rows', 1, 15],
    says: /most allowed, 64/,
  },
  {
    what: 'NaN',
    text: 'grid: { rows: 2, columns: 3, pitch: .nan }',
    want: ['preset/not-finite', 'grid.pitch', 1, 37],
    says: /\.nan.*8 to 100 mm/,
  },
  {
    what: 'infinity',
    text: `${GRID}beam: { height: .inf }`,
    want: ['preset/not-finite', 'beam.height', 2, 17],
    says: /\.inf.*3 to 30 mm/,
  },
  {
    what: 'pitch below every barrel',
    text: 'grid: { rows: 2, columns: 3, pitch: 7.9 }',
    want: ['preset/too-small', 'grid.pitch', 1, 37],
    says: /7\.9.*8 mm/,
  },
  {
    what: 'a cell out of range',
    text: 'grid: { rows: 2, columns: [22, 500], pitch: 22 }',
    want: ['preset/too-large', 'grid.columns.1', 1, 32],
    says: /200 mm/,
  },
  {
    what: 'a field too long',
    text: 'grid: { rows: 2, columns: 40, pitch: { x: 60, y: 22 } }',
    want: ['preset/too-large', 'grid.columns', 1, 27],
    says: /2400 mm.*2000 mm/,
  },
  {
    what: 'name not in the catalogue',
    text: `${GRID}material: petgg`,
    want: ['preset/unknown-name', 'material', 2, 11],
    says: /mean petg\?/,
  },
  {
    what: 'base not in the catalogue',
    text: `${GRID}printer: { base: bed-202 }`,
    want: ['preset/unknown-name', 'printer.base', 2, 18],
    says: /bed-220/,
  },
  {
    what: 'screw not in the catalogue',
    text: `${GRID}screws: { fix: m3 }`,
    want: ['preset/unknown-name', 'screws.fix', 2, 16],
    says: /mean M3\?/,
  },
  {
    what: 'side that is none',
    text: `${GRID}emitters: { columns_from: top }`,
    want: ['preset/unknown-name', 'emitters.columns_from', 2, 27],
    says: /far and near/,
  },
  {
    what: 'incomplete part',
    text: `${GRID}material: { modulus: 2000 }`,
    want: ['preset/incomplete', 'material', 2, 1],
    says: /poisson.*base: /,
  },
  {
    what: 'fits out of order',
    text: `${GRID}printer: { base: bed-220, snug: 0.9 }`,
    want: ['preset/conflict', 'printer.snug', 2, 33],
    says: /snug is 0\.9, more than slide/,
  },
  {
    what: 'legs that the layout has not',
    text: `${GRID}leaf: { layout: in-line, legs: 3 }`,
    want: ['preset/conflict', 'leaf.legs', 2, 32],
    says: /folded/,
  },
  {
    what: 'a fold of one leg',
    text: `${GRID}leaf: { layout: folded, legs: 1 }`,
    want: ['preset/conflict', 'leaf.legs', 2, 31],
    says: /2 or 3/,
  },
  {
    what: 'too few rows of labels',
    text: 'grid:\n  rows: 2\n  columns: 2\n  pitch: 22\n  labels: [[a, b]]',
    want: ['preset/labels', 'grid.labels', 5, 3],
    says: /1 row of labels.*2 rows/,
  },
  {
    what: 'a short row of labels',
    text: 'grid:\n  rows: 2\n  columns: 2\n  pitch: 22\n  labels:\n    - [a, b]\n    - [c]',
    want: ['preset/labels', 'grid.labels.1', 7, 7],
    says: /row 2 .*far side, has 1 label.*2 columns/,
  },
  {
    what: 'a label that can’t be engraved',
    text: 'grid: { rows: 1, columns: 2, pitch: 22, labels: [[go, größer]] }',
    want: ['preset/text', 'grid.labels.0.1', 1, 55],
    says: /ASCII/,
  },
  {
    what: 'a label too long',
    text: `grid: { rows: 1, columns: 1, pitch: 22, labels: [[${'m'.repeat(25)}]] }`,
    want: ['preset/too-long', 'grid.labels.0.0', 1, 51],
    says: /25.*24/,
  },
  {
    what: 'too few rows in a further set of labels',
    text: 'grid:\n  rows: 2\n  columns: 2\n  pitch: 22\n  label_sets:\n    winter: [[a, b]]',
    want: ['preset/labels', 'grid.label_sets.winter', 6, 5],
    says: /1 row of labels in the label set "winter".*2 rows/,
  },
  {
    what: 'a short row in a further set of labels',
    text: 'grid:\n  rows: 2\n  columns: 2\n  pitch: 22\n  label_sets:\n    winter:\n      - [a, b]\n      - [c]',
    want: ['preset/labels', 'grid.label_sets.winter.1', 8, 9],
    says: /row 2 of the label set "winter", counted from the far side, has 1 label.*2 columns/,
  },
  {
    what: 'a printed label too long',
    text: `grid: { rows: 1, columns: 1, pitch: 22, label_sets: { dress: [[${'m'.repeat(25)}]] } }`,
    want: ['preset/too-long', 'grid.label_sets.dress.0.0', 1, 64],
    says: /25.*24/,
  },
  {
    what: 'a direction character in a printed label',
    text: 'grid: { rows: 1, columns: 1, pitch: 22, label_sets: { dress: [["a\\u202eb"]] } }',
    want: ['preset/text', 'grid.label_sets.dress.0.0', 1, 64],
    says: /control, invisible/,
  },
  {
    what: 'a set of labels that is no list',
    text: 'grid: { rows: 1, columns: 1, pitch: 22, label_sets: { dress: 3 } }',
    want: ['preset/wrong-type', 'grid.label_sets.dress', 1, 62],
    says: /found 3.*list of 0 to 64/,
  },
  {
    what: 'sets of labels that are no mapping',
    text: 'grid: { rows: 1, columns: 1, pitch: 22, label_sets: [[a]] }',
    want: ['preset/wrong-type', 'grid.label_sets', 1, 53],
    says: /a list of 1.*mapping of names/,
  },
  {
    what: 'a set whose name would leave its folder',
    text: 'grid: { rows: 1, columns: 1, pitch: 22, label_sets: { "../up": [[a]] } }',
    want: ['preset/name', 'grid.label_sets."../up"', 1, 55],
    says: /small letters.*spring-show/,
  },
  {
    what: 'a set named like a part of every object',
    text: 'grid: { rows: 1, columns: 1, pitch: 22, label_sets: { __proto__: [[a]] } }',
    want: ['preset/name', 'grid.label_sets.__proto__', 1, 55],
    says: /small letters/,
  },
  {
    what: 'a set named like a device',
    text: 'grid: { rows: 1, columns: 1, pitch: 22, label_sets: { con: [[a]] } }',
    want: ['preset/name', 'grid.label_sets.con', 1, 55],
    says: /device/,
  },
  {
    what: 'more sets of labels than anyone prints',
    text: `grid: { rows: 1, columns: 1, pitch: 22, label_sets: { ${Array.from({ length: 13 }, (_, i) => `s${i}: [[a]]`).join(', ')} } }`,
    want: ['preset/too-long', 'grid.label_sets', 1, 41],
    says: /13 sets.*12/,
  },
  {
    what: 'a control character in a title',
    text: `${GRID}title: "a\\u0007b"`,
    want: ['preset/text', 'title', 2, 8],
    says: /a\\u0007b/,
  },
  {
    what: 'a direction character in a title',
    text: `${GRID}title: "a\\u202eb"`,
    want: ['preset/text', 'title', 2, 8],
    says: /a\\u202eb/,
  },
  {
    what: 'a line break in a title',
    text: `${GRID}title: "a\\nb"`,
    want: ['preset/text', 'title', 2, 8],
    says: /line-break/,
  },
  {
    what: 'half a character in a title',
    text: `${GRID}title: "a\\ud800b"`,
    want: ['preset/text', 'title', 2, 8],
    says: /control, invisible/,
  },
  { what: 'blanks as a title', text: `${GRID}title: "  "`, want: ['preset/text', 'title', 2, 8], says: /blanks/ },
  {
    what: 'a repeated key',
    text: `${GRID}beam: { height: 5, height: 6 }`,
    want: ['preset/duplicate-key', '', 2, 20],
    says: /"height"/,
  },
  { what: 'an unclosed list', text: `${GRID}title: [a`, want: ['preset/yaml', '', 2, 10], says: /\]/ },
  { what: 'a tab as indent', text: 'grid:\n\trows: 2', want: ['preset/yaml', '', 2, 1], says: /[Tt]ab/ },
  { what: 'an unknown tag', text: `${GRID}title: !run rm`, want: ['preset/yaml', '', 2, 8], says: /!run/ },
  {
    what: 'a second document',
    text: `---\n${GRID}---\ntitle: x`,
    want: ['preset/yaml', '', 3, 1],
    says: /one document/,
  },
  {
    what: 'an alias',
    text: `title: &t hello\n${GRID}material: *t`,
    want: ['preset/alias', '', 3, 11],
    says: /write the value out/,
  },
] as const)('$what', ({ text, want, says }) => {
  const mistakes = mistakesOf(text);
  expect(mistakes.map(({ code, path, line, column }) => [code, path, line, column])).toEqual([want]);
  expect(`${mistakes[0]!.message} | ${mistakes[0]!.hint ?? ''}`).toMatch(says);
});

test('every mistake comes in one answer, in the order of the text', () => {
  const text = [
    'titel: T',
    'grid: { rows: 0, columns: 1e9, pitch: x, labels: [[1, 2], 3] }',
    'beam: { height: .nan, hight: 5 }',
    'material: petgg',
    'printer: { base: bed-220, bed_x: 1, press: 0.9 }',
    'printer: bed-180',
  ].join('\n');
  expect(mistakesOf(text, 'Bad Name.yaml').map(({ code, path, line }) => [line, code, path])).toEqual([
    [undefined, 'preset/name', ''],
    [1, 'preset/unknown-key', 'titel'],
    [2, 'preset/too-small', 'grid.rows'],
    [2, 'preset/too-large', 'grid.columns'],
    [2, 'preset/wrong-type', 'grid.pitch'],
    [2, 'preset/wrong-type', 'grid.labels.1'],
    [3, 'preset/not-finite', 'beam.height'],
    [3, 'preset/unknown-key', 'beam.hight'],
    [4, 'preset/unknown-name', 'material'],
    [5, 'preset/too-small', 'printer.bed_x'],
    [5, 'preset/conflict', 'printer.press'],
    [6, 'preset/duplicate-key', ''],
  ]);
});

test('limits themselves are allowed', () => {
  for (const grid of [
    'rows: 1, columns: 64, pitch: 8',
    'rows: 20, columns: 1, pitch: 100',
    'rows: [8], columns: [200], pitch: 50',
  ]) {
    expect(mistakesOf(`grid: { ${grid} }\nbeam: { height: 3 }`)).toEqual([]);
  }
});

test.for([
  'presets/Über.yaml',
  '../..',
  'a b.yaml',
  '.yaml',
  '',
  '-x.yaml',
  'a/../b_c.yaml',
  'nul.yaml',
  `${'n'.repeat(65)}.yaml`,
  'a\u0000.yaml',
])('a file name that can’t name a folder: %j', (file) => {
  const [first, ...rest] = mistakesOf(GRID, file);
  expect([first?.code, rest.length]).toEqual(['preset/name', 0]);
});

test('only the base name counts', () => {
  expect(readPreset(GRID, '..\\..\\evil.yaml').name).toBe('evil');
  expect(readPreset(GRID, '/tmp-like/../x/evil-2.yml').name).toBe('evil-2');
});

test('bombs are refused before they are unfolded', () => {
  expect(mistakesOf('['.repeat(100_000)).map(({ code }) => code)).toEqual(['preset/too-deep']);
  expect(mistakesOf('- '.repeat(90_000)).map(({ code }) => code)).toEqual(['preset/too-deep']);
  expect(mistakesOf('{a: '.repeat(40_000)).map(({ code }) => code)).toEqual(['preset/too-deep']);
  expect(mistakesOf(`${GRID}#${'x'.repeat(200_000)}`).map(({ code }) => code)).toEqual(['preset/too-long']);
  const laughs = [
    'a0: &a0 [lol]',
    ...Array.from({ length: 9 }, (_, i) => `a${i + 1}: &a${i + 1} [${`*a${i},`.repeat(9)}]`),
  ].join('\n');
  expect(new Set(mistakesOf(laughs).map(({ code }) => code))).toEqual(new Set(['preset/alias']));
  expect(mistakesOf('a: &a [*a]').map(({ code }) => code)).toEqual(['preset/alias']);
});

test('what a mistake quotes is short and printable', () => {
  const text = `"a\\e[31m${'k'.repeat(500)}": 1\n${GRID}material: "\\e]0;x\\a${'z'.repeat(500)}"`;
  for (const { path, message, hint } of mistakesOf(text)) {
    for (const words of [path, message, hint ?? '']) {
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
      expect(words).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/);
      expect(words.length).toBeLessThan(400);
    }
  }
});

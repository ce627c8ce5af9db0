import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { readPreset } from '../../src/spec/read-preset.js';
import { setValues } from '../../src/spec/set-values.js';

const GRID = 'grid: { rows: 1, columns: 2, pitch: 24 }\n';
const VALUES = {
  'leaf.layout': 'folded',
  'leaf.legs': 3,
  'leaf.length': 9.5,
  'leaf.thickness': 1.26,
  material: 'pla',
  'aim.tilt': 2.5,
} as const;

/** Ways in which people write presets. */
const TEXTS: Readonly<Record<string, string>> = {
  'nothing but the grid': GRID,
  'no line end at the end': GRID.trimEnd(),
  'a leaf in braces': `${GRID}leaf: { length: 8 } # two lines\n`,
  'empty braces': `${GRID}leaf: {} # later\nmaterial: petg`,
  'a key without value': `${GRID}leaf:\n# none yet\n`,
  'a written null': `${GRID}leaf: ~ # none\n`,
  'a block with comments': `${GRID}leaf: # the spring\n    length: 8   # mm\n    # measured twice\n\n# next\nprinter: bed-220\n`,
  'a value left out': `${GRID}leaf:\n  length: 8\n  thickness: # later\nprinter: bed-180`,
  'a trailing comma': `${GRID}leaf: { length: 8, }\n`,
  'own figures in braces': `${GRID}material: { base: petg, modulus: 2000 } # coupon\n`,
  'own figures as a block': `${GRID}material: # own\n  base: petg # from stock\n  modulus: 2000 # coupon of May\n\nprinter: bed-220\n`,
  'quoted keys': `${GRID}"leaf":\n  'length': 8\n`,
  'the whole preset in braces': `{ ${GRID.trim()} }`,
  'document marks': `---\n${GRID}...\n`,
  'indented all over': ` ${GRID} # end\n`,
  'lines end in CR LF': `${GRID.trimEnd()}\r\nleaf:\r\n  length: 8 # mm\r\n`,
  'a byte order mark': `\ufeff${GRID}leaf:\n  thickness: 0.86`,
};
const texts = Object.entries(TEXTS).map(([row, text]) => ({ row, text }));

const comments = (text: string) => text.match(/(?<=^|\s)#[^\r\n]*/g) ?? [];

describe.each(texts)('$row', ({ text }) => {
  const changed = setValues(text, VALUES);

  test('reads as the values, and otherwise as before', () => {
    const spec = readPreset(changed, 'x.yaml');
    expect(spec.leaf).toMatchObject({ layout: 'folded', legs: 3, length: 9.5, thickness: 1.26 });
    expect([spec.material.name, spec.aim.tiltDeg]).toEqual(['pla', 2.5]);
    const before = readPreset(text, 'x.yaml');
    for (const key of ['grid', 'title', 'printer', 'emitters', 'frame', 'screws'] as const)
      expect(spec[key]).toEqual(before[key]);
  });

  test('so does the yaml library itself', () => {
    const { leaf, material, aim } = parseDocument(changed).toJS();
    expect({ leaf, material, aim }).toMatchObject({
      leaf: { layout: 'folded', legs: 3, length: 9.5, thickness: 1.26 },
      material: 'pla',
      aim: { tilt: 2.5 },
    });
  });

  test('keeps every comment, and line ends of one kind', () => {
    const kept = comments(changed).join('\n');
    for (const comment of comments(text)) expect(kept).toContain(comment);
    if (text.includes('\r\n')) expect(changed.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    else expect(changed).not.toContain('\r');
  });

  test('doing it again changes nothing', () => expect(setValues(changed, VALUES)).toBe(changed));
});

test('what is not set stays byte for byte', () => {
  const text = `# a\ntitle:   "It''s"   # odd\n\n${GRID}leaf:\n  thickness:    0.86 # two\n  length: 8\n# z`;
  expect(setValues(text, { 'leaf.thickness': 1.26 })).toBe(text.replace('0.86', '1.26'));
});

test('figures that give way to a name stay as comments', () => {
  expect(setValues(TEXTS['own figures as a block']!, { material: 'pla' })).toBe(
    `${GRID}material: pla # own\n#  base: petg # from stock\n#  modulus: 2000 # coupon of May\n\nprinter: bed-220\n`,
  );
});

test('any numbers come back as they were', () => {
  const length = fc.integer({ min: 50, max: 6000 }).map((n) => n / 100);
  fc.assert(
    fc.property(fc.constantFrom(...texts), length, ({ text }, value) => {
      expect(readPreset(setValues(text, { 'leaf.length': value }), 'x.yaml').leaf.length).toBe(value);
    }),
    { numRuns: 60 },
  );
});

test('text that is no mapping is refused', () =>
  expect(() => setValues('- a\n', { material: 'pla' })).toThrow(/no mapping/));

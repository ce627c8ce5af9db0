import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../src/outputs/cautions.js';
import { findingsText, tally } from '../../src/outputs/findings-text.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { summaryText } from '../../src/outputs/summary.js';
import { wrap } from '../../src/outputs/text.js';
import { sampleFinding, sampleInputs } from './sample-kit.js';

const flat = (text: string) => text.replace(/\s+/g, ' ');

describe('summary', () => {
  test('says what was made, chosen and found, where the files are, and every caution', async () => {
    const { context } = makeOutputs(await sampleInputs());
    const text = flat(summaryText(context, { width: 80, files: true }));
    expect(text).toContain('1 row by 2 columns: 2 keys');
    expect(text).toContain('To print: 2 pieces of 1 kind, 2 g if solid');
    expect(text).toContain('Findings: 1 warning');
    expect(text).toContain(sampleFinding.message);
    expect(text).toContain('To change: leaf.thickness, material');
    expect(text).toContain('leaf.thickness 0.86: two printed lines');
    expect(text).toContain('kit.json');
    for (const caution of CAUTIONS) expect(text).toContain(caution);
  });

  test('does not promise files that were not written', async () => {
    const { context } = makeOutputs(await sampleInputs());
    expect(summaryText(context, { width: 80, files: false })).not.toContain('kit.json');
  });

  test.for([50, 80, 100])('no line is wider than %i columns', async (width) => {
    const { context } = makeOutputs(await sampleInputs());
    const lines = summaryText(context, { width, files: true }).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
  });
});

describe('cautions', () => {
  // The topics that IEC 60825-1's user information and Directive 2006/25/EC's Annex ask to be told, and common practice.
  test.for([
    'label',
    'Never look',
    'eye height',
    'stop',
    'covers',
    'Infrared',
    'Rings'.toLowerCase(),
    'one line powered at a time',
    'not a classification',
    'qualified laser safety person',
    'Lithium',
  ])('speak of: %s', (topic) => expect(CAUTIONS.join('\n')).toContain(topic));
});

describe('findings', () => {
  test('of one kind stand together: the first in full, the others by name', () => {
    const twelve = Array.from({ length: 12 }, (_, i) => ({
      ...sampleFinding,
      subject: `mount.${i}`,
      message: `Mount ${i} sags.`,
    }));
    const text = flat(findingsText(twelve, { width: 80 }));
    expect(text).toContain('Mount 0 sags.');
    expect(text).not.toContain('Mount 1 sags.');
    expect(text).toContain('And 11 more of this kind: mount.1, mount.2, mount.3, mount.4, …');
  });

  test('errors come first, and are counted', () => {
    const error = { ...sampleFinding, severity: 'error', code: 'a/b' } as const;
    const note = { ...sampleFinding, severity: 'note', code: 'c/d' } as const;
    expect(tally([note, error, note])).toBe('1 error, 2 notes');
    const text = findingsText([note, error], { width: 80 });
    expect(text.indexOf('a/b')).toBeLessThan(text.indexOf('c/d'));
  });
});

test('wrap keeps every word', () => {
  const text = 'one two three four five six seven eight nine ten eleven twelve';
  const wrapped = wrap(text, { width: 24, indent: '  ' });
  expect(flat(wrapped)).toBe(text);
  expect(Math.max(...wrapped.split('\n').map((line) => line.length))).toBeLessThanOrEqual(24);
});

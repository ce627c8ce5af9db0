import { describe, expect, test } from 'vitest';
import { exitCodeOf, gravest, UsageError } from '../../src/cli/exit.js';
import { failureText } from '../../src/cli/failure-text.js';
import { FileError, PresetError } from '../../src/errors.js';

const wrong = new PresetError('presets/fern.yaml', [
  {
    code: 'preset/unknown-key',
    path: 'grid.rovs',
    message: 'there is no key "rovs"',
    hint: 'did you mean rows?',
    line: 3,
    column: 5,
  },
  { code: 'preset/too-small', path: 'grid.pitch', message: '2 is below the least, 8 mm', line: 7, column: 10 },
  { code: 'preset/yaml', path: '', message: 'a \u001b[31mcolour\u001b[0m and a \u202eturn' },
]);

describe('failureText', () => {
  test('names every mistake with its place, path, message and hint', () => {
    const text = failureText(wrong, 80);
    expect(text).toContain('presets/fern.yaml: 3 mistakes');
    expect(text).toContain('presets/fern.yaml:3:5  grid.rovs');
    expect(text).toContain('there is no key "rovs"');
    expect(text).toContain('did you mean rows?');
    expect(text).toContain('presets/fern.yaml:7:10  grid.pitch');
  });

  test('lets no control character through to the terminal', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what must not be there
    expect(failureText(wrong, 80)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
  });

  test('a bug shows where it happened and asks for a report', () => {
    const text = failureText(new TypeError('x is not a function'), 80);
    expect(text).toMatch(/bug in beamloom[\s\S]*TypeError: x is not a function\n\s+at /);
  });
});

// The exit codes that the manual names.
test.for([
  { row: 'a wrong preset', error: wrong, want: 2 },
  { row: 'a wrong flag', error: new UsageError('--jobs'), want: 2 },
  { row: 'a file', error: new FileError('out', 'no space left'), want: 3 },
  { row: 'anything else', error: new RangeError('NaN'), want: 70 },
  { row: 'what is no error at all', error: 'text', want: 70 },
])('exit code of $row: $want', ({ error, want }) => expect(exitCodeOf(error)).toBe(want));

test('a run with several ends takes the gravest', () => {
  expect(gravest([0, 1, 0])).toBe(1);
  expect(gravest([3, 1, 2])).toBe(3);
  expect(gravest([0, 70, 3])).toBe(70);
  expect(gravest([])).toBe(0);
});

import { expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { readPreset } from '../../src/spec/read-preset.js';

const read = (boards: string) => readPreset(`grid: { rows: 2, columns: 2, pitch: 20 }\n${boards}\n`, 'a.yaml');
const mistakes = (boards: string) => {
  try {
    read(boards);
  } catch (error) {
    if (error instanceof PresetError) return error.mistakes.map(({ code, path, hint = '' }) => [code, path, hint]);
    throw error;
  }
  return [];
};

test('no key, an empty key, or neither kind: no boards', () => {
  for (const text of ['', 'boards:', 'boards: { receivers: false }']) expect(read(text).boards, text).toBeUndefined();
});

test('what is left out is told with a reason; what is given is not', () => {
  const spec = read('boards: { emitters: true, panel: { x: 80 } }');
  expect(spec.boards).toEqual({ receivers: true, emitters: true, panel: { x: 80, y: 100 }, thickness: 1.6 });
  const told = spec.chosen.filter(({ path }) => path.startsWith('boards'));
  expect(told.map(({ path, value }) => [path, value])).toEqual([
    ['boards.receivers', 'yes'],
    ['boards.panel.y', 100],
    ['boards.thickness', 1.6],
  ]);
  expect(told.every(({ why }) => why.length > 10)).toBe(true);
});

test.for([
  ['boards: { receivers: maybe }', 'preset/wrong-type', 'boards.receivers', 'allowed is true or false'],
  ['boards: { panel: { x: 5 } }', 'preset/too-small', 'boards.panel.x', 'allowed is a number from 20 to 600 mm'],
  ['boards: { panel: { y: 1000 } }', 'preset/too-large', 'boards.panel.y', 'allowed is a number from 20 to 600 mm'],
  ['boards: { thickness: 0.2 }', 'preset/too-small', 'boards.thickness', 'allowed is a number from 0.8 to 2.4 mm'],
  ['boards: { panels: 3 }', 'preset/unknown-key', 'boards.panels', 'did you mean panel?'],
] as const)('%s', ([text, ...want]) => expect(mistakes(text)).toEqual([want]));

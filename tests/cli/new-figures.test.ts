import { describe, expect, test } from 'vitest';
import { UsageError } from '../../src/cli/exit.js';
import { fromAnswers, fromFlags, parseAxis, parsePitch } from '../../src/cli/new-figures.js';

describe('figures from flags', () => {
  test.for([
    { text: '4', want: 4 },
    { text: '34,22,22', want: [34, 22, 22] },
    { text: ' 34, 22 ', want: [34, 22] },
    { text: '30,', want: [30] },
  ])('an axis: "$text"', ({ text, want }) => expect(parseAxis('rows', text)).toEqual(want));

  test.for([
    { text: '22', want: 22 },
    { text: '22,20.5', want: { x: 22, y: 20.5 } },
  ])('a pitch: "$text"', ({ text, want }) => expect(parsePitch(text)).toEqual(want));

  test.for(['', 'four', '4x', '1e999', 'NaN', '0x', '4,,x'])('no axis: "%s"', (text) => {
    expect(() => parseAxis('rows', text)).toThrow(UsageError);
  });

  test.for(['', '22,20,18', 'wide'])('no pitch: "%s"', (text) => expect(() => parsePitch(text)).toThrow(UsageError));

  test('every missing flag is named at once', () => {
    expect(() => fromFlags('Fern', { rows: '4' })).toThrow('--columns, --pitch');
  });

  test('only what was given is in the preset', () => {
    expect(fromFlags('Fern', { rows: '4', columns: '34,22', pitch: '22', printer: 'bed-180' })).toEqual({
      title: 'Fern',
      rows: 4,
      columns: [34, 22],
      pitch: 22,
      printer: 'bed-180',
    });
  });
});

describe('figures from answers', () => {
  async function answered(answers: readonly string[], flags = {}) {
    const [asked, told] = [[] as string[], [] as string[]];
    const queue = [...answers];
    const preset = await fromAnswers('Fern', flags, {
      ask: async (question) => {
        asked.push(question);
        return queue.shift()!;
      },
      judge: ({ rows }) => (typeof rows === 'number' && rows > 64 ? 'at most 64' : null),
      tell: (line) => told.push(line),
    });
    expect(queue, 'every answer was asked for').toEqual([]);
    return { preset, asked, told };
  }

  test('an empty answer takes what is offered', async () => {
    const { preset, asked } = await answered(['', '', '', '']);
    expect(preset).toEqual({ title: 'Fern', rows: 4, columns: 6, pitch: 22 });
    expect(asked).toHaveLength(4);
  });

  test('what can’t be used is said, and asked again', async () => {
    const { preset, told } = await answered(['Shade house', 'many', '1000', '3', '30,22', '22,20']);
    expect(preset).toEqual({ title: 'Shade house', rows: 3, columns: [30, 22], pitch: { x: 22, y: 20 } });
    expect(told.map((line) => line.trim())).toEqual(['rows: "many" is no number', 'at most 64']);
  });

  test('what a flag says is not asked', async () => {
    const { preset, asked } = await answered(['5', ''], { title: 'Shade', pitch: '19', material: 'pla' });
    expect(preset).toEqual({ title: 'Shade', rows: 5, columns: 6, pitch: 19, material: 'pla' });
    expect(asked).toHaveLength(2);
  });
});

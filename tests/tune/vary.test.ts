import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { UNPRINTABLE } from '../../src/spec/words.js';
import { MOST_DESIGNS, readVary } from '../../src/tune/vary.js';

const read = (...given: readonly (readonly [string, string])[]) =>
  readVary(given.map(([path, text]) => ({ path, text })));
const valuesOf = (text: string, path = 'leaf.length') => {
  const found = read([path, text]);
  return 'axes' in found ? found.axes[0]!.values : found.mistakes.map(({ code }) => code);
};

describe('values', () => {
  // By hand: an arithmetic progression from the first to the last value that is not beyond the end.
  test.for([
    { text: '8', want: [8] },
    { text: '9.5,8', want: [9.5, 8] },
    { text: '8..10/0.5', want: [8, 8.5, 9, 9.5, 10] },
    { text: '8..9/0.3', want: [8, 8.3, 8.6, 8.9] },
    { text: '0.7..1/0.1', want: [0.7, 0.8, 0.9, 1] },
    { text: '6, 8..12/2 ,20', want: [6, 8, 10, 12, 20] },
    { text: '7..7/3', want: [7] },
    { text: '8,8..9/1', want: [8, 9] },
  ])('$text', ({ text, want }) => expect(valuesOf(text)).toEqual(want));

  test('names', () => {
    expect(valuesOf('petg,pla', 'material')).toEqual(['petg', 'pla']);
    expect(valuesOf('folded, in-line', 'leaf.layout')).toEqual(['folded', 'in-line']);
    expect(valuesOf('M2,M3', 'screws.adjust')).toEqual(['M2', 'M3']);
  });

  test('a range has as many values as whole steps fit in it, and one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 300 }),
        fc.integer({ min: 0, max: 290 }),
        fc.integer({ min: 1, max: 90 }),
        (from, span, step) => {
          const tenths = [from / 10, (from + span) / 10, step / 10] as const;
          const values = valuesOf(`${tenths[0]}..${tenths[1]}/${tenths[2]}`);
          expect(values).toHaveLength(Math.floor(span / step) + 1);
          expect(Math.max(...(values as number[]))).toBeLessThanOrEqual(tenths[1]);
        },
      ),
    );
  });
});

describe('one clear answer for each mistake', () => {
  test.for([
    { given: ['leaf.length', '12..8/0.5'], code: 'tune/backwards', says: /backwards.*write 8\.\.12\/0\.5/ },
    { given: ['leaf.length', '8..12'], code: 'tune/no-step', says: /no step/ },
    { given: ['leaf.length', '8..12/0'], code: 'tune/step', says: /above zero/ },
    { given: ['leaf.length', '8..12/-1'], code: 'tune/step', says: /above zero/ },
    { given: ['leaf.length', 'long'], code: 'tune/no-number', says: /"long" is no number/ },
    { given: ['leaf.length', '8..x/1'], code: 'tune/no-number', says: /"x" is no number/ },
    { given: ['leaf.length', '8mm'], code: 'tune/no-number', says: /"8mm"/ },
    { given: ['leaf.length', ''], code: 'tune/no-number', says: /missing/ },
    { given: ['leaf.length', '8,'], code: 'tune/no-number', says: /missing/ },
    { given: ['leaf.length', 'Infinity'], code: 'tune/no-number', says: /no number/ },
    { given: ['leaf.length', '1e999'], code: 'tune/no-number', says: /no number/ },
    { given: ['leaf.length', '70'], code: 'tune/outside', says: /from 0\.5 to 60 mm/ },
    { given: ['aim.tilt', '0'], code: 'tune/outside', says: /from 0\.2 to 10 °/ },
    { given: ['leaf.legs', '1.5'], code: 'tune/whole', says: /whole number/ },
    { given: ['leaf.legs', '1..3/0.5'], code: 'tune/whole', says: /whole number/ },
    { given: ['material', 'brass'], code: 'tune/unknown-name', says: /known: pla, petg/ },
    { given: ['material', 'ptg'], code: 'tune/unknown-name', says: /did you mean petg/ },
    { given: ['leaf.thicknes', '1'], code: 'tune/unknown-path', says: /did you mean leaf\.thickness/ },
    { given: ['thickness', '1'], code: 'tune/unknown-path', says: /did you mean leaf\.thickness/ },
    { given: ['grid.rows', '1'], code: 'tune/unknown-path', says: /what can be varied/ },
  ] as const)('$given', ({ given, code, says }) => {
    const found = read(given as readonly [string, string]);
    expect(found).toMatchObject({ mistakes: [{ code, text: given[1] }] });
    const { message, hint } = (found as { mistakes: readonly { message: string; hint?: string }[] }).mistakes[0]!;
    expect(`${message}; ${hint}`).toMatch(says);
  });

  test('all of them at once', () => {
    const found = read(['leaf.length', 'x'], ['leaf.legs', '9'], ['leaf.length', '8']);
    expect('mistakes' in found && found.mistakes.map(({ code }) => code)).toEqual([
      'tune/no-number',
      'tune/outside',
      'tune/twice',
    ]);
  });

  test('a million designs: number and limit are said, and nothing of that size is made', () => {
    // by hand: 1000 · 1000
    const found = read(['leaf.length', '8..12.995/0.005'], ['leaf.thickness', '0.86..1.859/0.001']);
    expect(found).toMatchObject({ mistakes: [{ code: 'tune/too-many' }] });
    const said = (found as { mistakes: readonly { message: string }[] }).mistakes[0]!.message.replaceAll('\u00a0', ' ');
    expect(said).toContain('1 000 000');
    expect(said).toContain('50 000');
    expect(MOST_DESIGNS).toBe(50_000);
    const before = performance.now();
    expect(read(['leaf.length', '1..60/1e-300'])).toMatchObject({ mistakes: [{ code: 'tune/too-many' }] });
    expect(performance.now() - before).toBeLessThan(500);
  });

  test('whatever is written, an answer comes and nothing is thrown', () => {
    const word = fc.oneof(fc.string(), fc.stringMatching(/^[0-9.,/e+-]{0,14}$/));
    fc.assert(
      fc.property(fc.constantFrom('leaf.length', 'leaf.legs', 'material', 'nonsense'), word, (path, text) => {
        const found = read([path, text]);
        if ('axes' in found)
          for (const value of found.axes[0]!.values) expect(['number', 'string']).toContain(typeof value);
        else for (const { message } of found.mistakes) expect(message.search(UNPRINTABLE)).toBe(-1);
      }),
    );
  });
});

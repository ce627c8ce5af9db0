import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jsonText, tidy } from '../../src/outputs/json-text.js';

describe('tidy', () => {
  test.for([
    { row: 'a tenth of a nanometre goes', value: 1.00000004, want: 1 },
    { row: 'a nanometre stays', value: 2.000001, want: 2.000001 },
    { row: 'a sum of tenths', value: 0.1 + 0.2, want: 0.3 },
    { row: 'negative', value: -3.4567894, want: -3.456789 },
    { row: 'large', value: 123456789.123456, want: 123456789.123456 },
  ])('$row', ({ value, want }) => expect(tidy(value)).toBe(want));

  test('never gives −0', () => {
    for (const value of [-0, -1e-9, 0]) expect(Object.is(tidy(value), 0)).toBe(true);
  });

  test('refuses what JSON can’t hold', () => {
    for (const value of [Number.NaN, Infinity, -Infinity]) expect(() => tidy(value)).toThrow(RangeError);
  });
});

describe('jsonText', () => {
  test('reads back as the same value, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        // JSON has no −0: the library's own round trip is the reference (ECMA-404 through ECMAScript's JSON object).
        expect(JSON.parse(jsonText(value as never))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });

  test('keeps a list of numbers on one line and the keys in order', () => {
    expect(jsonText({ b: [1, 2], a: { c: [] } })).toBe('{\n  "b": [1, 2],\n  "a": {\n    "c": []\n  }\n}\n');
  });

  test('refuses NaN instead of writing null', () => {
    expect(() => jsonText({ deep: [{ x: Number.NaN }] })).toThrow(RangeError);
  });
});

import { describe, expect, test } from 'vitest';
import { forceLeft } from '../../src/mechanics/creep.js';
import { warmCreep } from '../../src/mechanics/temperature.js';

describe('creep in warm air', () => {
  test('20 K warmer runs four times as fast: a year is worth four', () =>
    expect(forceLeft(warmCreep({ a: 0.12, n: 0.22 }, 43), 8760)).toBeCloseTo(
      forceLeft({ a: 0.12, n: 0.22 }, 4 * 8760),
      12,
    ));
  test('by hand: .12 · 2^.44 = .162793', () => expect(warmCreep({ a: 0.12, n: 0.22 }, 43).a).toBeCloseTo(0.162793, 5));
  test('nothing is gained below 23 °C', () => expect(warmCreep({ a: 0.12, n: 0.22 }, 5).a).toBe(0.12));
  test('refuses negative figures', () => expect(() => warmCreep({ a: -1, n: 0.2 }, 30)).toThrow('warmCreep'));
});

import { describe, expect, test } from 'vitest';
import { aim } from '../../src/checks/aim.js';
import type { LightBudget } from '../../src/layout/light/budget.js';
import { light, spec } from './sound-figures.js';

const ask = (changed: Partial<LightBudget['aim']>, lines: Partial<LightBudget['aim']['lines'][0]> = {}) =>
  aim.run({
    spec,
    light: {
      ...light,
      aim: { ...light.aim, lines: [{ ...light.aim.lines[0], ...lines }, light.aim.lines[1]], ...changed },
    },
  });

describe('chance', () => {
  test('99 in 100 is a note, with what to buy', () => {
    const [only, ...more] = ask({});
    expect(more).toEqual([]);
    expect(only).toMatchObject({ code: 'aim/chance', severity: 'note', unit: '%', remedies: [] });
    expect(only!.measured).toBeCloseTo(99, 9);
    expect(only!.message).toContain('6 emitters are enough');
  });
  test('eight in ten is a warning that names what would help', () => {
    const [only] = ask({}, { chance: 0.8 });
    expect(only).toMatchObject({ severity: 'warning', subject: 'columns', limit: 90, remedies: ['aim.mount_error'] });
  });
  test('four in ten is an error', () => {
    expect(ask({}, { chance: 0.4 })[0]).toMatchObject({ severity: 'error', limit: 50 });
  });
  test('where no number of emitters helps it says so', () => {
    expect(ask({ buy: null }, { chance: 0.01 })[0]!.message).toContain('No number of emitters');
  });
});

test('a screw too coarse for a long way: 5° of it move the spot past the tolerance', () => {
  // .7 / 5 = .14 mm a degree is the limit.
  const coarse = (perDegree: number) =>
    ask({}, { step: { ...light.aim.lines[0].step, perDegree } }).map(({ code }) => code);
  expect(coarse(0.139)).toEqual(['aim/chance']);
  expect(coarse(0.141)).toEqual(['aim/chance', 'aim/resolution']);
});

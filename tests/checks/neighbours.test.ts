import { describe, expect, test } from 'vitest';
import { neighbours } from '../../src/checks/neighbours.js';
import type { LightBudget } from '../../src/layout/light/budget.js';
import { rad } from '../../src/units.js';
import { light, spec } from './sound-figures.js';

const emitting = (divergence: number, height = 5) => ({
  ...spec,
  beam: { height },
  emitters: {
    ...spec.emitters,
    part: { ...spec.emitters.part, divergenceMrad: { value: divergence, source: 'this test' } },
  },
});
const lines = (pitch: number): LightBudget['aim']['lines'] => [
  { ...light.aim.lines[0], pitch },
  { ...light.aim.lines[1], pitch: Infinity },
];
const ask = (pitch: number, divergence = 1, cutOff = 9.5, height = 5) =>
  neighbours.run({
    spec: emitting(divergence, height),
    light: {
      ...light,
      aim: { ...light.aim, lines: lines(pitch) },
      signal: { ...light.signal, cutOff: rad(cutOff) },
    },
  });
const codes = (...args: Parameters<typeof ask>) => ask(...args).map(({ code, severity }) => `${severity} ${code}`);

describe('a laser’s neighbour', () => {
  // w 1.1: k(1e-2) = 1.517427 radii, 1.669; tolerance .7, detector .5, slide 1.5: 4.369.
  test('nearer than its light, the miss allowed and the slide: a warning', () => {
    expect(codes(4.37)).toEqual(['note light/bounce']);
    const [first] = ask(4.36);
    expect(first).toMatchObject({ code: 'light/crosstalk', severity: 'warning', subject: 'columns' });
    expect(first!.limit).toBeCloseTo(4.369, 3);
  });
});

test('a diode’s neighbour gets nearly as much: the remedy is to light one at a time', () => {
  // 349 mrad full at 1/e²: 5.89° at half intensity, m = 131; 24 beside 150: cos^134(9.09°) = 18.5 %.
  const [first] = ask(24, 349);
  expect(first).toMatchObject({ code: 'light/crosstalk', remedies: ['scan.light_us', 'emitters.part'] });
  expect(first!.measured).toBeGreaterThan(15);
  expect(first!.measured).toBeLessThan(22);
  expect(codes(60, 349)).toEqual(['note light/bounce']);
});

test('the deck’s mirror image is a note where the tube sees it', () => {
  // atan(10/150) = 3.81°.
  expect(codes(24, 1, 3.82)).toEqual(['note light/bounce']);
  expect(codes(24, 1, 3.8)).toEqual([]);
});

test('a lone line has no neighbour', () => {
  expect(codes(Infinity)).toEqual(['note light/bounce']);
});

import { expect, test } from 'vitest';
import { batteryHours, preferredAbove, reservoir, seriesResistor } from '../../src/electrics/supply.js';

test('by hand: 5 V, an LED of 2 V at 20 mA: 150 Ω; a barrel of 5 V: none', () => {
  expect(seriesResistor(5, { voltage: 2, current: 0.02 })).toBeCloseTo(150, 9);
  expect(seriesResistor(5, { voltage: 5, current: 0.025 })).toBe(0);
  expect(seriesResistor(3.3, { voltage: 5, current: 0.025 })).toBe(0);
});

test('by hand: 2.5 A·h, four fifths of it, at 320 mA: 6.25 h', () => {
  expect(batteryHours({ capacity: 2.5, share: 0.8, current: 0.32 })).toBeCloseTo(6.25, 9);
});

test('by hand: 300 mA for 50 µs on .1 V: 150 µF', () => {
  expect(reservoir({ step: 0.3, time: 50e-6, sag: 0.1 })).toBeCloseTo(150e-6, 12);
});

test.for([
  // IEC 60063, E12.
  [150e-6, 150e-6],
  [151e-6, 180e-6],
  [8.3, 10],
  [99, 100],
  [4.7, 4.7],
] as const)('the next preferred value above %f is %f', ([value, want]) => {
  expect(preferredAbove(value) / want).toBeCloseTo(1, 9);
});

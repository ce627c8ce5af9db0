/** Warmth of a small box, by hand. */
import { expect, test } from 'vitest';
import { closedRise, SURFACE, ventArea, ventedHeat } from '../../src/electrics/heat.js';

test('a closed box loses 5 to 10 W from each square metre and kelvin, as handbooks state for still air', () => {
  expect(SURFACE).toBeGreaterThanOrEqual(5);
  expect(SURFACE).toBeLessThanOrEqual(10);
  // 1 W through 0.05 m² at 8 W/m²K: 1 / 0.4.
  expect(closedRise({ watts: 1, area: 0.05 })).toBeCloseTo(2.5, 12);
  expect(() => closedRise({ watts: 1, area: 0 })).toThrow(RangeError);
});

test('draught by the law of stack effect (ASHRAE Handbook, Fundamentals; discharge 0.65, from memory), worked by hand', () => {
  // v = √(2 · 9.81 · 0.02 · 10 / 300) = 0.11437 m/s; q = 0.65 · (0.001 / √2) · v = 5.2566e-5 m³/s; 1167 · q · 10 = 0.6134 W.
  expect(ventedHeat({ rise: 10, around: 300, opening: 1e-3, height: 0.02 })).toBeCloseTo(0.6134, 3);
  // Twice the opening carries twice, four times the height twice as much.
  expect(ventedHeat({ rise: 10, around: 300, opening: 2e-3, height: 0.08 })).toBeCloseTo(4 * 0.6134, 3);
});

test('vents: none where walls alone do, else what carries the rest', () => {
  expect(ventArea({ watts: 0.3, area: 0.05, rise: 10, around: 300, height: 0.02 })).toBe(0);
  // Walls take 8 · 0.05 · 10 = 4 W of 4.6134 W: the rest is the draught above.
  expect(ventArea({ watts: 4.6134, area: 0.05, rise: 10, around: 300, height: 0.02 })).toBeCloseTo(1e-3, 6);
});

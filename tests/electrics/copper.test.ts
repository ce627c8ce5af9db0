import { expect, test } from 'vitest';
import { gaugeDiameter, wireResistance } from '../../src/electrics/copper.js';

test.for([
  // Published: tables after ASTM B258 (diameter) and at 20 °C (resistance), as restated publicly; from memory.
  { gauge: 20, diameter: 0.8118, ohmPerKm: 33.31 },
  { gauge: 24, diameter: 0.5106, ohmPerKm: 84.22 },
  { gauge: 26, diameter: 0.4049, ohmPerKm: 133.9 },
  { gauge: 28, diameter: 0.3211, ohmPerKm: 212.9 },
  { gauge: 30, diameter: 0.2546, ohmPerKm: 338.6 },
])('gauge $gauge: $diameter mm, $ohmPerKm Ω/km', ({ gauge, diameter, ohmPerKm }) => {
  expect(gaugeDiameter(gauge)).toBeCloseTo(diameter, 3);
  // The tables round in the fourth figure, and their copper differs by .02 %.
  expect(wireResistance({ length: 1e6, diameter: gaugeDiameter(gauge) }) / ohmPerKm).toBeCloseTo(1, 2);
});

test('the ends that define the gauge: 36 is .005 inch, 0000 is .46 inch; six gauges double the diameter, nearly', () => {
  expect(gaugeDiameter(36)).toBeCloseTo(0.005 * 25.4, 9);
  expect(gaugeDiameter(-3)).toBeCloseTo(0.46 * 25.4, 9);
  // Law: 92^(6/39) = 2.0050.
  expect(gaugeDiameter(18) / gaugeDiameter(24)).toBeCloseTo(2.005, 3);
});

test('0.5 mm² of copper: at most 39 Ω/km by IEC 60228, class 5 (from memory), which leaves it room for its stranding', () => {
  const solid = wireResistance({ length: 1e6, diameter: Math.sqrt((4 * 0.5) / Math.PI) });
  expect(solid).toBeLessThan(39);
  expect(solid).toBeGreaterThan(0.85 * 39);
});

test('warm copper resists more: 30 K by 11.79 %', () => {
  const at = (celsius: number) => wireResistance({ length: 700, diameter: 0.4, celsius });
  expect(at(50) / at(20)).toBeCloseTo(1.1179, 6);
});

import { expect, test } from 'vitest';
import { printers } from '../../src/printers/index.js';

test('every figure says where it comes from', () => {
  for (const [name, { title, ...figures }] of Object.entries(printers)) {
    expect(title).not.toBe('');
    for (const [figure, { value, source }] of Object.entries(figures)) {
      expect(Number.isFinite(value), `${name}.${figure}`).toBe(true);
      expect(source.length, `${name}.${figure}`).toBeGreaterThan(3);
    }
  }
});

test.for([
  // Common practice: the usual ranges of diametral clearance in filament printing [mm].
  { fit: 'press', least: 0, most: 0.1 },
  { fit: 'snug', least: 0.15, most: 0.2 },
  { fit: 'slide', least: 0.25, most: 0.3 },
  { fit: 'free', least: 0.4, most: 0.5 },
] as const)('$fit fits lie in $least–$most', ({ fit, least, most }) => {
  for (const printer of Object.values(printers)) {
    expect(printer[fit].value).toBeGreaterThanOrEqual(least);
    expect(printer[fit].value).toBeLessThanOrEqual(most);
  }
  expect(printers['bed-220'][fit].value).toBeCloseTo((least + most) / 2, 9);
});

test('two lines of the default printer make a leaf of 0.86', () => {
  // Overlapping rounded lines: t(2) = w + (w − h (1 − π/4)) = 0.45 + 0.45 − 0.2 · 0.2146 = 0.857 (by hand).
  const { lineWidth, layer } = printers['bed-220'];
  expect(2 * lineWidth.value - layer.value * (1 - Math.PI / 4)).toBeCloseTo(0.857, 3);
});

test('a layer is thinner than the nozzle, and a line is about as wide', () => {
  // Common practice: layers of a quarter to three quarters of the nozzle, lines of 1 to 1.2 nozzles.
  for (const { nozzle, layer, lineWidth } of Object.values(printers)) {
    expect(layer.value / nozzle.value).toBeGreaterThanOrEqual(0.25);
    expect(layer.value / nozzle.value).toBeLessThanOrEqual(0.75);
    expect(lineWidth.value / nozzle.value).toBeGreaterThanOrEqual(1);
    expect(lineWidth.value / nozzle.value).toBeLessThanOrEqual(1.2);
  }
});

test('overhang and bridge lie in the ranges that guides give', () => {
  // Common practice: 40 to 60° from the vertical, 45 as the rule of thumb; bridges of 5 to 10 mm, longer ones with luck.
  for (const { overhangDeg, bridge } of Object.values(printers)) {
    expect(overhangDeg.value).toBeGreaterThanOrEqual(40);
    expect(overhangDeg.value).toBeLessThanOrEqual(60);
    expect(bridge.value).toBeGreaterThanOrEqual(5);
    expect(bridge.value).toBeLessThanOrEqual(10);
  }
});

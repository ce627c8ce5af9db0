/** The slot through which the wires leave a corner, against areas worked out by hand. */
import { expect, test } from 'vitest';
import { layOut } from '../../src/layout/lay-out.js';
import { readPreset } from '../../src/spec/read-preset.js';

const cable = (text: string) => layOut(readPreset(text, 'tested.yaml')).cable;

test('its opening takes the wires of both rails at the fullest corner, filled to six tenths', () => {
  // 4 × 6, pairs 2 mm across for the emitters, 2.2 for the receivers: 10 bundles of 3.80 mm² / .6 = 63.4; 7 high: 9.1.
  const { width, height, takes } = cable('grid: { rows: 4, columns: 6, pitch: 20 }');
  expect(height).toBe(7);
  expect(width).toBeCloseTo(9.1, 6);
  expect(takes).toBe(1);
});

test('never under 8 mm', () => {
  expect(cable('grid: { rows: 1, columns: 2, pitch: 24 }').width).toBe(8);
});

test('no longer than the wall: then it says how much it takes', () => {
  // 12 × 24: 36 bundles of 3.80 mm² / .6 = 228 mm², 32.6 long; the post is about 47 across.
  const { width, takes } = cable('grid: { rows: 12, columns: 24, pitch: 20 }');
  expect(width).toBeLessThan(30);
  expect(takes).toBeCloseTo((width * 7) / 228.08, 3);
});

test('a bundle lies between the tie’s slits, one over the other', () => {
  const { tie, width, takes } = cable('grid: { rows: 4, columns: 6, pitch: 20 }');
  const apart = tie.at[1] - tie.at[0] - tie.height;
  // All 63.4 mm² as a circle: 8.98 across.
  expect(apart).toBeGreaterThanOrEqual(8.98 - 1e-9);
  expect(apart).toBeLessThan(9.2);
  expect(width * takes).toBeGreaterThan(0);
});

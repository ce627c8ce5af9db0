/**
 * Hardware against the tables of the standards. No standard's text was at hand: rows are typed in from public tables that
 * restate them, except where a row says "from memory".
 */
import { expect, test } from 'vitest';
import { keys, pins, threads } from '../../src/components/index.js';

const SIZES = ['M2', 'M2.5', 'M3', 'M4'] as const;

test.for([
  { figure: 'pitch', want: [0.4, 0.45, 0.5, 0.7], from: 'ISO 261/262, coarse' },
  { figure: 'clearance', want: [2.4, 2.9, 3.4, 4.5], from: 'ISO 273, medium' },
  { figure: 'capHeight', want: [2, 2.5, 3, 4], from: 'ISO 4762, k max' },
  { figure: 'capKey', want: [1.5, 2, 2.5, 3], from: 'ISO 4762, s nominal' },
  { figure: 'capHead', want: [3.98, 4.68, 5.68, 7.22], from: 'ISO 4762, dk max, knurled' },
  { figure: 'nutFlats', want: [4, 5, 5.5, 7], from: 'ISO 4032, s max' },
  { figure: 'nutHeight', want: [1.6, 2, 2.4, 3.2], from: 'ISO 4032, m max' },
  { figure: 'setKey', want: [0.9, 1.3, 1.5, 2], from: 'ISO 4026, s nominal; the same in public tables of DIN 913' },
] as const)('$figure, $from', ({ figure, want }) => {
  expect(SIZES.map((size) => threads[size][figure].value)).toEqual(want);
});

test('pitch and diameter give the minor diameters of ISO 724', () => {
  // ISO 724: 1.567, 2.013, 2.459, 3.242, to three decimals; d1 = d − 1.25 H, H = P √3 / 2 (ISO 68-1).
  const minor = SIZES.map(
    (size) => threads[size].diameter.value - 1.25 * (Math.sqrt(3) / 2) * threads[size].pitch.value,
  );
  expect(minor.map((d) => Number(d.toFixed(3)))).toEqual([1.567, 2.013, 2.459, 3.242]);
});

test('a pilot lies between minor and outside diameter', () => {
  // Common practice: a forming screw needs both something to press into and somewhere to go.
  for (const [index, minor] of [1.567, 2.013, 2.459, 3.242].entries()) {
    const { pilot, diameter } = threads[SIZES[index]!];
    expect(pilot.value).toBeGreaterThan(minor);
    expect(pilot.value).toBeLessThan(0.9 * diameter.value);
  }
});

test.for([
  { size: 'M3', sharp: 6.72, least: 5.54, height: 1.86, key: 2 },
  { size: 'M4', sharp: 8.96, least: 7.53, height: 2.48, key: 2.5 },
] as const)('countersunk $size, ISO 10642', ({ size, sharp, least, height, key }) => {
  // Public tables: 6.72/8.96 to the sharp corner, k 1.86/2.48, s 2/2.5. The least actual heads, 5.54/7.53, are from memory.
  const thread = threads[size];
  expect(thread.sunkHeight.value).toBe(height);
  expect(thread.sunkKey.value).toBe(key);
  expect(thread.sunkHead.value).toBeGreaterThan(least);
  expect(thread.sunkHead.value).toBeLessThan(sharp);
  // A 90° head: its cone from the shank to the sharp corner is as high as the head.
  expect((sharp - thread.diameter.value) / 2).toBeCloseTo(height, 9);
});

test('small countersunk screws are not passed off as the standard', () => {
  for (const size of ['M2', 'M2.5'] as const) expect(threads[size].sunkHead.source).toMatch(/from memory/);
});

test('stocked lengths are steps of ISO 888, in order, and reach past the nut', () => {
  // ISO 888 series to 40 without the lengths in brackets, from memory.
  const series = [2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40];
  for (const size of SIZES) {
    const thread = threads[size];
    for (const { value } of [thread.capLengths, thread.sunkLengths, thread.setLengths]) {
      expect(value.every((length) => series.includes(length))).toBe(true);
      expect([...value].sort((a, b) => a - b)).toEqual(value);
      expect(value.at(-1)!).toBeGreaterThan(thread.nutHeight.value + thread.pitch.value);
    }
    // ISO 10642 counts the head into the length.
    expect(thread.sunkLengths.value[0]!).toBeGreaterThan(thread.sunkHeight.value);
  }
});

test('each screw has its key, and a key is a blunted hexagon', () => {
  for (const size of SIZES) {
    const { capKey, sunkKey, setKey } = threads[size];
    for (const { value } of [capKey, sunkKey, setKey]) expect(Object.keys(keys)).toContain(String(value));
  }
  for (const { flats, corners, longArm, shortArm } of Object.values(keys)) {
    // A sharp hexagon is 2/√3 across corners; ISO 2936 lets the corners be rounded, never below 1.08 of the flats (from memory).
    expect(corners.value / flats.value).toBeLessThan(2 / Math.sqrt(3));
    expect(corners.value / flats.value).toBeGreaterThan(1.08);
    expect(longArm.value).toBeGreaterThan(2 * shortArm.value);
  }
});

test('pins, ISO 2338: Ø2 from 6 to 20, Ø3 from 8 to 30 (from memory)', () => {
  expect([pins['2'].diameter.value, pins['2'].lengths.value[0], pins['2'].lengths.value.at(-1)]).toEqual([2, 6, 20]);
  expect([pins['3'].diameter.value, pins['3'].lengths.value[0], pins['3'].lengths.value.at(-1)]).toEqual([3, 8, 30]);
});

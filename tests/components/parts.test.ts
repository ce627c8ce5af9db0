import { expect, test } from 'vitest';
import { emitters, keys, pins, receivers, threads } from '../../src/components/index.js';

test('every figure says where it comes from', () => {
  for (const catalogue of [emitters, receivers, threads, pins, keys]) {
    for (const [name, part] of Object.entries(catalogue)) {
      for (const [figure, datum] of Object.entries(part)) {
        if (figure === 'title') continue;
        const { value, source } = datum as { value: number | number[]; source: string };
        expect([value].flat().every(Number.isFinite), `${name}.${figure}`).toBe(true);
        expect(source.length, `${name}.${figure}`).toBeGreaterThan(3);
      }
    }
  }
});

test.for([
  // By hand, brass at 8.5 g/cm³ (handbook value, from memory): π/4 · d² · l · 8.5e-3.
  { name: 'barrel-6x12', most: 2.884 },
  { name: 'barrel-6x10', most: 2.403 },
  { name: 'barrel-8x13', most: 5.554 },
] as const)('$name weighs what solid brass of its size does: $most g', ({ name, most }) => {
  expect(emitters[name].massG.value).toBeCloseTo(most, 1);
});

test('the default barrel stays inside the ranges of hobby parts', () => {
  // Common practice: Ø6 × 10–15, 0.5–2 mrad, 15–40 mA at 3–5 V, boresight errors of 0.5–3°.
  const { diameter, length, divergenceMrad, currentMa, voltageV, boresightSigmaDeg } = emitters['barrel-6x12'];
  expect(diameter.value).toBe(6);
  for (const [value, least, most] of [
    [length.value, 10, 15],
    [divergenceMrad.value, 0.5, 2],
    [currentMa.value, 15, 40],
    [voltageV.value, 3, 5],
    // 95 % of a Rayleigh distribution lie below σ √(2 ln 20) = 2.4477 σ (by hand).
    [boresightSigmaDeg.value * 2.4477, 0.5, 3],
  ] as const) {
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
  }
});

test('LED divergences are the datasheets’ angles in mrad', () => {
  // By hand: 35° · π/180 = 0.610865 rad; 30° = 0.523599; 20° = 0.349066.
  expect(emitters['led-5-infrared'].divergenceMrad.value).toBeCloseTo(610.865, 0);
  expect(emitters['led-3-red'].divergenceMrad.value).toBeCloseTo(523.599, 0);
  expect(emitters['led-5-red'].divergenceMrad.value).toBeCloseTo(349.066, 0);
});

test('infrared parts say that they cannot be seen', () => {
  for (const { title, wavelengthNm } of Object.values(emitters)) {
    // CIE: light beyond about 780 nm is not seen; from memory.
    expect(/infrared/.test(title)).toBe(wavelengthNm.value > 780);
  }
});

test('TO-92 by its public outline: 4.58 × 4.58 × 3.6–3.9, legs 0.46 at 1.27, formed 2.54', () => {
  const { width, height, depth, legs, legWidth, legPitch } = receivers['three-leg'];
  expect([width.value, height.value, legs.value, legWidth.value, legPitch.value]).toEqual([4.58, 4.58, 3, 0.46, 1.27]);
  expect(depth.value).toBeGreaterThanOrEqual(3.6);
  expect(depth.value).toBeLessThanOrEqual(3.9);
  expect(receivers['three-leg-formed'].legPitch.value).toBe(2.54);
});

test('side-looker by its public outline: 4.5 × 4.8 × 2.4, lens Ø3.5, legs 0.45 at 2.54', () => {
  const { width, height, depth, detectorRadius, legWidth, legPitch } = receivers['side-looker'];
  expect([width.value, height.value, depth.value, 2 * detectorRadius.value, legWidth.value, legPitch.value]).toEqual([
    4.5, 4.8, 2.4, 3.5, 0.45, 2.54,
  ]);
});

test('legs stand inside their body, or are spread on purpose', () => {
  const { width, legs, legPitch, legWidth } = receivers['three-leg'];
  expect((legs.value - 1) * legPitch.value + legWidth.value).toBeLessThan(width.value);
});

import { describe, expect, test } from 'vitest';
import { coneRadius, halfDivergence, radiusAt, rayleighLength, WIDTHS } from '../../src/optics/beam.js';

describe('a Gaussian beam of 650 nm, worked out for this project from ISO 11146’s formulas', () => {
  test.for([
    { waist: 0.25, quality: 1, zr: 302.0762, mrad: 0.827606, w300: 0.35234, w1000: 0.864541 },
    { waist: 1, quality: 1, zr: 4833.2195, mrad: 0.206901, w300: 1.001925, w1000: 1.02118 },
    { waist: 1, quality: 1.5, zr: 3222.1463, mrad: 0.310352, w300: 1.004325, w1000: 1.047052 },
  ])('w0 $waist, M² $quality', ({ waist, quality, zr, mrad, w300, w1000 }) => {
    const beam = { waist, quality, wavelengthNm: 650 };
    expect(rayleighLength(beam)).toBeCloseTo(zr, 3);
    expect(1000 * halfDivergence(beam)).toBeCloseTo(mrad, 5);
    expect(radiusAt(beam, 300)).toBeCloseTo(w300, 5);
    expect(radiusAt(beam, 1000)).toBeCloseTo(w1000, 5);
    expect(radiusAt(beam, rayleighLength(beam))).toBeCloseTo(Math.SQRT2 * waist, 12);
  });

  test('other widths of the same beam (ISO 11146, from memory)', () => {
    expect(WIDTHS.fwhm).toBeCloseTo(1.17741, 5);
    expect(WIDTHS.radius99).toBeCloseTo(1.517427, 6);
    expect(WIDTHS.radius1e).toBeCloseTo(Math.SQRT1_2, 6);
    // By their meaning: half the irradiance at FWHM/2, all but 1 % of the power within the radius.
    expect(Math.exp(-2 * (WIDTHS.fwhm / 2) ** 2)).toBeCloseTo(0.5, 12);
    expect(Math.exp(-2 * WIDTHS.radius99 ** 2)).toBeCloseTo(0.01, 12);
  });

  test('no beam with M² under 1, no waist of 0', () => {
    expect(() => rayleighLength({ waist: 1, quality: 0.9, wavelengthNm: 650 })).toThrow('quality');
    expect(() => rayleighLength({ waist: 0, quality: 1, wavelengthNm: 650 })).toThrow('waist');
  });
});

test('a module by spot and divergence is never narrower than the beam with that waist and far field', () => {
  const beam = { waist: 0.6, quality: 1.4, wavelengthNm: 650 };
  const module = { diameter: 2 * beam.waist, divergenceMrad: 2000 * halfDivergence(beam) };
  for (const z of [0, 50, 300, 2000]) expect(coneRadius(module, z)).toBeGreaterThanOrEqual(radiusAt(beam, z) - 1e-12);
  // 2 mm and 1 mrad at 165 mm: 2.165 across.
  expect(coneRadius({ diameter: 2, divergenceMrad: 1 }, 165)).toBeCloseTo(1.0825, 9);
});

import { describe, expect, test } from 'vitest';
import { plastics } from '../../src/materials/index.js';
import type { Plastic } from '../../src/materials/plastic.js';
import { plasticFigures, presetKey } from '../../src/spec/figures.js';
import { readPreset } from '../../src/spec/read-preset.js';

const all = Object.entries(plastics) as [string, Plastic][];

describe.for(all)('%s', ([, plastic]) => {
  const figures = Object.entries(plastic).filter(([key]) => key !== 'title') as [string, Plastic['modulus']][];

  test('every figure is a number above zero and says where it comes from', () => {
    expect(figures).toHaveLength(13);
    for (const [key, { value, source }] of figures) {
      expect(value, key).toBeGreaterThan(0);
      expect(value, key).toBeLessThan(Infinity);
      expect(source.length, key).toBeGreaterThan(20);
    }
  });

  // Law: less strain is allowed the longer it is held; none of it may reach yield.
  test('strains rank: years < minutes < yield', () => {
    expect(plastic.sustainedStrain.value).toBeLessThan(plastic.shortTermStrain.value);
    expect(plastic.shortTermStrain.value).toBeLessThan(plastic.yieldStrain.value);
  });

  test('Poisson’s ratio is that of a solid, strength across layers no more than in plane', () => {
    expect(plastic.poisson.value).toBeLessThan(0.5);
    expect(plastic.acrossLayers.value).toBeLessThanOrEqual(1);
  });
});

// Typical ranges of the moulded plastics as handbooks give them, from memory: modulus [GPa], density [g/cm³], expansion [1e-6/K].
test.for([
  ['pla', 2.7, 3.8, 1.21, 1.27, 65, 105],
  ['petg', 1.7, 2.3, 1.25, 1.3, 55, 75],
  ['abs', 1.6, 2.8, 1.02, 1.12, 65, 115],
  ['asa', 1.8, 2.8, 1.05, 1.15, 75, 110],
  ['pa12', 1, 1.9, 0.98, 1.05, 80, 125],
  ['pc', 1.9, 2.6, 1.18, 1.23, 60, 75],
  ['pp', 0.6, 1.8, 0.88, 0.93, 70, 160],
] as const)('%s lies in the handbook’s ranges (from memory)', ([name, e0, e1, d0, d1, a0, a1]) => {
  const { modulus, densityGcm3, expansion } = plastics[name];
  for (const [value, least, most] of [
    [modulus.value / 1000, e0, e1],
    [densityGcm3.value, d0, d1],
    [expansion.value * 1e6, a0, a1],
  ] as const) {
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
  }
});

// A coupon's own figure takes the place of any planning value, and of that one alone. A tenth more keeps the strains in their order.
test.for(Object.keys(plasticFigures) as (keyof typeof plasticFigures)[])('a preset changes %s', (name) => {
  const value = 1.1 * plastics.petg[name].value;
  const text = `grid: { rows: 1, columns: 2, pitch: 24 }\nmaterial: { base: petg, ${presetKey(name)}: ${value} }\n`;
  const { plastic } = readPreset(text, 'coupon.yaml').material;
  for (const [key, datum] of Object.entries(plastic))
    if (key === name) expect(datum).toMatchObject({ value });
    else if (key !== 'title') expect(datum, key).toEqual(plastics.petg[key as keyof Plastic]);
});

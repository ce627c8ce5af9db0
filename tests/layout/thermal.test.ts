import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/layout/lay-out.js';
import { leftWarm } from '../../src/layout/thermal.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { deg, type Rad } from '../../src/units.js';
import { spec } from '../checks/sound-figures.js';

const air = (coldest: number, warmest: number) => ({ ...spec, surroundings: { coldest, warmest } });
test('push left after a year at 35 °C: .807656 of the modulus (225 MPa at 78 °C), creep as after 2^1.2 years: 1/(1 + .12 · 20125.2^.22)', () => {
  // 20125.2^.22 = e^(.22 · 9.90973) = 8.84755; 1/(1 + 1.061705) = .485035; · .807656 = .391742.
  expect(leftWarm(air(15, 35))).toBeCloseTo(0.391742, 4);
  expect(leftWarm(air(-20, 23))).toBeCloseTo(1 / (1 + 0.12 * 8760 ** 0.22), 9);
});

describe('the solved leaf', () => {
  const text = (warmest: number, more = '') =>
    `grid: { rows: 2, columns: 3, pitch: 24 }\nsurroundings: { warmest: ${warmest} }\n${more}`;
  const preload = (warmest: number, more = '') => {
    const spec = readPreset(text(warmest, more), 'x.yaml');
    const layout = layOut(spec);
    return { layout, spec, leaf: layout.mount.leaf };
  };
  const pinned = 'leaf: { layout: folded, legs: 2, length: 8, thickness: 0.86 }\n';
  test('keeps more push in hand for warmer air', () => {
    const [cool, warm] = [preload(23, pinned).leaf, preload(40, pinned).leaf];
    expect(deg(warm.preload)).toBeGreaterThan(deg(cool.preload) + 0.1);
  });
  test('where no leaf can keep it, it is solved as for a room: the check says so', () => {
    expect(preload(78).leaf).toEqual(preload(23).leaf);
  });
  test('what is kept is what the warmest air asks: K · flex · left is at least the moment asked for', () => {
    const { layout, spec, leaf } = preload(40, pinned);
    const { demands } = layout;
    // Two g of the moving mass, or .15 N of wires at the lever.
    const moment = Math.max(2 * 9806.65 * demands.movingMass * demands.massLever, 0.15 * leaf.lever);
    const length = 2 * leaf.length + (Math.PI * leaf.legPitch) / 2;
    const stiffness = (1900 * leaf.width * leaf.thickness ** 3) / 12 / length;
    // Plate action makes it stiffer by up to 1/(1 − ν²), what the ends give less: within 18 % of bare beam theory.
    const kept = stiffness * (leaf.preload as Rad) * leftWarm(spec);
    expect(kept).toBeGreaterThan(moment / 1.18);
    expect(kept).toBeLessThan(moment * 1.18);
  });
});

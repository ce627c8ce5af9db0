import { describe, expect, test } from 'vitest';
import { temperature } from '../../src/checks/temperature.js';
import { layOut } from '../../src/layout/lay-out.js';
import { lightBudget } from '../../src/layout/light/budget.js';
import { thermalFigures } from '../../src/layout/thermal.js';
import { modulusAt } from '../../src/mechanics/temperature.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { deg } from '../../src/units.js';
import { leaf, leafFigures, light, spec, thermal } from './sound-figures.js';

const ask = (changed: Partial<typeof thermal>) =>
  temperature.run({ spec, light, leaf, leafFigures, thermal: { ...thermal, ...changed } });
const codes = (...args: Parameters<typeof ask>) => ask(...args).map(({ code, severity }) => `${severity} ${code}`);

test('a room leaves notes only', () => expect(codes({})).toEqual(['note temperature/aim']));

describe('softening: the test plastic gives way at 78 °C', () => {
  test('from 20 K below on a warning, from there on an error', () => {
    expect(codes({ warmest: 58 })).toEqual(['note temperature/aim']);
    expect(codes({ warmest: 59 })).toEqual(['warning temperature/softens', 'note temperature/aim']);
    expect(codes({ warmest: 78 })).toEqual(['error temperature/softens', 'note temperature/aim']);
  });
});

test('a drift beyond what keeps a receiver lit is a warning', () => {
  // The sound light stays lit over 1.9 mm.
  expect(codes({ shift: 1.89 })).toEqual(['note temperature/aim']);
  expect(codes({ shift: 1.91 })).toEqual(['warning temperature/aim']);
});

// The sound leaf has 1.4° and needs 1.2° with .53 left: 1.2 · .53 / .4543 = 1.39996°, with .4542 left 1.40027°.
test('a spring that is warm pushes less: what shock and wires take must be left after a year there', () => {
  expect(codes({ leftWarm: 0.4543 })).toEqual(['note temperature/aim']);
  expect(codes({ leftWarm: 0.4542 })).toEqual(['note temperature/aim', 'warning temperature/push']);
});

describe('modulus when warm, by hand', () => {
  const at = (temperature: number) => modulusAt({ modulus: 2025, softens: 63, at: temperature });
  test('straight from 23 °C to .45 MPa over .2 % (ISO 75-1 B, from memory) where it softens', () => {
    expect(at(23)).toBe(2025);
    expect(at(43)).toBeCloseTo((2025 + 225) / 2, 9);
    expect(at(63)).toBeCloseTo(225, 9);
    expect(at(90)).toBeCloseTo(225, 9);
    expect(at(-10)).toBe(2025);
  });
  test('a plastic that softens below 23 °C is refused', () => {
    expect(() => modulusAt({ modulus: 2000, softens: 20, at: 30 })).toThrow('softens');
  });
});

describe('from a preset', () => {
  const figures = (text: string) => {
    const layout = layOut(readPreset(`grid: { rows: 2, columns: 3, pitch: 24 }\n${text}`, 'tested.yaml'));
    const lever = Math.max(...lightBudget(layout).aim.lines.map((line) => line.lever));
    return { layout, lever, ...thermalFigures({ ...layout, lever }) };
  };
  test('drift: (α − 12e-6) · screw between pin and nut / lever · step', () => {
    const { layout, lever, drift, shift, step } = figures('surroundings: { coldest: 18, warmest: 50 }\n');
    const { adjust, pin, leaf } = layout.mount;
    // The steel's ends: an M2.5 nut, 2 high (ISO 4032), and a Ø3 pin.
    expect(step).toBe(30);
    const alpha = layout.spec.material.plastic.expansion.value;
    expect(drift).toBeCloseTo((((alpha - 12e-6) * (adjust.nutFloor + 2 - (pin.at[1] - 1.5))) / leaf.lever) * 30, 12);
    expect(shift).toBeCloseTo(drift * lever, 12);
    // PETG beside steel over some ten millimetres: hundredths of a degree.
    expect(deg(drift)).toBeGreaterThan(0.01);
    expect(deg(drift)).toBeLessThan(0.2);
  });
  test('a cold place counts as well', () => {
    expect(figures('surroundings: { coldest: -10, warmest: 25 }\n').step).toBe(30);
  });
  test('a range written backwards is one mistake', () => {
    expect(() =>
      readPreset('grid: { rows: 1, columns: 2, pitch: 24 }\nsurroundings: { coldest: 30, warmest: 10 }\n', 'a.yaml'),
    ).toThrow('1 mistake');
  });
});

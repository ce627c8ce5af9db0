import { describe, expect, test } from 'vitest';
import { signal } from '../../src/checks/signal.js';
import { layOut } from '../../src/layout/lay-out.js';
import { lightBudget } from '../../src/layout/light/budget.js';
import type { SignalFigures } from '../../src/layout/light/signal.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { light, spec } from './sound-figures.js';

const ask = (changed: Partial<SignalFigures>) =>
  signal.run({ spec, light: { ...light, signal: { ...light.signal, ...changed } } });
const codes = (changed: Partial<SignalFigures>) => ask(changed).map(({ code, severity }) => `${severity} ${code}`);
const lit = (mA: number) => ({ ...light.signal.lines[0], lit: mA });

test('a beam that lights its receiver a hundred times over is a note', () => {
  expect(codes({})).toEqual(['note light/signal']);
  expect(ask({})[0]!.message).toContain('99.94 %');
});

describe('too little light', () => {
  // .35 mA pull the pin low: twice that should be there.
  test('between once and twice: a warning', () => {
    expect(codes({ lines: [lit(0.69), lit(5)] })).toEqual(['warning light/dim']);
    expect(codes({ lines: [lit(0.71), lit(5)] })).toEqual(['note light/signal']);
  });
  test('less than once: an error that names the dimmest line', () => {
    const [only] = ask({ lines: [lit(5), { ...lit(0.34), line: 'row' }] });
    expect(only).toMatchObject({ code: 'light/dim', severity: 'error', subject: 'rows', measured: 0.34, limit: 0.35 });
  });
});

test('a filtered body behind a red beam sees nothing', () => {
  const [only] = ask({ response: 0, detector: { ...light.signal.detector, filterFromNm: 780 } });
  expect(only).toMatchObject({ code: 'light/blind', severity: 'error', limit: 780 });
});

describe('light around', () => {
  test('more than a third of what keeps a pin dark: a warning; all of it: an error', () => {
    expect(codes({ ambient: { diffuse: 0.049, direct: 0 } })).toEqual(['note light/signal']);
    expect(codes({ ambient: { diffuse: 0.051, direct: 0 } })).toEqual(['note light/signal', 'warning light/ambient']);
    expect(codes({ ambient: { diffuse: 0.15, direct: 0 } })).toEqual(['note light/signal', 'error light/ambient']);
  });
  test('the sun in a tube is a warning, whatever the tube', () => {
    expect(codes({ ambient: { diffuse: 0.01, direct: 100 } })).toEqual(['note light/signal', 'warning light/sun']);
  });
});

describe('from a preset', () => {
  const figures = (text: string) =>
    lightBudget(layOut(readPreset(`grid: { rows: 2, columns: 3, pitch: 24 }\n${text}`, 'tested.yaml'))).signal;
  test('5 mW in the red on a bare detector, by hand', () => {
    const { lines, levels } = figures('');
    // w about 1.05 on R .5: 36 % of 5 mW on .785 mm², 2300 W/m²; .2 mA each, .6 in the red: 280 mA.
    expect(lines[0].lit).toBeGreaterThan(250);
    expect(lines[0].lit).toBeLessThan(300);
    expect(levels.dark).toBeCloseTo(0.15, 9);
    expect(lines[0].toTake).toBeGreaterThan(0.999);
    // It reads lit until .25 % of its light is left: exp(−2 d²/w²) = .0025 at 1.73 w, about 1.8 mm and the detector's own radius helps.
    expect(lines[0].staysLit).toBeGreaterThan(1.7);
    expect(lines[0].staysLit).toBeLessThan(2.3);
  });
  test('the filtered receiver is blind to it', () => {
    expect(figures('receivers: { part: side-looker-filtered }').response).toBe(0);
  });
});

import { expect, test } from 'vitest';
import type { PresetError } from '../../src/errors.js';
import { layOut } from '../../src/layout/lay-out.js';
import { readPreset } from '../../src/spec/read-preset.js';

const pp = (more = '') =>
  layOut(readPreset(`grid: { rows: 3, columns: 4, pitch: 24 }\nmaterial: pp\n${more}`, 'soft.yaml'));

/** The figures that a refusal says would do, by key. */
function advised(): ReadonlyMap<string, number> {
  try {
    pp();
  } catch (error) {
    const { mistakes } = error as PresetError;
    return new Map(mistakes.map(({ path, hint }) => [path, Number(/[\d.]+/.exec(hint ?? '')?.[0])]));
  }
  throw new Error('PP was not refused');
}

// A refusal asks for everything that would help, room by room: seconds.
test('PP is refused at ±3° with the tilt and the width that would do: each does', { timeout: 60_000 }, () => {
  const figures = advised();
  expect(figures.get('aim.tilt')).toBeLessThan(3);
  expect(() => pp(`aim: { tilt: ${figures.get('aim.tilt')} }\n`)).not.toThrow();
  expect(() => pp(`leaf: { width: ${figures.get('leaf.width')} }\n`)).not.toThrow();
});

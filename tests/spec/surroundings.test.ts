import { expect, test } from 'vitest';
import type { PresetError } from '../../src/errors.js';
import { readPreset } from '../../src/spec/read-preset.js';

const mistakes = (surroundings: string) => {
  try {
    readPreset(`grid: { rows: 2, columns: 3, pitch: 24 }\nsurroundings: ${surroundings}\n`, 'tried.yaml');
    return [];
  } catch (error) {
    return (error as PresetError).mistakes.map(({ path, message }) => [path, message]);
  }
};

test.for([
  ['{ coldest: 38 }', 'surroundings.coldest', /38 °C, is warmer than the warmest, 35 °C unless the preset says/],
  ['{ warmest: 10 }', 'surroundings.warmest', /15 °C unless the preset says, is warmer than the warmest, 10 °C/],
  ['{ coldest: 30, warmest: 20 }', 'surroundings.coldest', /30 °C, is warmer than the warmest, 20 °C$/],
] as const)('%s is refused at %s', ([written, path, message]) => {
  const found = mistakes(written);
  expect(found.map(([at]) => at)).toEqual([path]);
  expect(found[0]![1]).toMatch(message);
});

test.for(['{ warmest: 22 }', '{ coldest: 5 }', '{ coldest: 20, warmest: 20 }'])('%s is right', (written) => {
  expect(mistakes(written)).toEqual([]);
});

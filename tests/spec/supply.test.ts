import { expect, test } from 'vitest';
import type { PresetError } from '../../src/errors.js';
import { readPreset } from '../../src/spec/read-preset.js';

const read = (supply: string) =>
  readPreset(`grid: { rows: 2, columns: 3, pitch: 24 }\nsupply: ${supply}\n`, 'tried.yaml');

test.for([
  ['{ battery_mah: 2500 }', 'supply.battery_v'],
  ['{ battery_v: 3.7 }', 'supply.battery_mah'],
] as const)('%s without the other is refused at %s', ([written, path]) => {
  try {
    read(written);
    expect.unreachable();
  } catch (error) {
    expect((error as PresetError).mistakes.map((one) => one.path)).toEqual([path]);
  }
});

test('a battery stated by both', () => {
  expect(read('{ battery_mah: 2500, battery_v: 3.7 }').supply).toMatchObject({ batteryMah: 2500, batteryV: 3.7 });
});

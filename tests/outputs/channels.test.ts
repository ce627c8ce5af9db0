import { describe, expect, test } from 'vitest';
import { layScan, scanLines } from '../../src/layout/scan.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { readPreset } from '../../src/spec/read-preset.js';
import type { Spec } from '../../src/spec/spec.js';
import { sampleInputs, sampleSpec } from './sample-kit.js';

async function filesOf(spec: Spec) {
  const { files } = makeOutputs({ ...(await sampleInputs([])), spec });
  const text = (path: string) => new TextDecoder().decode(files.find((file) => file.path === path)!.bytes);
  return { csv: text('channels.csv'), json: JSON.parse(text('kit.json')) };
}
const preset = (scan: string) => readPreset(`grid: { rows: 3, columns: 9, pitch: 22 }\nscan: ${scan}\n`, 'panel.yaml');

describe('channels of a panel', () => {
  test('channels.csv by hand: one board a side, the columns’ near, the rows’ right; 1 + 10 + 12 µs, and 12 more for the second', async () => {
    const { csv } = await filesOf(sampleSpec);
    // Address 0: column 0 at 23, row 0 at 35; address 1: column 1 at 35 + 23.
    expect(csv.split('\r\n')).toEqual([
      'beam,line,index,board,multiplexer,address,pin,read_at_us,pull_up_ohm,lit_level,signal_wire,receiver_wires,emitter_wires',
      // Two wires an emitter, W1 to W6; then plus, minus and signal of each receiver.
      'column-0,column,0,near,0,0,,23,10000,low,W9,W7 W8,W1 W2',
      'column-1,column,1,near,0,1,,58,10000,low,W12,W10 W11,W3 W4',
      'row-0,row,0,right,1,0,,35,10000,low,W15,W13 W14,W5 W6',
      '',
    ]);
  });

  test('kit.json has the same rows, and the scan: 58 µs; known after 3 scans and a half, less the earlier reading', async () => {
    const { csv, json } = await filesOf(sampleSpec);
    expect(json.channels).toHaveLength(3);
    for (const [i, line] of csv.split('\r\n').slice(1, -1).entries())
      expect(
        Object.values(json.channels[i])
          .map((cell) => cell ?? '')
          .join(','),
      ).toBe(line);
    // Keys: (column 0, row 0) sampled first at 11, (column 1, row 0) at 23: mean 3.5 · 58 − 17, worst 4 · 58 − 11.
    expect(json.scan).toEqual({
      time_us: 58,
      rate_hz: 17241.379,
      latency_mean_ms: 0.186,
      latency_worst_ms: 0.221,
      addresses: 2,
      multiplexers: ['near', 'right'],
      pins: { address: 3, enable: 0, input: 2, direct: 0, all: 5 },
      pull_up_ma: 0.45,
    });
    expect(json.spec.scan).toMatchObject({ channels: 8, address: 'shared', settle_us: 10, lit_level: 'low' });
  });

  test('lines carry the beams’ names, receivers stand opposite the emitters', () => {
    const spec = readPreset(
      'grid: { rows: 2, columns: 1, pitch: 22 }\nemitters: { columns_from: near, rows_from: right }\n',
      'panel.yaml',
    );
    expect(scanLines(spec).map(({ name, board }) => `${name} ${board}`)).toEqual([
      'column-0 far',
      'row-0 left',
      'row-1 left',
    ]);
  });

  test('a preset’s keys reach the plan', () => {
    const plan = layScan(
      preset(
        '{ channels: 16, address: single, spare_pins: 3, address_us: 2, settle_us: 20, read_us: 30, light_us: 150, debounce: 5, pull_up_ohm: 4700, supply_v: 3.3, lit_level: high }',
      ),
    );
    // By hand: the three rows go to spare pins and save their multiplexer: 9 (2 + 20 + 30 + 150) + 150 + 3 · 30 = 2058 µs.
    expect(plan.multiplexers).toEqual(['near']);
    expect(plan.pins).toEqual({ address: 4, enable: 0, input: 1, direct: 3, all: 8 });
    expect(plan.scanTime).toBeCloseTo(2058e-6, 12);
    expect(plan.table.every(({ lowWhileLit, pullUp }) => !lowWhileLit && pullUp === 4700)).toBe(true);
    expect(plan.pullUpCurrent).toBeCloseTo(2.8 / 4700, 12);
    // Debounce: column 0 is sampled first, at 172: worst 6 scans less that.
    expect(plan.latency.worst).toBeCloseTo(6 * 2058e-6 - 172e-6, 12);
  });

  test('defaults: 9 columns on two multiplexers of 8, spread 5 and 4', () => {
    const { table, multiplexers } = layScan(preset('{}'));
    expect(multiplexers).toEqual(['near', 'near', 'right']);
    expect(
      table.map(({ place }) => (place.kind === 'multiplexer' ? `${place.multiplexer}.${place.address}` : 'pin')),
    ).toEqual([...['0.0', '0.1', '0.2', '0.3', '0.4'], ...['1.0', '1.1', '1.2', '1.3'], ...['2.0', '2.1', '2.2']]);
  });

  test.for([
    '{ channels: 12 }',
    '{ address: both }',
    '{ debounce: 0 }',
    '{ debounce: 2.5 }',
    '{ read_us: 0 }',
    '{ settle: 3 }',
  ])('a wrong scan is a mistake with its place: %s', (scan) => {
    expect(() => preset(scan)).toThrow(/1 mistake/);
  });
});

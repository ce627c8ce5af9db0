import { expect, test } from 'vitest';
import { supply } from '../../src/checks/supply.js';
import type { Kit } from '../../src/kit/types.js';
import { supplyFigures } from '../../src/layout/supply.js';
import { translation } from '../../src/solid/matrix.js';
import type { Spec } from '../../src/spec/spec.js';
import { spec } from './sound-figures.js';

const source = 'this test';
const beam = {
  name: 'column-0',
  line: 'column',
  index: 0,
  from: [0, 100, 0],
  to: [0, 0, 0],
  diameter: 2,
  corridor: 3,
  emitter: '',
  receiver: '',
} as const;
/** One post 700 mm from the emitter: a metre of wire there, another back. */
const kit = {
  beams: [beam],
  placements: [
    {
      name: 'far-post',
      part: 'corner-post',
      matrix: translation([700, 100, 0]),
      rides: null,
      touches: [],
      overlaps: [],
    },
  ],
} as unknown as Kit;

const tried = (change: Partial<Spec>, emitter: Readonly<Record<string, number>> = {}) => {
  const figures = Object.fromEntries(
    Object.entries({ currentMa: 30, voltageV: 5, ...emitter }).map(([key, value]) => [key, { value, source }]),
  );
  return supply.run({
    kit,
    spec: { ...spec, ...change, emitters: { ...spec.emitters, part: { ...spec.emitters.part, ...figures } } },
  });
};
const only = (codes: readonly { readonly code: string }[]) => codes.map(({ code }) => code);
const wires = { gauge: 26, logicMa: 100, batteryMah: undefined, batteryV: undefined };
const scan = { ...spec.scan, supplyV: 5, pullUpOhm: 10_000, lightUs: 0 };

test('a sound supply gives a note with the current by hand', () => {
  const found = tried({ supply: wires, scan });
  expect(only(found)).toEqual(['supply/current']);
  // Lines of the figures' grid: each 30 mA and 5 V over 10 kΩ, .5 mA; logic 100.
  const lines = spec.grid.columns.length + spec.grid.rows.length;
  expect(found[0]!.measured).toBeCloseTo(lines * 30.5 + 100, 9);
});

test('thin wires and a hungry emitter: the drop by hand, .3 A over 2 m of gauge 32 at 40 °C', () => {
  const found = tried({ supply: { ...wires, gauge: 32 }, scan }, { currentMa: 300 });
  expect(only(found)).toContain('supply/drop');
  // 538.3 Ω/km at 20 °C (tables after ASTM B258, from memory), 7.86 % more at 40 °C: .5806 Ω/m · 2 m · .3 A = .348 V.
  expect(found.find(({ code }) => code === 'supply/drop')!.measured).toBeCloseTo(0.348, 2);
});

test('a supply below the emitters’ voltage', () => {
  expect(only(tried({ supply: wires, scan: { ...scan, supplyV: 3.3 } }))).toContain('supply/low');
});

test('a battery that is empty within the hour, and one that is not', () => {
  const battery = (batteryMah: number) =>
    tried({ supply: { ...wires, batteryMah, batteryV: 3.7 }, scan }, { currentMa: 30 });
  expect(only(battery(100))).toContain('supply/battery');
  expect(only(battery(20_000))).not.toContain('supply/battery');
});

test('an emitter of 2 V on 5 V at 30 mA asks for 100 Ω', () => {
  expect(tried({ supply: wires, scan }, { voltageV: 2 })[0]!.message).toContain('each emitter needs 100 Ω');
});

test('lit line by line with a shared address, one emitter of each multiplexer draws at a time', () => {
  // 20 lines on multiplexers of 8: three of them, so 3 · 30 mA at once; with a single address one.
  const grid = {
    ...spec.grid,
    columns: Array.from({ length: 12 }, () => 22),
    rows: Array.from({ length: 8 }, () => 22),
  };
  const lit = (address: 'shared' | 'single') =>
    supplyFigures(
      {
        ...spec,
        grid,
        scan: { ...scan, lightUs: 200, channels: 8, address, sparePins: 0 },
        emitters: { ...spec.emitters, part: { ...spec.emitters.part, currentMa: { value: 30, source } } },
      },
      0,
    ).emitters;
  expect(lit('shared')).toBeCloseTo(0.09, 12);
  expect(lit('single')).toBeCloseTo(0.03, 12);
});

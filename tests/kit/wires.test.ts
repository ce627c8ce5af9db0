import { expect, test } from 'vitest';
import type { Beam, Placement } from '../../src/kit/types.js';
import { netsOf, wiresOf } from '../../src/kit/wires.js';
import { translation } from '../../src/solid/matrix.js';
import { readPreset } from '../../src/spec/read-preset.js';

const specOf = (grid: string, more = '') => readPreset(`grid: { ${grid}, pitch: 22 }\n${more}`, 'panel.yaml');
const said = (spec: ReturnType<typeof specOf>) => netsOf(spec).map(({ id, from, to }) => `${id}: ${from} > ${to}`);

test('a row and two columns, by hand: two wires an emitter, three a receiver, six a multiplexer, two poles each', () => {
  expect(said(specOf('rows: 1, columns: 2'))).toEqual([
    'W1: column-0 emitter plus > supply plus',
    'W2: column-0 emitter minus > supply minus',
    'W3: column-1 emitter plus > supply plus',
    'W4: column-1 emitter minus > supply minus',
    'W5: row-0 emitter plus > supply plus',
    'W6: row-0 emitter minus > supply minus',
    'W7: column-0 receiver plus > supply plus',
    'W8: column-0 receiver minus > supply minus',
    'W9: column-0 receiver signal > multiplexer 0 Y0',
    'W10: column-1 receiver plus > supply plus',
    'W11: column-1 receiver minus > supply minus',
    'W12: column-1 receiver signal > multiplexer 0 Y1',
    'W13: row-0 receiver plus > supply plus',
    'W14: row-0 receiver minus > supply minus',
    'W15: row-0 receiver signal > multiplexer 1 Y0',
    'W16: controller A0 > multiplexer 0 A0',
    'W17: controller A1 > multiplexer 0 A1',
    'W18: controller A2 > multiplexer 0 A2',
    'W19: multiplexer 0 Z > controller IN0',
    'W20: multiplexer 0 plus > supply plus',
    'W21: multiplexer 0 minus > supply minus',
    // The address goes on from one multiplexer to the next; each has an input of its own.
    'W22: multiplexer 0 A0 > multiplexer 1 A0',
    'W23: multiplexer 0 A1 > multiplexer 1 A1',
    'W24: multiplexer 0 A2 > multiplexer 1 A2',
    'W25: multiplexer 1 Z > controller IN1',
    'W26: multiplexer 1 plus > supply plus',
    'W27: multiplexer 1 minus > supply minus',
    'W28: controller plus > supply plus',
    'W29: controller minus > supply minus',
    'W30: power supply plus > supply plus',
    'W31: power supply minus > supply minus',
  ]);
});

test('single address, LEDs lit line by line, two legs, a battery, a pin to spare: what changes', () => {
  const nets = said(
    specOf(
      'rows: 1, columns: 9',
      'scan: { address: single, spare_pins: 1, light_us: 150 }\nreceivers: { part: side-looker }\nemitters: { part: led-5-red }\nsupply: { battery_mah: 2500, battery_v: 3.7 }\n',
    ),
  ).map((net) => net.replace(/^W\d+: /, ''));
  // 5 V less the LED's 2 V at 20 mA: 150 Ω. Ten emitters on two switches of eight.
  expect(nets).toContain('column-0 emitter plus > supply plus through 150 Ω');
  expect(nets).toContain('column-7 emitter minus > switch 0 Q7');
  expect(nets).toContain('column-8 emitter minus > switch 1 Q0');
  expect(nets.filter((net) => /receiver plus/.test(net))).toEqual([]);
  // The last column takes the spare pin and saves a multiplexer; the row's is the second.
  expect(nets).toContain('column-8 receiver signal > controller P0');
  expect(nets).toContain('row-0 receiver signal > multiplexer 1 Y0');
  expect(nets).toEqual(
    expect.arrayContaining([
      'multiplexer 0 EN > controller EN0',
      'multiplexer 1 EN > controller EN1',
      'controller IN0 > multiplexer 0 Z',
      'multiplexer 0 Z > multiplexer 1 Z',
      'controller data > switch 0 data',
      'switch 0 data on > switch 1 data',
      'switch 0 clock > switch 1 clock',
      'battery plus > converter in plus, through a fuse',
      'converter minus > supply minus',
    ]),
  );
});

test.for([
  // Resistance of annealed copper at 20 °C by gauge, tables after ASTM B258, from memory: 133.9, 84.2, 53.0, 33.3, 20.9 Ω/km for
  // 26, 24, 22, 20, 18; 7.86 % more at 40 °C (IEC 60028). 128 barrels of 25 mA, 128 × .5 mA, 100 mA: 3.364 A, over 2 × .3 m.
  { row: '64 + 64 lines on 5 V: .115 V on gauge 22, .073 V on 20; .1 V are allowed', more: '', want: 20 },
  {
    row: 'on 3.7 V the battery gives 5.35 A: .115 V on gauge 20, .073 V on 18; .074 V are allowed',
    more: 'supply: { battery_mah: 5000, battery_v: 3.7 }',
    want: 18,
  },
])('wires that carry everything are thicker where they must: $row', ({ more, want }) => {
  const nets = netsOf(specOf('rows: 64, columns: 64', more));
  const thick = nets.filter(({ name }) => /^(battery|converter|power supply)/.test(name));
  expect(thick.length).toBeGreaterThan(1);
  expect(new Set(thick.map(({ gauge }) => gauge))).toEqual(new Set([want]));
  expect(new Set(nets.filter((net) => !thick.includes(net)).map(({ gauge }) => gauge))).toEqual(new Set([26]));
});

test('a small panel’s supply wires are as thin as the others', () => {
  expect(new Set(netsOf(specOf('rows: 4, columns: 6')).map(({ gauge }) => gauge))).toEqual(new Set([26]));
});

const beam = (name: string, line: 'column' | 'row', from: readonly [number, number, number]): Beam => ({
  name,
  line,
  index: 0,
  from,
  to: [from[0], from[1] - 100, 0],
  diameter: 2,
  corridor: 3,
  emitter: '',
  receiver: '',
});
const post = (x: number, y: number): Placement => ({
  name: 'far-left-post',
  part: 'corner-post',
  matrix: translation([x, y, 0]),
  rides: null,
  touches: [],
  overlaps: [],
});

test('lengths: by the corner to where wires end, 150 mm over at each end, up to a centimetre; 300 within the electronics', () => {
  const spec = specOf('rows: 1, columns: 1');
  const beams = [beam('column-0', 'column', [37, 90, 0]), beam('row-0', 'row', [60, 100, 0])];
  const kit = { beams, placements: [post(0, 100), post(200, 100), post(0, 0), post(200, 0)] };
  const lengths = (wiresEnd?: readonly [number, number, number]) =>
    new Map(
      wiresOf({ kit: wiresEnd ? { ...kit, wiresEnd } : kit, spec }).map(({ name, length }) => [name, length] as const),
    );
  const beyond = lengths();
  // By hand: 37 + 10 + 300 = 347; the receiver as far from the near corner; the row's emitter 60.
  expect(beyond.get('column-0 emitter minus')).toBe(350);
  expect(beyond.get('column-0 receiver signal')).toBe(350);
  expect(beyond.get('row-0 emitter plus')).toBe(360);
  expect(beyond.get('multiplexer 0 A0')).toBe(300);
  // A bay at (−40, 20): from the corner 40 + 80 more.
  const bay = lengths([-40, 20, 0]);
  expect(bay.get('column-0 emitter minus')).toBe(470);
  expect(bay.get('multiplexer 0 A0')).toBe(300);
});

/** Mistakes in a preset's bay: each named by its path, with the figure that is wrong. */
import { expect, test } from 'vitest';
import { modules, threads } from '../../src/components/index.js';
import type { PresetError } from '../../src/errors.js';
import { batteryOf } from '../../src/spec/bay.js';
import { readPreset } from '../../src/spec/read-preset.js';

const text = (bay: string) => `grid: { rows: 2, columns: 3, pitch: 24 }\nbay: ${bay}\n`;
const read = (bay: string) => readPreset(text(bay), 'tried.yaml');
const mistakes = (bay: string) => {
  try {
    read(bay);
  } catch (error) {
    return (error as PresetError).mistakes.map(({ path, message, hint }) => ({
      path,
      message: `${message}: ${hint ?? ''}`,
    }));
  }
  return [];
};

const PLAIN = 'length: 30, width: 20, thickness: 1.6, above: 3, below: 2, mass_g: 4';

test.for([
  ['{ modules: [] }', 'bay.modules', /a list of 1 to 24/],
  ['{ modules: [controler] }', 'bay.modules.0', /controller/],
  ['{ place: top, modules: [controller] }', 'bay.place', /far/],
  ['{ place: far, cable: 300, modules: [controller] }', 'bay.cable', /apart/],
  ['{ modules: [{ part: controller, turn: 45 }] }', 'bay.modules.0.turn', /90/],
  ['{ modules: [{ part: controller, count: 2, at: [10, 10] }] }', 'bay.modules.0.at', /one place/],
  ['{ modules: [{ part: controller, count: 12 }, { part: radio, count: 12 }, lamp] }', 'bay.modules', /25 modules/],
  ['{ modules: [{ part: { length: 30, width: 20 } }] }', 'bay.modules.0.part', /thickness, above, below and mass_g/],
  [`{ modules: [{ part: { ${PLAIN}, holes: [[28, 10]] } }] }`, 'bay.modules.0.part.holes', /diameter/],
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[28, 10]], hole_diameter: 2 } }] }`,
    'bay.modules.0.part.holes',
    /no screw/,
  ],
  // 29 + 1.6 + a ring of 0.5 ends at 31.1 on a board of 30.
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[5, 10], [29, 10]], hole_diameter: 3.2 } }] }`,
    'bay.modules.0.part.holes.1',
    /1\.1 mm off/,
  ],
  [
    `{ modules: [{ part: { ${PLAIN}, connectors: [{ what: plug, side: left, at: 23, width: 2, height: 5, up: 3, room: 20, access: outside }] } }] }`,
    'bay.modules.0.part.connectors.0.at',
    /3 mm past the end of the left edge, which is 20 mm/,
  ],
  [
    `{ modules: [{ part: { ${PLAIN}, window: { x: 15, y: 10, width: 40, depth: 10 } } }] }`,
    'bay.modules.0.part.window',
    /5 mm off/,
  ],
  [`{ modules: [{ part: { ${PLAIN}, lamps: [[5, 5], [5, 21]] } }] }`, 'bay.modules.0.part.lamps.1', /1 mm off/],
  [
    `{ modules: [{ part: { ${PLAIN}, connectors: [{ what: a, side: left, at: 9, width: 8, height: 5, up: 3, room: 5, access: inside }, { what: b, side: back, at: 9, width: 8, height: 5, up: 3, room: 5, access: inside }] } }] }`,
    'bay.modules.0.part',
    /two opposite edges/,
  ],
  // 10 ± 7.5 ends 2.5 from the edge's ends.
  [
    `{ modules: [{ part: { ${PLAIN}, connectors: [{ what: pins, side: left, at: 10, width: 15, height: 5, up: 3, room: 6, access: inside }] } }] }`,
    'bay.modules.0.part.connectors.0',
    /0\.5 mm into the 3 mm/,
  ],
  // Left out of the part, its base's connector still has to lie on the board: at 8 of 16 on a board of 6.
  [
    '{ modules: [{ part: { base: radio, width: 6 } }] }',
    'bay.modules.0.part',
    /pins stands 2 mm past the end of the left edge/,
  ],
  // The jack is 9 broad and 7 deep at a left edge of 20; the screw through Ø3.2 is M2.5, its head Ø4.68 (knurled, ISO 4762).
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[4, 4]], hole_diameter: 3.2, connectors: [{ what: plug, side: left, at: 10, width: 13, height: 5, up: 3, room: 20, access: outside }] } }] }`,
    'bay.modules.0.part.connectors.0',
    /the plug reaches 0\.84 mm into the head of the screw in hole 1/,
  ],
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[4, 4]], hole_diameter: 3.2, knobs: [{ x: 10, y: 6, width: 10, depth: 4 }] } }] }`,
    'bay.modules.0.part.knobs.0',
    /the knob 1 reaches 1\.34 mm into the head/,
  ],
  // Clips 9 broad lap 1.7 over the middles of the short edges; a lamp's rod is 3 thick.
  [
    `{ modules: [{ part: { ${PLAIN}, lamps: [[2, 10]] } }] }`,
    'bay.modules.0.part.lamps.0',
    /lamp 1 reaches 1\.2 mm into the clip at the left edge/,
  ],
  // The jack reaches 7 in from the left edge, the rod begins at 4.5.
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[27, 4]], hole_diameter: 2.4, lamps: [[6, 10]], connectors: [{ what: plug, side: left, at: 10, width: 13, height: 5, up: 3, room: 20, access: outside }] } }] }`,
    'bay.modules.0.part.lamps.0',
    /lamp 1 reaches 2\.5 mm into the jack of the plug/,
  ],
  // 15 + 10 ends 5 past a front edge of 20; the right edge stands .5 from its wall.
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[4, 4]], hole_diameter: 2.4, connectors: [{ what: plug, side: right, at: 13, width: 8, height: 5, up: 3, room: 20, access: outside }, { what: wires, side: back, at: 25, width: 20, height: 5, up: 3, room: 8, access: inside }] } }] }`,
    'bay.modules.0.part.connectors.1',
    /5 mm past the right edge/,
  ],
  // M2: 20 is the longest stocked, 1.5 · 2 go into the post.
  [
    '{ modules: [{ part: { length: 30, width: 20, thickness: 18, above: 3, below: 2, mass_g: 4, holes: [[4, 4]], hole_diameter: 2.4 } }] }',
    'bay.modules.0.part',
    /thickness: 17 or less/,
  ],
  // M2.5's head is Ø4.68, knurled.
  [
    `{ modules: [{ part: { ${PLAIN}, holes: [[3, 3], [5.4, 6.2]], hole_diameter: 3.2 } }] }`,
    'bay.modules.0.part.holes.1',
    /holes 1 and 2 are 4 mm apart.*Ø4\.68.*at least 4\.68/,
  ],
  [
    '{ modules: [{ part: { base: battery-pouch, connectors: [{ what: leads, side: left, at: 17, width: 10, height: 6, up: 1, room: 10, access: inside }] } }] }',
    'bay.modules.0.part.connectors.0.up',
    /2 mm under the battery.*up: 3 or more/,
  ],
  ['{ modules: [{ part: { base: battery-pouch, below: 2 } }] }', 'bay.modules.0.part.below', /2 mm below a battery/],
  [
    '{ modules: [{ part: { base: battery-pouch, lamps: [[5, 5]] } }] }',
    'bay.modules.0.part.lamps',
    /lamps on a battery/,
  ],
  ['{ modules: [battery-pouch, battery-holder] }', 'bay.modules.1', /3\.6 V beside one of 3\.7 V/],
] as const)('%s is refused at %s', ([bay, path, words]) => {
  const found = mistakes(bay);
  expect(found.map((one) => one.path)).toEqual([path]);
  expect(found[0]!.message).toMatch(words);
});

test('several mistakes come in one answer', () => {
  const found = mistakes(`{ place: top, modules: [controler, { part: { ${PLAIN}, lamps: [[5, 21]] } }] }`);
  expect(found.map((one) => one.path)).toEqual(['bay.place', 'bay.modules.0', 'bay.modules.1.part.lamps.0']);
});

test('modules are numbered by kind, equal outlines share a part, changes keep what they leave', () => {
  const { bay } = read(
    '{ modules: [multiplexer, { part: multiplexer, count: 2 }, { part: { base: multiplexer, width: 20 } }, { part: { base: multiplexer, width: 20 } }] }',
  );
  expect(bay!.modules.map(({ id, name }) => [id, name])).toEqual([
    ['multiplexer-1', 'multiplexer'],
    ['multiplexer-2', 'multiplexer'],
    ['multiplexer-3', 'multiplexer'],
    ['multiplexer-4', 'multiplexer-own'],
    ['multiplexer-5', 'multiplexer-own'],
  ]);
  const changed = bay!.modules[3]!.part;
  expect([changed.width.value, changed.width.source, changed.length.value]).toEqual([20, 'the preset', 40]);
});

test('the battery in the bay is the supply’s, unless the preset states another', () => {
  const two = read('{ modules: [{ part: battery-pouch, count: 2 }] }');
  expect(two.supply).toMatchObject({ batteryMah: 3000, batteryV: 3.7 });
  expect(two.chosen.find(({ path }) => path === 'supply.battery_mah')?.why).toMatch(/battery in the bay/);
  expect(batteryOf(two.bay)).toEqual({ voltage: 3.7, mah: 3000, mostMa: 3000, lithium: true });
  const own = readPreset(
    `${text('{ modules: [battery-pouch] }')}supply: { battery_mah: 900, battery_v: 6 }\n`,
    'tried.yaml',
  );
  expect(own.supply).toMatchObject({ batteryMah: 900, batteryV: 6 });
});

test('holes of 3.2 mm take the M2.5 of ISO 273 (2.9 mm, medium), and no M3 (3.4 mm)', () => {
  expect(threads['M2.5'].clearance.value).toBe(2.9);
  expect(threads.M3.clearance.value).toBe(3.4);
});

test('every module of the catalogue may be changed: what it has by itself is no mistake', () => {
  for (const base of Object.keys(modules))
    expect([base, mistakes(`{ modules: [{ part: { base: ${base}, mass_g: 5 } }] }`)]).toEqual([base, []]);
});

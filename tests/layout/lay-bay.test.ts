/** Where the bay goes, and what is said when it can't. Figures by hand from the rails' own. */
import { expect, test } from 'vitest';
import type { PresetError } from '../../src/errors.js';
import { jointsFree } from '../../src/layout/bay/hold.js';
import { jointPlaces } from '../../src/layout/bay/sizes.js';
import type { BayLayout } from '../../src/layout/bay/types.js';
import { layOut } from '../../src/layout/lay-out.js';
import { readPreset } from '../../src/spec/read-preset.js';

const GRID = 'grid: { rows: 2, columns: 6, pitch: 22 }\n';
const lay = (bay: string, more = '') => layOut(readPreset(`${GRID}${more}bay: ${bay}\n`, 'tried.yaml'));
const bayOf = (bay: string, more = ''): BayLayout => lay(bay, more).bay!;
const refused = (bay: string, more = '') => {
  try {
    lay(bay, more);
  } catch (error) {
    return (error as PresetError).mistakes;
  }
  return [];
};

test('without a place it hangs on the longer rail of emitters', () => {
  expect(bayOf('{ modules: [controller] }').place).toBe('far');
  expect(bayOf('{ modules: [controller] }', 'emitters: { columns_from: near }\n').place).toBe('near');
  expect(bayOf('{ place: apart, modules: [controller] }').place).toBe('apart');
});

test('on a rail of receivers hangs the hood', () => {
  expect(refused('{ place: right, modules: [controller] }')).toMatchObject([
    { code: 'preset/bay-side', path: 'bay.place', hint: 'far or left, where the emitters are, or apart' },
  ]);
});

test('along a rail it is exactly as high as the rail, apart as high as its highest module asks', () => {
  const { frame, bay } = lay('{ modules: [controller] }');
  expect([bay!.height, bay!.lid]).toEqual([frame.section.height, frame.section.cover]);
  // Floor 3.2 + a block of 50, and .4 under the door.
  const tall =
    '{ length: 40, width: 30, thickness: 50, above: 0, below: 0, mass_g: 90, cell: { voltage: 5, capacity_mah: 900, most_ma: 900, lithium: false } }';
  expect(bayOf(`{ place: apart, modules: [{ part: ${tall} }] }`).height).toBeCloseTo(53.6, 9);
  const [mistake] = refused(`{ place: far, modules: [{ part: ${tall} }] }`);
  expect(mistake).toMatchObject({
    code: 'preset/bay-too-small',
    path: 'bay.modules.0',
    hint: expect.stringMatching(/apart/),
  });
  expect(mistake!.message).toContain(`53.6 mm high, ${(53.6 - frame.section.height).toFixed(1)} mm more`);
});

test('a board that no tray of this bed takes: by how much', () => {
  // Bed 220 with 5 mm kept free along each edge: 210; a tray of 210 would bow by more than .48 at .15 per 100 mm squared: 178.8, less two walls of 3.
  const board =
    '{ length: 190, width: 100, thickness: 1.6, above: 3, below: 2, mass_g: 40, holes: [[4, 4]], hole_diameter: 3.2 }';
  const [mistake] = refused(`{ modules: [{ part: ${board} }] }`);
  expect(mistake!.path).toBe('bay.modules.0');
  expect(mistake!.message).toMatch(
    /needs 192 × 102 mm, 19\.2 mm more than the largest tray that the bed takes, 172\.9 × 172\.9 inside/,
  );
});

test('more than a rail has room for: how long it is, and by how much too long', () => {
  const found = refused('{ place: left, modules: [{ part: controller, count: 12 }] }');
  expect(found).toMatchObject([{ code: 'preset/bay-too-small', path: 'bay.modules' }]);
  expect(found[0]!.message).toMatch(
    /need at least [\d.]+ × [\d.]+ mm along the left rail, [\d.]+ mm more than its [\d.]+ mm/,
  );
});

test('a connector that faces the rail, or stands away from the wall', () => {
  // Turned by 90°, the plug at the board's left edge looks at the inner wall.
  expect(refused('{ modules: [{ part: controller, at: [40, 10], turn: 90 }] }')).toMatchObject([
    { code: 'preset/connector', message: expect.stringMatching(/USB plug of controller-1 faces the rail/) },
  ]);
  const far = refused('{ place: apart, modules: [{ part: controller, at: [12, 30], turn: 0 }, display] }');
  expect(far).toMatchObject([{ code: 'preset/connector', path: 'bay.modules.0' }]);
  // 12 from the wall's inner face; .5 and 1.5 are what a plug reaches through.
  expect(far[0]!.message).toMatch(/stands 12 mm from the wall that it would be plugged through, 10 mm too far/);
});

test('places that are given are kept', () => {
  const { units, wall } = bayOf('{ place: apart, modules: [{ part: display, at: [30, 12], turn: 90 }, switch] }');
  const placed = units[0]!.modules.find(({ module }) => module.id === 'display-1')!;
  expect(placed.outline).toEqual([wall + 30, wall + 12, wall + 30 + 36, wall + 12 + 38]);
  expect(placed.turn).toBe(90);
});

test('batteries get a tray of their own, and boards what is seen right under the lid', () => {
  const { units, height } = bayOf('{ modules: [controller, display, battery-pouch, converter] }');
  expect(units.map(({ kind }) => kind)).toEqual(['battery', 'boards']);
  expect(units[0]!.modules.map(({ module }) => module.name)).toEqual(['battery-pouch']);
  const display = units[1]!.modules.find(({ module }) => module.name === 'display')!;
  // Glass 1.6 + 2.6 over the board's underside, .4 to .5 under the lid.
  const under = height - (display.z + 1.6 + 2.6);
  expect(under).toBeGreaterThanOrEqual(0.4 - 1e-9);
  expect(under).toBeLessThan(0.5 + 1e-9);
});

test('vents where a closed box would get too warm: all that walls do not take leaves with the air', () => {
  const hot = (heat: number) => `{ place: apart, modules: [{ part: { base: controller, heat_mw: ${heat} } }] }`;
  const cool = bayOf(hot(200));
  expect(cool.heat.vents).toBe(0);
  const { heat, units } = bayOf(hot(900));
  expect(heat.closed).toBeGreaterThan(10);
  expect(heat.vents).toBeGreaterThan(0);
  expect(heat.drawn).toBeLessThanOrEqual(10.1);
  // Slots of 2.4 mm: as much area in the wall as in the lid.
  const inlets = units[0]!.walls.filter(({ open, to, from }) => !open && Math.abs(to - from - 2.4) < 1e-9);
  expect(inlets.reduce((sum, { high, low }) => sum + 2.4 * (high - low), 0)).toBeGreaterThanOrEqual(heat.vents - 1e-6);
});

test('holes in a lid that run into each other, or leave too little to print, become one without a rod', () => {
  // Window and knob share 10 mm; the lamps stand 3.6 apart, in holes of Ø3.05: .55 mm of plastic, two lines of .45 are .9.
  const part =
    '{ length: 60, width: 30, thickness: 1.6, above: 3, below: 2, mass_g: 4, holes: [[3, 3], [57, 27]], hole_diameter: 3.2';
  const joined = bayOf(
    `{ modules: [{ part: ${part}, window: { x: 20, y: 15, width: 20, depth: 10 }, knobs: [{ x: 30, y: 15, width: 20, depth: 4 }] } }, { part: ${part}, lamps: [[20, 15], [23.6, 15], [40, 15]] } }] }`,
  ).units[0]!;
  const sizes = joined.lid.flatMap((hole) => {
    if (hole.kind !== 'rectangle') return [];
    const [x0, y0, x1, y1] = hole.rect;
    return [[x1 - x0, y1 - y0].sort((a, b) => a - b)];
  });
  // From 10 to 40 along the board, .225 of air on each side; and 3.6 + 3.05 by 3.05.
  expect(sizes).toHaveLength(2);
  for (const [short, long] of [
    [10.45, 30.45],
    [3.05, 6.65],
  ] as const)
    expect(sizes.filter(([a, b]) => Math.abs(a! - short) < 0.01 && Math.abs(b! - long) < 0.01)).toHaveLength(1);
  expect(joined.lid.filter(({ kind }) => kind === 'round')).toHaveLength(1);
  expect(joined.pipes).toHaveLength(1);
});

test('batteries alone: the rib for the wires’ tie stands beside the battery, not in it', () => {
  const [tray] = bayOf('{ modules: [battery-holder] }').units;
  const [tie, battery] = [tray!.tie!, tray!.modules[0]!.outline];
  const apart = Math.max(battery[0] - tie[2], tie[0] - battery[2], battery[1] - tie[3], tie[1] - battery[3]);
  // Its own ribs of 1.6 stand .7 off it.
  expect(apart).toBeGreaterThanOrEqual(2.3 - 1e-9);
});

test('no slot for air behind a boss of the lid, which rises from the wall there', () => {
  const { frame, bay } = lay('{ place: apart, modules: [{ part: { base: controller, heat_mw: 9000 } }] }');
  const [tray] = bay!.units;
  const slots = tray!.walls.filter(({ open, to, from }) => !open && Math.abs(to - from - 2.4) < 1e-9);
  expect(slots.length).toBeGreaterThanOrEqual(2);
  for (const { from, to } of slots)
    for (const [x] of tray!.bosses)
      expect(Math.max(from - (x + frame.boss.width / 2), x - frame.boss.width / 2 - to)).toBeGreaterThan(0);
});

test('a board lies high enough for what is under it, and low enough for what is over it', () => {
  const high = (part: string, more = '') => {
    const { units, height, floor } = bayOf(`{ place: apart, modules: [{ part: ${part} }] }`, more);
    return { z: units[0]!.modules[0]!.z, height, floor };
  };
  const plain = 'length: 30, width: 20, thickness: 1.6, above: 1, below: 1, mass_g: 4';
  const wires = (up: number) =>
    `connectors: [{ what: wires, side: back, at: 15, width: 10, height: 10, up: ${up}, room: 6, access: inside }]`;
  // Wires within the bay: 5 below their middle, .6 over the floor of 3.2.
  expect(high(`{ ${plain}, ${wires(-4)} }`).z).toBeCloseTo(3.2 + 0.6 + 5 + 4, 9);
  // M4 through a clip of 2 and .1: 10 long, so 7.9 and 1 of tip go down from 1.5 over the board's underside, .6 over the table.
  expect(high(`{ ${plain} }`, 'screws: { fix: M4 }\n').z).toBeCloseTo(7.9 + 1 - 1.5 + 0.6, 9);
  // M4 through 1.6: 8 long leaves 6.4 in the post, 1 of tip, .6 under it.
  expect(high(`{ ${plain}, holes: [[15, 10]], hole_diameter: 4.5 }`).z).toBeCloseTo(6.4 + 1 + 0.6, 9);
  // A window's glass ends at 2.6, but the clips' screws at 1.6 + 2 + 3 (M3, ISO 4762), .4 under the lid.
  const seen = high(`{ ${plain}, window: { x: 15, y: 10, width: 10, depth: 6 } }`);
  expect(seen.height - seen.z).toBeGreaterThanOrEqual(1.6 + 2 + 3 + 0.4 - 1e-9);
});

test('wires broader than their edge keep the walls beside it away', () => {
  // 10 + 15 ends 5 past the back edge of 20, and 5 before the front one.
  const { units, wall } = bayOf(
    '{ place: apart, modules: [{ part: { length: 50, width: 20, thickness: 1.6, above: 3, below: 2, mass_g: 4, holes: [[4, 4]], hole_diameter: 3.2, connectors: [{ what: wires, side: left, at: 10, width: 30, height: 5, up: 3, room: 6, access: inside }] }, turn: 0 }] }',
  );
  const { outline } = units[0]!.modules[0]!;
  expect(outline[1] - wall).toBeGreaterThanOrEqual(5 - 1e-9);
  expect(units[0]!.size[1] - wall - outline[3]).toBeGreaterThanOrEqual(5 - 1e-9);
});

test('a rail too short for the screws of both end trays: by how much, and as much longer it does', () => {
  const pair = '{ place: far, modules: [{ part: { base: battery-pouch, width: 28, length: 40 } }, converter] }';
  const on = (pitch: number) => {
    try {
      layOut(readPreset(`grid: { rows: 2, columns: 2, pitch: { x: ${pitch}, y: 29 } }\nbay: ${pair}\n`, 'tried.yaml'));
    } catch (error) {
      return (error as PresetError).mistakes[0]!.message;
    }
    return '';
  };
  const short = Number(/need 2 trays.*which is ([\d.]+) mm too short/.exec(on(20))?.[1]);
  expect(short).toBeGreaterThan(0);
  expect(on(20 + short - 0.5)).toMatch(/which is 0\.5 mm too short/);
  expect(on(20 + short)).not.toMatch(/too short/);
});

test('no slot for air behind the bars that hold a board by the wall', () => {
  const warm = '{ part: { base: charger, heat_mw: 2500 } }';
  const [tray] = bayOf(`{ place: apart, modules: [${warm}, ${warm}, ${warm}, switch] }`).units;
  const slots = tray!.walls.filter(({ open, to, from }) => !open && Math.abs(to - from - 2.4) < 1e-9);
  const chargers = tray!.modules.filter(({ module }) => module.name.startsWith('charger'));
  expect([slots.length > 0, chargers.length]).toEqual([true, 3]);
  for (const { outline } of chargers)
    for (const { from, to } of slots) {
      // Bars 7.2 deep stand at both sides of the plug, their cheeks reach 3 round the corners.
      expect(Math.max(from - (outline[0] + 3), outline[0] - 7.2 - to)).toBeGreaterThan(0);
      expect(Math.max(from - (outline[2] + 7.2), outline[2] - 3 - to)).toBeGreaterThan(0);
    }
});

test('where a row at the rail’s middle finds no place for its screws, one beside it or another row does', () => {
  // A low plug lifts the first board over the key's height, so its bars stand in the key's way.
  const raised =
    '{ length: 64.9, width: 23.2, thickness: 1, above: 5, below: 3, mass_g: 3, connectors: [{ what: plug, side: front, at: 32.5, width: 21, height: 8.7, up: -9.9, room: 39, access: outside }] }';
  const spec = (bay: string) =>
    readPreset(
      `grid: { rows: 4, columns: 3, pitch: 30 }\nemitters: { part: barrel-6x10 }\nmaterial: pa12\nprinter: bed-180\nbay: ${bay}\n`,
      'tried.yaml',
    );
  const { bay, runs } = layOut(spec(`{ place: far, modules: [{ part: ${raised} }, charger] }`));
  const { bosses, notch } = bay!.rail!;
  expect(bosses.length).toBeGreaterThan(0);
  expect(notch[1] - notch[0]).toBeGreaterThanOrEqual(8 - 1e-9);
  const far = runs.find(({ side }) => side === 'far')!;
  for (const at of bosses) expect(Math.min(at, far.length - at)).toBeGreaterThan(0);
});

test('screws in a tray’s wall: heads beside each other, and beside the bosses of its lid', () => {
  for (const [fix, head] of [
    ['M3', 6],
    ['M4', 8],
  ] as const) {
    // A low rail, ISO 10642's heads.
    const { bay, frame } = lay('{ modules: [switch] }', `screws: { fix: ${fix} }\nprinter: bed-220-fine\n`);
    const [low, high = Infinity] = bay!.screw.heights;
    expect(high - low!).toBeGreaterThan(head);
    const [tray] = bay!.units;
    const ends = bay!.wall + frame.boss.width + head / 2;
    for (const at of tray!.held) expect(Math.min(at, tray!.size[0] - at)).toBeGreaterThan(ends);
  }
});

test('a raised post before a screw that joins trays stands in the way of its key; a low one, or one far off, does not', () => {
  const { spec, bay } = lay('{ place: apart, modules: [display, battery-pouch] }');
  const { units, wall, height } = bay!;
  const [battery, boards] = units;
  const [display] = boards!.modules;
  const [, depth] = battery!.size;
  const free = (x: number, y: number, z: number) => {
    const fixing = { kind: 'screws', size: 'M2.5', length: 6, engaged: 4.4, at: [[x, y]] } as const;
    const crowded = { ...battery!, modules: [{ ...display!, z, fixing }] };
    return jointsFree([crowded, boards!], { wall, spec, height });
  };
  const right = battery!.size[0] - wall;
  const [at] = jointPlaces([0, depth], wall);
  expect(free(right - 10, at!, 20)).toBe(false);
  // Heads sit 13 and more above the underside.
  expect(free(right - 10, at!, 7.2)).toBe(true);
  // The key's short arm with the screw before it is 24 long; a post is 2.75 in radius, the head 3.
  expect(free(right - 24 - 4, at!, 20)).toBe(true);
  expect(free(right - 10, at! - 3.4 - 3.1, 20)).toBe(true);
});

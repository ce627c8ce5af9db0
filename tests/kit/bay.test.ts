/** Kits with a bay, drawn whole: nothing is found wrong, and what should be open is. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { modules } from '../../src/components/index.js';
import type { PresetError } from '../../src/errors.js';
import { trayMatrix } from '../../src/kit/bay-trays.js';
import type { LayoutWithBay } from '../../src/layout/layout.js';
import { apply } from '../../src/solid/matrix.js';
import type { Vec3 } from '../../src/solid/mesh.js';
import { type Drawn, draw, findingsOf, openWorkshop, said, sceneOf, type Workshop } from './make.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

const GRID = 'grid: { rows: 2, columns: 4, pitch: 24 }\n';
const ALL = '[controller, multiplexer, radio, display, charger, converter, switch, lamp, battery-pouch]';
const preset = (place: string, list: string) => `${GRID}bay: { place: ${place}, modules: ${list} }\n`;

test.for(['far', 'left', 'apart'])('a bay of nine modules, %s: no error, every part one piece', (place) => {
  // Two short rails: the left one takes fewer.
  const list = place === 'left' ? '[controller, multiplexer, switch]' : ALL;
  const { findings, inPieces } = said(shop, preset(place, list));
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(inPieces).toEqual([]);
});

/** A wide plug, under which 45° have to be left to bridge what stays: 32 over 10. */
const WIDE =
  '{ part: { length: 40, width: 30, thickness: 1.6, above: 5, below: 2, mass_g: 5, connectors: [{ what: plug, side: front, at: 20, width: 31, height: 4, up: 2, room: 30, access: outside }] } }';
/** Deeper than wide: it travels across the board. */
const KNOB =
  '{ part: { length: 40, width: 30, thickness: 1.6, above: 5, below: 2, mass_g: 5, holes: [[3, 3], [37, 27]], hole_diameter: 3.2, knobs: [{ x: 20, y: 15, width: 4, depth: 14 }] } }';
/** Its lamp stands just beside the tall parts: the rod passes them. */
const LAMP =
  '{ part: { length: 45, width: 22, thickness: 1, above: 8, below: 0, mass_g: 5, holes: [[3, 3], [42, 19]], hole_diameter: 2.4, lamps: [[16, 2.2]] } }';
/** Leads at a corner, where a rib would stand. */
const CELL =
  '{ part: { length: 40, width: 30, thickness: 8, above: 0, below: 0, mass_g: 30, connectors: [{ what: leads, side: left, at: 6, width: 8, height: 4, up: 3, room: 8, access: inside }], cell: { voltage: 5, capacity_mah: 900, most_ma: 900, lithium: false } } }';

test.for([
  ['M4 in the clips', `screws: { fix: M4 }\n`, 'apart', '[multiplexer, multiplexer, charger, lamp]'],
  ['a wide plug', '', 'apart', `[${WIDE}]`],
  ['a knob that travels across', '', 'apart', `[${KNOB}]`],
  ['a lamp beside tall parts', '', 'apart', `[${LAMP}]`],
  ['leads at a corner', '', 'apart', `[controller, ${CELL}]`],
  ['a printer of wide gaps', 'printer: { base: bed-220, gap_tolerance: 0.4 }\n', 'far', '[converter]'],
  ['clips beside walls, by it', 'printer: { base: bed-220, gap_tolerance: 0.4 }\n', 'apart', '[lamp, radio]'],
] as const)('%s: no error', { timeout: 60_000 }, ([, more, place, list]) => {
  const { findings } = said(shop, `${more}${preset(place, list)}`);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
});

describe('what should be open is', () => {
  let kit: Drawn;
  let scene: ReturnType<typeof sceneOf>;
  let unit: LayoutWithBay['bay']['units'][number];
  let layout: LayoutWithBay;
  beforeAll(() => {
    kit = draw(shop, preset('far', ALL));
    scene = sceneOf(shop, kit.kit);
    layout = kit.layout as LayoutWithBay;
    unit = layout.bay.units.find(({ kind }) => kind === 'boards')!;
  });
  const inTray = (at: Vec3): Vec3 => apply(trayMatrix(layout, unit), at);
  const hit = (from: Vec3, to: Vec3): string[] =>
    scene.bodies.filter(({ at }) => scene.hits(at.level, from, to)).map(({ name }) => name);

  test('a ray along a plug’s axis meets its board’s socket before any wall', () => {
    const board = unit.modules.find(({ module }) => module.name === 'controller')!;
    const [x0, , x1, y1] = board.outline;
    const middle = inTray([(x0 + x1) / 2, y1 + 60, board.z + 3.2]);
    expect(hit(middle, inTray([(x0 + x1) / 2, y1 - 1, board.z + 3.2]))).toEqual(['bay-controller-1']);
  });

  test('a look down on the display meets its glass alone; beside its window the lid', () => {
    const board = unit.modules.find(({ module }) => module.name === 'display')!;
    const [x0, y0, x1, y1] = board.outline;
    const down = (x: number, y: number) => hit(inTray([x, y, 90]), inTray([x, y, layout.bay.height - 1]));
    // The window lies 2 mm off the middle, toward the board's front: the middle is in it however it is turned.
    expect(down((x0 + x1) / 2, (y0 + y1) / 2)).toEqual(['bay-display-1']);
    expect(down(x0 + 1, y0 + 1)).toEqual([expect.stringMatching(/^bay-lid/)]);
  });

  test('the notch goes through rail and tray: a ray along it meets nothing', () => {
    const hole = unit.walls.find(({ wall, open }) => wall === 'inner' && open)!;
    const x = (hole.from + hole.to) / 2;
    const z = layout.bay.height - 3;
    expect(hit(inTray([x, -4, z]), inTray([x, layout.bay.wall + 1, z]))).toEqual([]);
    expect(hit(inTray([x, -4, z - 6]), inTray([x, layout.bay.wall + 1, z - 6])).length).toBeGreaterThan(0);
  });

  test('a lamp’s rod stands over its lamp and ends in the lid’s top', () => {
    const rods = kit.kit.placements.filter(({ part }) => part.startsWith('light-pipe'));
    // Two of the charger, one of the lamp's own board.
    expect(rods).toHaveLength(3);
    const top = layout.frame.section.bottom + layout.bay.height + layout.bay.lid;
    for (const { part, matrix } of rods) expect(matrix[11]! + Number(part.split('x')[1])).toBeCloseTo(top, 2);
  });

  test('trays come before mounts, boards before covers, feet after the plugs, the battery last', () => {
    const at = (pattern: RegExp) =>
      kit.kit.assembly.findIndex(({ joins, hardware }) => [...joins, ...hardware].some((name) => pattern.test(name)));
    const order = [
      /^bay-tray-1$/,
      /^column-0-mount$/,
      /^bay-controller-1$/,
      /^far-cover$/,
      /^bay-lid/,
      /plug$/,
      /^foot-1$/,
      /^bay-battery/,
      /^bay-door/,
    ].map(at);
    expect(order.every((step) => step >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  test('every screw of a module holds a diameter and a half', () => {
    const own = kit.kit.screws.filter(({ placement }) => /^bay-/.test(placement));
    expect(own.length).toBeGreaterThan(20);
    for (const { into, size } of own)
      expect(into.kind === 'formed' && into.engaged).toBeGreaterThanOrEqual(1.5 * Number(size.slice(1)) - 1e-9);
  });
});

test('whatever modules are asked for: a kit without an error of the bay, or a refusal with a figure', () => {
  const names = Object.keys(modules).filter((name) => name !== 'battery-holder');
  let drawn = 0;
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 7 }),
      fc.constantFrom('far', 'left', 'apart'),
      (list, place) => {
        try {
          const found = findingsOf(shop, preset(place, `[${list.join(', ')}]`));
          const errors = found.filter(({ severity, code }) => severity === 'error' && !code.startsWith('bay/battery'));
          expect(errors).toEqual([]);
          drawn++;
        } catch (error) {
          const { mistakes } = error as PresetError;
          if (mistakes === undefined) throw error;
          for (const { message } of mistakes) expect(message).toMatch(/\d mm/);
        }
      },
    ),
    { numRuns: 8, seed: 20260 },
  );
  expect(drawn).toBeGreaterThan(4);
}, 240_000);

/** The bay's check finds each fault for the reason it names; the sound bay passes. */
import { beforeAll, expect, test } from 'vitest';
import { bay as check } from '../../src/checks/bay.js';
import type { Kit } from '../../src/kit/types.js';
import { multiply, rotation, translation } from '../../src/solid/matrix.js';
import { box } from '../../src/solid/shapes.js';
import { type Drawn, draw, openWorkshop, sceneOf, type Workshop } from '../kit/make.js';

const GRID = 'grid: { rows: 2, columns: 4, pitch: 24 }\n';
const SOUND = `${GRID}bay: { modules: [controller, display, switch, charger, converter, battery-pouch] }\n`;
let shop: Workshop;
let sound: Drawn;
beforeAll(async () => {
  shop = await openWorkshop();
  sound = draw(shop, SOUND);
});

const ask = ({ layout, kit }: Drawn, changed: Kit = kit) =>
  check.run({ kit: changed, spec: layout.spec, scene: sceneOf(shop, changed) });
const codes = (found: ReturnType<typeof ask>) => found.map(({ code }) => code);
const moved = (kit: Kit, name: string, by: (matrix: Kit['placements'][number]['matrix']) => typeof matrix): Kit => ({
  ...kit,
  placements: kit.placements.map((one) => (one.name === name ? { ...one, matrix: by(one.matrix) } : one)),
});

test('the sound bay: a caution for its lithium cell, and how full it is', () => {
  expect(codes(ask(sound))).toEqual(['bay/lithium', 'bay/fill']);
});

test('a kit without a bay has nothing to say', () => {
  expect(ask(draw(shop, GRID))).toEqual([]);
});

test('a plug that meets a wall: its board turned half round where it lies', () => {
  const half = multiply(translation([54, 26, 0]), rotation('z', Math.PI));
  const found = ask(
    sound,
    moved(sound.kit, 'bay-controller-1', (matrix) => multiply(matrix, half)),
  );
  const plugs = found.filter(({ code }) => code === 'bay/plug');
  expect(plugs.map(({ subject }) => subject)).toContain('bay-controller-1');
  expect(plugs.some(({ message }) => /USB plug of controller-1/.test(message))).toBe(true);
});

test('a lid without its holes covers display and knob', () => {
  const lid = [...sound.kit.parts.values()].find(({ id }) => id.startsWith('bay-lid'))!;
  const { min, max } = shop.kernel.box(lid.solid);
  const plain = { ...lid, solid: box(shop.kernel, min, [max[0], max[1], 2.4]) };
  const found = ask(sound, { ...sound.kit, parts: new Map(sound.kit.parts).set(lid.id, plain) });
  const faces = found.filter(({ code }) => code === 'bay/face');
  // 31 × 17 of the display under 2.4 of lid.
  expect(faces.find(({ subject }) => subject === 'bay-display-1')!.measured).toBeCloseTo(31 * 17 * 2.4, 0);
  expect(faces.map(({ subject }) => subject)).toContain('bay-switch-1');
});

const said = (modules: string, more = '') => {
  const drawn = draw(shop, `${GRID}${more}bay: { place: apart, modules: ${modules} }\n`);
  return ask(drawn);
};

test('more heat than walls and slots let out', () => {
  const [warm] = said('[{ part: { base: controller, heat_mw: 6000 } }]').filter(({ code }) => code === 'bay/warm');
  expect(warm).toMatchObject({ severity: 'warning', limit: 10, unit: 'K' });
  expect(warm!.measured).toBeGreaterThan(20);
});

test('a battery under the supply’s voltage, without and with a converter', () => {
  const [low] = said('[controller, battery-pouch]').filter(({ code }) => code === 'bay/battery-voltage');
  expect(low).toMatchObject({ severity: 'error', measured: 3.7, limit: 5 });
  expect(codes(said('[controller, converter, battery-pouch]'))).not.toContain('bay/battery-voltage');
  const single =
    '{ length: 52, width: 16, thickness: 16, above: 0, below: 0, mass_g: 24, cell: { voltage: 1.2, capacity_mah: 1900, most_ma: 2000, lithium: false } }';
  const [flat] = said(`[converter, { part: ${single} }]`).filter(({ code }) => code === 'bay/battery-voltage');
  expect(flat).toMatchObject({ measured: 1.2, limit: 2.5 });
});

test('a battery that gives less current than the panel draws', () => {
  // Six lines of 25 mA, pull-ups 6 · .5 and logic 100: 253 mA at 5 V; from 3.7 V through a converter of 85 %: 402 mA.
  const weak = '{ base: battery-pouch, cell: { voltage: 3.7, capacity_mah: 300, most_ma: 300, lithium: true } }';
  const [found] = said(`[converter, { part: ${weak} }]`).filter(({ code }) => code === 'bay/battery-current');
  expect(found!.limit).toBe(300);
  expect(found!.measured).toBeCloseTo((253 * 5) / 3.7 / 0.85, 0);
  expect(codes(said('[converter, battery-pouch]'))).not.toContain('bay/battery-current');
});

test('fewer multiplexers than the scan plan asks for: two sides of receivers, two of them', () => {
  const [found] = said('[controller, multiplexer]').filter(({ code }) => code === 'bay/multiplexers');
  expect(found).toMatchObject({ severity: 'warning', measured: 1, limit: 2 });
  expect(codes(said('[controller, { part: multiplexer, count: 2 }]'))).not.toContain('bay/multiplexers');
  expect(codes(said('[controller]'))).not.toContain('bay/multiplexers');
});

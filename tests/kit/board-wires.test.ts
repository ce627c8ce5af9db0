import { expect, test } from 'vitest';
import { fromBoards } from '../../src/kit/board-wires.js';
import type { Wire } from '../../src/kit/net.js';
import type { BoardsOfKit } from '../../src/kit/types.js';
import { wiresOf } from '../../src/kit/wires.js';
import { channelsJson } from '../../src/outputs/channels-csv.js';
import { wiringDiagram } from '../../src/outputs/wiring-diagram/diagram.js';
import { draw, openWorkshop } from './make.js';

const wire = (id: string, beam: string | null, what: string, to: string): Wire => {
  const end = what.startsWith('emitter') ? 'emitter' : 'receiver';
  const name = beam === null ? what : `${beam} ${what}`;
  return { id, name, from: name, to, gauge: 26, length: 340, along: beam === null ? null : { beam, end } };
};
/** A board of two places, with a pad for ground or without. */
const boards = (kind: 'emitter' | 'receiver', ground: boolean) =>
  ({
    boards: [{ id: 'one', kind, holes: [{ use: 'pad', label: ground ? 'ground' : 'line 1' }] }],
    places: [{ board: 'one', placement: 'near-board', beams: ['row-1', 'row-0'] }],
  }) as unknown as BoardsOfKit;
const told = (wires: readonly Wire[]) => wires.map(({ id, from, to }) => `${id}: ${from} to ${to}`);

test('emitters always lit: one pair for the board, its resistors are on it', () => {
  const wires = ['row-0', 'row-1'].flatMap((beam, i) => [
    wire(`W${2 * i + 1}`, beam, 'emitter plus', 'supply plus through 82 Ω'),
    wire(`W${2 * i + 2}`, beam, 'emitter minus', 'supply minus'),
  ]);
  expect(told(fromBoards(wires, boards('emitter', true)))).toEqual([
    'W3: near-board pad supply to supply plus',
    'W4: near-board pad ground to supply minus',
  ]);
  expect(fromBoards(wires, undefined)).toBe(wires);
  // Boards of the other kind leave them alone.
  expect(fromBoards(wires, boards('receiver', true))).toEqual(wires);
});

test('emitters lit one by one: supply is shared, the other wire of each goes to its switch', () => {
  const wires = ['row-0', 'row-1'].flatMap((beam, i) => [
    wire(`W${2 * i + 1}`, beam, 'emitter plus', 'supply plus'),
    wire(`W${2 * i + 2}`, beam, 'emitter minus', `switch 0 Q${i}`),
  ]);
  expect(told(fromBoards(wires, boards('emitter', false)))).toEqual([
    'W2: near-board pad line 2 to switch 0 Q0',
    'W3: near-board pad supply to supply plus',
    'W4: near-board pad line 1 to switch 0 Q1',
  ]);
});

test('receivers on two legs: the carrier’s pull-ups need a supply that no receiver has', () => {
  const wires = [
    ...['row-0', 'row-1'].flatMap((beam, i) => [
      wire(`W${2 * i + 1}`, beam, 'receiver minus', 'supply minus'),
      wire(`W${2 * i + 2}`, beam, 'receiver signal', `controller P${i}`),
    ]),
    wire('W5', null, 'controller plus', 'supply plus'),
  ];
  expect(told(fromBoards(wires, boards('receiver', true)))).toEqual([
    'W2: near-board pad line 2 to controller P0',
    'W3a: near-board pad supply to supply plus',
    'W3: near-board pad ground to supply minus',
    'W4: near-board pad line 1 to controller P1',
    'W5: controller plus to supply plus',
  ]);
});

test.for(['', 'scan: { light_us: 200 }\n'])(
  'what diagram and channel table name is a wire of the list, board by board%s',
  async (more) => {
    const text = `grid: { rows: 2, columns: 5, pitch: 24 }\nboards: { receivers: true, emitters: true }\n${more}`;
    const { kit, layout } = draw(await openWorkshop(), text);
    const { spec } = layout;
    const listed = new Set(wiresOf({ kit, spec }).map(({ id }) => id));
    const drawn = wiringDiagram(spec, { alone: true, boards: kit.boards }).match(/\bW\d+a?\b/g)!;
    expect(drawn.length).toBeGreaterThan(20);
    for (const id of drawn) expect(listed).toContain(id);
    const { channels } = channelsJson(spec, kit.boards) as unknown as {
      channels: readonly { beam: string; signal_wire: string; receiver_wires: string; emitter_wires: string }[];
    };
    for (const { signal_wire, receiver_wires, emitter_wires } of channels)
      for (const id of `${signal_wire} ${receiver_wires} ${emitter_wires}`.split(' ')) expect(listed).toContain(id);
    // Lines of one carrier share its supply and ground, each has a signal of its own.
    const [board] = kit.boards!.places.filter(({ beams }) => beams.includes('row-0') && beams.length === 2);
    const own = channels.filter(({ beam }) => board!.beams.includes(beam));
    expect(new Set(own.map(({ receiver_wires }) => receiver_wires)).size).toBe(1);
    expect(new Set(own.map(({ signal_wire }) => signal_wire)).size).toBe(2);
  },
);

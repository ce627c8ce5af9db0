import { expect, test } from 'vitest';
import { fromBoards } from '../../src/kit/board-wires.js';
import type { BoardsOfKit } from '../../src/kit/types.js';
import type { Wire } from '../../src/kit/wires.js';

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

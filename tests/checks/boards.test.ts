import { describe, expect, test } from 'vitest';
import { boards } from '../../src/checks/boards.js';
import type { BoardsOfKit, Kit } from '../../src/kit/types.js';
import type { Board, BoardHole } from '../../src/layout/boards/types.js';
import { spec } from './sound-figures.js';

const hole = (x: number, y: number, more: Partial<BoardHole> = {}): BoardHole => ({
  x,
  y,
  d: 1,
  plated: true,
  use: 'pad',
  label: 'supply',
  ring: 1,
  ...more,
});
const board: Board = {
  id: 'carrier-1',
  title: 'invented',
  kind: 'receiver',
  length: 40,
  height: 21,
  thickness: 1.6,
  beams: [20],
  holes: [hole(5, 4), hole(11, 7, { label: 'ground' })],
  strips: [],
};
const sound: BoardsOfKit = {
  boards: [board],
  panels: {
    designs: [
      { id: 'panel-1', spots: [{ id: 'carrier-1', x: 0, y: 0, turned: false }], width: 40, height: 21, order: 3 },
    ],
    spare: 1,
    waste: 1 / 3,
  },
  places: [
    { board: 'carrier-1', placement: 'near-board', beams: ['column-0'] },
    { board: 'carrier-1', placement: 'right-board', beams: ['row-0'] },
  ],
  legLength: 9.2,
};
const asked = { ...spec, boards: { receivers: true, emitters: false, panel: { x: 50, y: 30 }, thickness: 1.6 } };
const said = (change: Partial<BoardsOfKit>, its = asked) =>
  boards
    .run({ kit: { boards: { ...sound, ...change } } as Kit, spec: its })
    .filter(({ code }) => code !== 'boards/panels');
const withHoles = (...holes: readonly BoardHole[]) => said({ boards: [{ ...board, holes }] });

test('a sound board gives a note alone: boards, panels, what is lost', () => {
  const [note, ...more] = boards.run({ kit: { boards: sound } as Kit, spec: asked });
  expect(more).toEqual([]);
  expect(note).toMatchObject({ code: 'boards/panels', severity: 'note', measured: 3, unit: 'panels' });
  expect(note!.message).toContain('2 boards of 1 kind come from 3 panels of 1 design: panel-1 3 times; 33.3 %');
});

test('a kit without boards has nothing to say of them', () => {
  expect(boards.run({ kit: {} as Kit, spec: asked })).toEqual([]);
});

describe('boards/hole-edge: the thinnest web, by hand', () => {
  const rows: readonly (readonly [string, readonly BoardHole[], number, number])[] = [
    ['1.4 from the edge to the middle leaves 0.9', [hole(1.4, 9)], 0.9, 1],
    ['from the upper edge too', [hole(9, 19.7)], 0.8, 1],
    ['a mounting hole wants 1.5', [hole(2.5, 9, { d: 2.9, ring: 1.5 })], 1.05, 1.5],
    [
      '3-4-5: 2.5 between middles, half a millimetre and a whole one taken',
      [hole(9, 9), hole(10.5, 11, { d: 2 })],
      1,
      1,
    ],
    ['legs in a row stand closer: 1.1 less 0.65', [leg(9), leg(10.1)], 0.45, 0.5],
    ['off the board', [hole(-0.7, 9, { label: 'line 3' })], -1.2, 1],
  ];
  function leg(x: number) {
    return hole(x, 9, { d: 0.65, use: 'leg' });
  }
  test.for(rows)('%s', ([, holes, measured, limit]) => {
    const found = withHoles(...holes);
    if (measured >= limit) return expect(found).toEqual([]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: 'boards/hole-edge', severity: 'error', subject: 'carrier-1', limit });
    expect(found[0]!.measured).toBeCloseTo(measured, 9);
  });
  test('legs 1.15 apart leave the half millimetre that a row needs', () =>
    expect(withHoles(leg(9), leg(10.15))).toEqual([]));
  test('how far a hole lies off the board is told', () => {
    expect(withHoles(hole(-0.7, 9, { label: 'line 3' }))[0]!.message).toMatch(
      /hole for line 3 \(pad\).*1\.2 mm off the board/,
    );
  });
});

test('boards/panel: a panel longer than the maker takes', () => {
  const designs = [{ ...sound.panels.designs[0]!, width: 50.4 }];
  expect(said({ panels: { ...sound.panels, designs } })).toMatchObject([
    { code: 'boards/panel', severity: 'error', subject: 'panel-1', measured: 50.4, limit: 50 },
  ]);
});

describe('boards/legs', () => {
  test('legs longer than a three-leg package has: 12.7, TO-92 outline drawings, from memory', () => {
    expect(said({ legLength: 12.7 })).toEqual([]);
    expect(said({ legLength: 12.8 })).toMatchObject([
      { code: 'boards/legs', severity: 'warning', measured: 12.8, limit: 12.7 },
    ]);
  });
  test('legs thicker than a turned pin’s socket takes: 0.56, common practice', () => {
    const part = (legWidth: number) => ({
      ...asked,
      receivers: {
        ...asked.receivers,
        part: { ...asked.receivers.part, legWidth: { value: legWidth, source: 'this test' } },
      },
    });
    expect(said({}, part(0.56))).toEqual([]);
    expect(said({}, part(0.6))).toMatchObject([
      { code: 'boards/legs', severity: 'warning', measured: 0.6, limit: 0.56 },
    ]);
    expect(said({ legLength: 0 }, part(0.6))).toEqual([]);
  });
});

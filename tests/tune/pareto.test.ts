import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { best, nearest } from '../../src/tune/choose.js';
import { type Objective, unbeaten } from '../../src/tune/pareto.js';
import type { TuneFigures, TuneRow } from '../../src/tune/types.js';

const base: TuneFigures = {
  tilt: 3,
  tiltHeld: 4,
  force: { highest: 0.5, level: 1.1, lowest: 1.7 },
  screwStiffness: 0.9,
  stiffness: 180,
  strain: 0.5,
  strainAllowed: 0.7,
  stopStrain: 0.65,
  stopStress: 18,
  safety: 3.4,
  stopSafety: 2.5,
  preloadLeft: 0.2,
  preloadRatio: 1.3,
  backOff: 3,
  degPerTurn: 1.8,
  mmPerTurn: 5.1,
  reach: 160,
  frequency: 50,
  corrected: false,
  thinner: { stiffness: -11, force: -11, strain: -4 },
  thicker: { stiffness: 12, force: 12, strain: 4 },
};

interface Made extends Partial<TuneFigures> {
  readonly length?: number;
  readonly faults?: TuneRow['faults'];
  readonly remarks?: TuneRow['remarks'];
}

const row = (number: number, { length = 30, faults = [], remarks = [], ...over }: Made = {}): TuneRow => ({
  point: {
    number,
    layout: 'folded',
    legs: 2,
    length: 7,
    thickness: 1.26,
    width: undefined,
    material: undefined,
    tiltDeg: undefined,
    adjust: undefined,
  },
  mount: { length, width: 12, axis: 21, legPitch: 5, fillet: 1.3, preload: 1.5 },
  figures: { ...base, ...over },
  faults,
  remarks,
});
const strain = { code: 'strain', measured: 0.84, limit: 0.7, unit: '%' } as const;
const numbers = (rows: readonly TuneRow[]) => [...unbeaten(rows)];

describe('unbeaten', () => {
  // The definition of Pareto's order, by hand.
  test.for([
    { row: 'better in one, alike in the rest, beats', rows: [row(1), row(2, { length: 33 })], want: [1] },
    {
      row: 'better in one and worse in another: both stay',
      rows: [row(1, { strain: 0.6 }), row(2, { length: 33 })],
      want: [1, 2],
    },
    { row: 'equals stay both', rows: [row(1), row(2)], want: [1, 2] },
    {
      row: 'less than a step is no difference',
      rows: [row(1, { length: 30.1 }), row(2, { length: 29.9 })],
      want: [1, 2],
    },
    {
      row: 'what fails beats nothing, and is not unbeaten',
      rows: [row(1, { length: 20, faults: [strain] }), row(2)],
      want: [2],
    },
    { row: 'more push left is better', rows: [row(1, { preloadLeft: 0.5 }), row(2)], want: [1] },
    { row: 'a finer turn is better', rows: [row(1), row(2, { mmPerTurn: 4.2 })], want: [2] },
    { row: 'quiet enough is enough', rows: [row(1, { frequency: 45 }), row(2, { frequency: 90 })], want: [1, 2] },
    { row: 'below that, stiffer is better', rows: [row(1, { frequency: 20 }), row(2, { frequency: 35 })], want: [2] },
    { row: 'none', rows: [], want: [] },
  ])('$row', ({ rows, want }) => expect(numbers(rows)).toEqual(want));

  test('as the definition has it, for any values (checked by comparing every pair)', () => {
    const two: Objective[] = [
      { name: 'a', unit: '', aim: 'least', step: 1, of: ({ mount }) => mount!.length },
      { name: 'b', unit: '', aim: 'most', step: 1, of: ({ figures }) => figures!.strain },
      { name: 'c', unit: '', aim: 'least', step: 1, of: ({ figures }) => figures!.mmPerTurn },
    ];
    const value = fc.integer({ min: 0, max: 6 });
    fc.assert(
      fc.property(fc.array(fc.tuple(value, value, value), { maxLength: 40 }), (list) => {
        const rows = list.map(([length, s, mmPerTurn], i) => row(i + 1, { length, strain: s, mmPerTurn }));
        const beaten = ([a, b, c]: (typeof list)[number]) =>
          list.some(([x, y, z]) => x <= a && y >= b && z <= c && (x < a || y > b || z < c));
        const want = list.flatMap((each, i) => (beaten(each) ? [] : [i + 1]));
        expect([...unbeaten(rows, two)]).toEqual(want);
      }),
    );
  });
});

describe('best', () => {
  test.for([
    { row: 'the shortest mount', rows: [row(1, { length: 33, strain: 0.4 }), row(2)], want: 2 },
    {
      row: 'sure of its thickness before that',
      rows: [row(1, { length: 33, strain: 0.4 }), row(2, { remarks: ['thick'] })],
      want: 1,
    },
    {
      row: 'quiet before that',
      rows: [row(1, { length: 33, strain: 0.4 }), row(2, { frequency: 35, remarks: ['quiet'] })],
      want: 1,
    },
    {
      row: 'where none is sure, the rest of the rule',
      rows: [row(1, { length: 33, strain: 0.4, remarks: ['thin'] }), row(2, { remarks: ['thick'] })],
      want: 2,
    },
    {
      row: 'alike in length: the one with more room',
      rows: [row(1, { strain: 0.51 }), row(2, { strain: 0.5 })],
      want: 2,
    },
    { row: 'nothing passes', rows: [row(1, { faults: [strain] })], want: undefined },
  ])('$row', ({ rows, want }) => expect(best(rows)?.point.number).toBe(want));

  test('the nearest miss is that whose misses come to the least of their limits', () => {
    const off = (measured: number) => ({ ...strain, measured });
    // by hand: .84/.7 is off by 20 %; .77/.7 and .72/.7 by 10 and 2.9 %
    const rows = [
      row(1, { faults: [strain] }),
      row(2, { faults: [off(0.77), off(0.72)] }),
      row(3, { faults: [{ code: 'undrawn', measured: null, limit: null, unit: '' }] }),
    ];
    expect(nearest(rows)?.point.number).toBe(2);
    expect(nearest([])).toBeUndefined();
  });
});

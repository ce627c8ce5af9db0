/** Modules on a tray's floor: none over another, plugs at the wall, and as short as any arrangement of a few. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Connector, Module } from '../../src/components/module.js';
import { footprints, turned, wallOf } from '../../src/layout/bay/footprint.js';
import { type Floor, pack } from '../../src/layout/bay/pack.js';
import type { BayModule } from '../../src/spec/bay.js';

const datum = <T>(value: T) => ({ value, source: 'this test' });
const plug: Connector = { what: 'plug', side: 'left', at: 5, width: 8, height: 5, up: 3, room: 30, access: 'outside' };
const module = (id: string, size: readonly [number, number], connectors: readonly Connector[] = []): BayModule => ({
  id,
  name: id,
  at: undefined,
  turn: undefined,
  path: '',
  part: {
    title: id,
    length: datum(size[0]),
    width: datum(size[1]),
    thickness: datum(1.6),
    above: datum(3),
    below: datum(2),
    holes: datum([[3, 3]]),
    holeDiameter: datum(3.2),
    connectors: datum(connectors),
    massG: datum(1),
    heatMw: datum(0),
  } satisfies Module,
});
const floor: Floor = { room: [400, 70], corner: [7, 6.5], taken: [[7, 0, 23, 8]] };

const overlap = (a: readonly number[], b: readonly number[]) =>
  Math.min(a[2]!, b[2]!) - Math.max(a[0]!, b[0]!) > 1e-6 && Math.min(a[3]!, b[3]!) - Math.max(a[1]!, b[1]!) > 1e-6;

test('whatever is packed lies on the floor, apart from each other and from what is taken, plugs at the outer wall', () => {
  const size = fc.tuple(fc.integer({ min: 8, max: 55 }), fc.integer({ min: 8, max: 55 }));
  fc.assert(
    fc.property(fc.array(fc.tuple(size, fc.boolean()), { minLength: 1, maxLength: 8 }), (list) => {
      const modules = list.map(([[a, b], plugged], i) => module(`m${i}`, [a, b], plugged ? [plug] : []));
      for (const { spots, left } of pack(modules, floor)) {
        expect(spots.length + left.length).toBe(modules.length);
        const there = [...spots.map(({ cell }) => cell), ...floor.taken, [0, 0, 7, 6.5], [0, 63.5, 7, 70]];
        there.forEach((a, i) => {
          for (const b of there.slice(i + 1)) expect(overlap(a, b)).toBe(false);
        });
        for (const { cell, footprint } of spots) {
          expect(Math.min(cell[0], cell[1])).toBeGreaterThanOrEqual(-1e-9);
          expect(cell[2]).toBeLessThanOrEqual(400 + 1e-9);
          expect(cell[3]).toBeLessThanOrEqual(70 + 1e-9);
          if (footprint.faces.length > 0) {
            expect(footprint.faces).toEqual(['outer']);
            expect(cell[3]).toBeCloseTo(70, 9);
          }
        }
      }
    }),
    { numRuns: 60 },
  );
});

test('of up to three plain boards no arrangement at all is much shorter: brute force over places that are sums of sizes', () => {
  const open: Floor = { room: [300, 40], corner: [0, 0], taken: [] };
  const sets = [
    [
      [30, 18],
      [20, 18],
      [25, 12],
    ],
    [
      [38, 10],
      [22, 26],
      [14, 26],
    ],
    [
      [19, 17],
      [19, 21],
      [36, 12],
    ],
    [
      [28, 38],
      [12, 16],
      [12, 20],
    ],
  ] as const;
  const ratios = sets.map((sizes) => {
    const ours = Math.min(
      ...pack(
        sizes.map((size, i) => module(`m${i}`, size)),
        open,
      ).map(({ left, length }) => (left.length > 0 ? Infinity : length)),
    );
    return (
      ours /
      shortest(
        sizes.map(([a, b]) => [a + 2, b + 2] as const),
        40,
      )
    );
  });
  for (const ratio of ratios) expect(ratio).toBeGreaterThanOrEqual(1 - 1e-9);
  // Measured: two of four are shortest, the others 2 and 8 % longer.
  expect(Math.max(...ratios)).toBeLessThan(1.1);
  expect(ratios.filter((ratio) => ratio < 1 + 1e-9).length).toBeGreaterThanOrEqual(2);
});

/** A shortest packing can be pushed left and down until every place is a sum of the others' sizes. */
function shortest(sizes: readonly (readonly [number, number])[], depth: number): number {
  let best = Infinity;
  const turns = 2 ** sizes.length;
  for (let t = 0; t < turns; t++) {
    const turnedSizes = sizes.map(([a, b], i) => ((t >> i) & 1 ? ([b, a] as const) : ([a, b] as const)));
    const sums = (axis: 0 | 1) => {
      const all = new Set<number>();
      for (let s = 0; s < turns; s++)
        all.add(turnedSizes.reduce((sum, size, i) => sum + ((s >> i) & 1 ? size[axis] : 0), 0));
      return [...all];
    };
    const [xs, ys] = [sums(0), sums(1)];
    const place = (i: number, there: readonly (readonly number[])[]): void => {
      const end = Math.max(0, ...there.map((r) => r[2]!));
      if (end >= best) return;
      if (i === turnedSizes.length) {
        best = end;
        return;
      }
      const [w, d] = turnedSizes[i]!;
      for (const x of xs)
        for (const y of ys) {
          const r = [x, y, x + w, y + d];
          if (y + d <= depth + 1e-9 && !there.some((other) => overlap(other, r))) place(i + 1, [...there, r]);
        }
    };
    place(0, []);
  }
  return best;
}

describe('turning', () => {
  test('a quarter turn to the left brings the right edge to the outer wall, the front one to the right', () => {
    expect(wallOf('right', 90)).toBe('outer');
    expect(wallOf('front', 90)).toBe('right');
    expect(wallOf('left', 270)).toBe('outer');
    expect(wallOf('back', 180)).toBe('inner');
  });

  test('points turn with the board and stay on it', () => {
    const { part } = module('m', [50, 20]);
    expect(turned(part, [50, 0], 90)).toEqual([20, 50]);
    expect(turned(part, [5, 2], 180)).toEqual([45, 18]);
    expect(turned(part, [0, 20], 270)).toEqual([20, 50]);
  });

  test('room at an edge turns with it', () => {
    const inner: Connector = { ...plug, side: 'right', access: 'inside', room: 9 };
    const forms = footprints(module('m', [50, 20], [inner]));
    expect(forms.map(({ margins }) => [margins.right, margins.outer, margins.left, margins.inner])).toEqual([
      [9, 1, 1, 1],
      [1, 9, 1, 1],
      [1, 1, 9, 1],
      [1, 1, 1, 9],
    ]);
  });
});

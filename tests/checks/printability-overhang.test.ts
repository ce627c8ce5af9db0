/** What prints into the air, on solids whose spans, reaches and angles are known by hand. Layers of .2, limit 45°. */
import { beforeAll, describe, expect, test } from 'vitest';
import { overhang } from '../../src/checks/printability/overhang.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { circle, polygon, teardrop } from '../../src/solid/outlines.js';
import { box, cone, cylinder, prism } from '../../src/solid/shapes.js';
import { ask } from './printability.js';

let k: MeasuringKernel;
beforeAll(async () => {
  k = await loadManifoldKernel();
});

const found = (solid: Solid, figures = {}) => ask(overhang, k, solid, figures);
const tan = (angle: number) => Math.tan((angle * Math.PI) / 180);

test('a block, upright walls and a hole that stands have nothing in the air', () => {
  expect(found(box(k, [0, 0, 0], [20, 10, 8]))).toEqual([]);
  const hole = cylinder(k, { from: [10, 5, -1], to: [10, 5, 9], radius: 3, fit: 'hole' });
  expect(found(k.subtract(box(k, [0, 0, 0], [20, 10, 8]), [hole]))).toEqual([]);
});

describe('bridges', () => {
  /** Two posts, 5 apart, and a beam across them. */
  const gate = () =>
    k.union([box(k, [0, 0, 0], [5, 10, 10.1]), box(k, [10, 0, 0], [15, 10, 10.1]), box(k, [0, 0, 10], [15, 10, 12])]);

  test('5 mm between two posts: an error where the printer bridges 4, told where 6, nothing where 12', () => {
    const [error, ...more] = found(gate(), { bridge: 4 });
    expect(more).toEqual([]);
    expect(error).toMatchObject({ code: 'print/bridge', severity: 'error', subject: 'block', limit: 4 });
    expect(error!.measured).toBeCloseTo(5, 2);
    expect(error!.message).toMatch(/at \([\d.]+, [\d.]+, 10\.0\)/);
    const [note] = found(gate(), { bridge: 6 });
    expect(note).toMatchObject({ code: 'print/bridge', severity: 'note' });
    expect(note!.measured).toBeCloseTo(5, 2);
    expect(found(gate(), { bridge: 12 })).toEqual([]);
  });

  test('a beam askew spans what lies along it', () => {
    // By hand: a strip at 30° between walls 6 apart is 6 / cos 30° = 6.93 long from wall to wall.
    const slope = tan(30);
    const strip = polygon([
      [-1, -slope],
      [7, 7 * slope],
      [7, 7 * slope + 2],
      [-1, 2 - slope],
    ]);
    const solid = k.union([
      box(k, [-4, -8, 0], [0, 12, 8.1]),
      box(k, [6, -8, 0], [10, 12, 8.1]),
      box(k, [-4, -8, 8], [0, 12, 9]),
      box(k, [6, -8, 8], [10, 12, 9]),
      prism(k, strip, { axis: 'z', from: 8, to: 9 }),
    ]);
    const [one, ...more] = found(solid, { bridge: 3 });
    expect(more).toEqual([]);
    expect(one!.code).toBe('print/bridge');
    expect(one!.measured).toBeGreaterThan(6.85);
    expect(one!.measured).toBeLessThan(6.98);
  });

  test('a ring around a hole is a bridge of the chord that touches the hole', () => {
    // By hand: radii 4 and 2: 2 √(16 − 4) = 6.93; the layer's own reach of .2 inward makes the chord a little shorter.
    const solid = k.subtract(box(k, [0, 0, 0], [16, 16, 10]), [
      cylinder(k, { from: [8, 8, -1], to: [8, 8, 6], radius: 4, fit: 'hole' }),
      cylinder(k, { from: [8, 8, 5], to: [8, 8, 11], radius: 2, fit: 'hole' }),
    ]);
    const [one, ...more] = found(solid, { bridge: 6 });
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/bridge', severity: 'error' });
    expect(one!.measured).toBeGreaterThan(6.6);
    expect(one!.measured).toBeLessThan(7);
    expect(found(solid, { bridge: 14 })).toEqual([]);
  });

  test('a closed room under a wide ceiling is found, and a narrow one is passed', () => {
    const room = (width: number) =>
      k.subtract(box(k, [0, 0, 0], [40, 40, 10]), [box(k, [5, 5, -1], [35, 5 + width, 6])]);
    expect(found(room(12))).toMatchObject([{ code: 'print/bridge', severity: 'error' }]);
    expect(found(room(12))[0]!.measured).toBeCloseTo(12, 1);
    expect(found(room(4))).toEqual([]);
  });
});

describe('slopes', () => {
  const lean = (angle: number) => {
    const out = 10 * tan(angle);
    return prism(
      k,
      polygon([
        [0, 0],
        [10, 0],
        [10 + out, 10],
        [0, 10],
      ]),
      { axis: 'y', from: 0, to: 20 },
    );
  };
  const flower = (angle: number) =>
    cone(k, { from: [0, 0, 0], to: [0, 0, 8], radii: [4, 4 + 8 * tan(angle)], fit: 'pin' });

  test.for([
    { shape: 'wall', draw: lean },
    { shape: 'cone', draw: flower },
  ])('a $shape at 40° and at 45° prints, at 55° it does not', ({ draw }) => {
    expect(found(draw(40))).toEqual([]);
    expect(found(draw(45))).toEqual([]);
    const [one, ...more] = found(draw(55));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/overhang', severity: 'error', limit: 45, unit: '°' });
    expect(one!.measured).toBeCloseTo(55, 0);
  });

  test('a little beyond the limit is found, too, and a printer that does 60° prints it', () => {
    expect(found(lean(48))).toMatchObject([{ code: 'print/overhang' }]);
    expect(found(lean(48))[0]!.measured).toBeCloseTo(48, 0);
    expect(found(lean(55), { overhangDeg: 60 })).toEqual([]);
  });
});

describe('ledges', () => {
  const shelf = (out: number) => k.union([box(k, [0, 0, 0], [10, 20, 12]), box(k, [9, 0, 8], [10 + out, 20, 12])]);

  test('2 mm that stick out are a ledge of 2', () => {
    const [one, ...more] = found(shelf(2));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ code: 'print/ledge', severity: 'error' });
    expect(one!.measured).toBeCloseTo(2, 1);
    expect(one!.message).toContain(', 8.0)');
  });

  test('what still lies on the layer beneath by half a line is none: .2 + .225', () => {
    expect(found(shelf(0.4))).toEqual([]);
    expect(found(shelf(0.5))).toMatchObject([{ code: 'print/ledge' }]);
  });

  test('a chamfer of 45° under it takes it away', () => {
    const under = polygon([
      [9, 5],
      [10, 6],
      [12, 8],
      [12, 12],
      [9, 12],
    ]);
    expect(found(k.union([box(k, [0, 0, 0], [10, 20, 12]), prism(k, under, { axis: 'y', from: 0, to: 20 })]))).toEqual(
      [],
    );
  });

  test('the lip of a mark is relief over its own ground, and a ledge over nothing', () => {
    const mark = (height: number) =>
      k.subtract(box(k, [0, 0, 0], [10, 20, 12]), [box(k, [9.5, 5, 4], [11, 15, 4 + height])]);
    expect(found(mark(0.6))).toEqual([]);
    // .5 deep and 4 high, open at both ends, so that nothing can be drawn taut across it.
    const step = k.subtract(box(k, [0, 0, 0], [10, 20, 12]), [box(k, [9.5, -1, 4], [11, 21, 8])]);
    expect(found(step)).toMatchObject([{ code: 'print/ledge' }]);
  });
});

describe('islands', () => {
  const hook = (hanging: Solid) => k.union([box(k, [0, 0, 0], [4, 6, 20]), box(k, [3, 0, 18], [12, 6, 20]), hanging]);

  test('a piece that hangs from above begins in the air', () => {
    const all = found(hook(box(k, [9, 1, 10], [11, 4, 19])));
    const island = all.find(({ code }) => code === 'print/island')!;
    expect(island).toMatchObject({ severity: 'error', limit: 0 });
    expect(island.measured).toBeCloseTo(2, 2);
    expect(island.message).toContain(', 10.0)');
  });

  test('so does a tip, though no side of it is too flat', () => {
    const tip = cone(k, { from: [10, 3, 10], to: [10, 3, 13], radii: [0, 2], fit: 'pin' });
    const all = found(hook(k.union([tip, cylinder(k, { from: [10, 3, 13], to: [10, 3, 19], radius: 2, fit: 'pin' })])));
    expect(all.map(({ code }) => code)).toContain('print/island');
  });
});

describe('holes that lie', () => {
  const block = (cut: Solid) => k.subtract(box(k, [0, 0, 0], [20, 20, 20]), [cut]);

  test('a round one of 8 has a roof too flat, one with a roof of 45° has not', () => {
    const round = prism(k, circle([10, 10], 4, { fit: 'hole' }), { axis: 'x', from: -1, to: 21 });
    const codes = found(block(round)).map(({ code }) => code);
    expect(codes.length).toBeGreaterThan(0);
    expect(new Set(codes)).toEqual(new Set(['print/overhang']));
    const roofed = prism(k, teardrop([10, 10], 4, { roof: '+y' }), { axis: 'x', from: -1, to: 21 });
    expect(found(block(roofed))).toEqual([]);
  });

  test('a roof on the wrong side does not help', () => {
    const turned = prism(k, teardrop([10, 10], 4, { roof: '-y' }), { axis: 'x', from: -1, to: 21 });
    expect(found(block(turned)).map(({ code }) => code)).toContain('print/overhang');
  });
});

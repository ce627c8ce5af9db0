import { beforeAll, describe, expect, test } from 'vitest';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { multiply, rotation, translation } from '../../src/solid/matrix.js';
import { asHoles, circle, rectangle, teardrop } from '../../src/solid/outlines.js';
import type { Profiles } from '../../src/solid/profiles.js';
import { box, cone, cylinder, prism } from '../../src/solid/shapes.js';
import { text } from '../../src/solid/text.js';

let k: MeasuringKernel;
let profiles: Profiles;
beforeAll(async () => {
  ({ kernel: k, profiles } = await loadManifold());
});

describe('what the kernel refuses', () => {
  test('numbers that are none', () => {
    expect(() =>
      k.extrude(
        [
          [
            [0, 0],
            [Number.NaN, 2],
            [3, 4],
          ],
        ],
        5,
      ),
    ).toThrow(RangeError);
    expect(() => k.extrude(rectangle(0, 0, 2, 3), Number.NaN)).toThrow(RangeError);
    expect(() => k.extrude(rectangle(0, 0, 2, 3), 0)).toThrow(RangeError);
    expect(() => k.move(box(k, [0, 0, 0], [2, 3, 4]), translation([0, Number.POSITIVE_INFINITY, 0]))).toThrow(
      RangeError,
    );
  });
  test('a clockwise outline, which encloses nothing', () => {
    expect(() =>
      k.extrude(
        [
          [
            [0, 0],
            [0, 2],
            [3, 2],
          ],
        ],
        5,
      ),
    ).toThrow(/no area/);
  });
  test('outlines that cross themselves or each other, and a hole that runs the wrong way', () => {
    const crossed = [
      [-10, 0],
      [0.2, 0],
      [0, 0.2],
      [0, -10],
      [40, -10],
      [40, 40],
      [-10, 40],
    ] as const;
    expect(() => k.extrude([crossed], 5)).toThrow(/cross/);
    expect(() => k.extrude([...rectangle(0, 0, 5, 4), ...rectangle(4, 0, 9, 4)], 5)).toThrow(/overlap/);
    expect(() => k.extrude([...rectangle(0, 0, 9, 9), ...rectangle(3, 3, 4, 5)], 5)).toThrow(/hole/);
    expect(k.volume(k.extrude([...rectangle(0, 0, 9, 9), ...asHoles(rectangle(3, 3, 4, 5))], 5))).toBeCloseTo(395, 9);
    expect(() =>
      k.revolve(
        [
          [
            [1, 0],
            [3, 2],
            [3, 0],
            [1, 2],
          ],
        ],
        24,
      ),
    ).toThrow(RangeError);
  });
  test('a mirror or a stretch in place of a move', () => {
    const solid = box(k, [0, 0, 0], [2, 3, 4]);
    expect(() => k.move(solid, [-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1])).toThrow(/rigid/);
    expect(() => k.move(solid, [2, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1])).toThrow(/rigid/);
  });
});

describe('a cutter that takes nothing away is refused', () => {
  const body = () => box(k, [0, 0, 0], [20, 30, 5]);
  test('one beside the body', () => {
    expect(() => k.subtract(body(), [box(k, [5, 5, -1], [7, 8, 6]), box(k, [40, 5, -1], [42, 8, 6])])).toThrow(
      /cutter 1/,
    );
  });
  test('one that only touches a face', () => {
    expect(() => k.subtract(body(), [box(k, [20, 5, 0], [25, 8, 5])])).toThrow(/cutter 0/);
  });
  test('one whose box meets the body, in a notch', () => {
    const notched = k.subtract(body(), [box(k, [10, 10, -1], [21, 20, 6])]);
    expect(() => k.subtract(notched, [box(k, [12, 12, 1], [18, 18, 4])])).toThrow(/cutter 0/);
  });
  test('one that fills a pocket cut before, flush on all its walls', () => {
    const pocket = () => box(k, [10, 10, 2], [15, 20, 6]);
    const notched = k.subtract(body(), [pocket()]);
    expect(() => k.subtract(notched, [pocket()])).toThrow(/cutter 0/);
    expect(k.volume(k.subtract(notched, [box(k, [10, 10, 1.9], [15, 20, 5])]))).toBeCloseTo(3000 - 5 * 10 * 3.1, 6);
  });
  test('one of several copies of the same hole', () => {
    const hole = cylinder(k, { from: [0, 0, -1], to: [0, 0, 6], radius: 1.6, fit: 'hole' });
    const at = (x: number) => k.move(hole, translation([x, 4, 0]));
    expect(k.volume(k.subtract(body(), [at(4), at(9), at(14)]))).toBeLessThan(3000 - 3 * 5 * Math.PI * 1.6 ** 2);
    expect(() => k.subtract(body(), [at(4), at(-9), at(14)])).toThrow(/cutter 1/);
  });
  test('copies of the body itself, moved', () => {
    const one = box(k, [0, 0, 0], [4, 5, 6]);
    expect(() => k.subtract(one, [k.move(one, translation([0, 5, 0]))])).toThrow(/cutter 0/);
    expect(k.volume(k.subtract(one, [k.move(one, translation([0, 3, 0]))]))).toBeCloseTo(4 * 3 * 6, 9);
  });
  test('but one that cuts inside another does cut, and one that takes all', () => {
    const cut = k.subtract(body(), [box(k, [2, 2, -1], [12, 12, 6]), box(k, [4, 4, 1], [6, 6, 3])]);
    expect(k.volume(cut)).toBeCloseTo(20 * 30 * 5 - 10 * 10 * 5, 9);
    expect(k.volume(k.subtract(body(), [box(k, [-1, -1, -1], [21, 31, 6])]))).toBe(0);
  });
});

describe('measures by hand', () => {
  test('a block with a round hole: the hole is never smaller than drawn', () => {
    const radius = 3.1;
    const drilled = k.subtract(box(k, [0, 0, 0], [22, 13, 7]), [
      cylinder(k, { from: [11, 6, -1], to: [11, 6, 8], radius, fit: 'hole' }),
    ]);
    const ideal = 22 * 13 * 7 - 7 * Math.PI * radius ** 2;
    expect(k.volume(drilled)).toBeLessThan(ideal);
    // The polygon keeps within 0.01 mm of the circle.
    expect(k.volume(drilled)).toBeGreaterThan(ideal - 7 * 2 * Math.PI * radius * 0.01);
    expect(k.genus(drilled)).toBe(1);
    const pin = cylinder(k, { from: [11, 6, -1], to: [11, 6, 8], radius, fit: 'pin' });
    expect(k.overlap(drilled, pin)).toBeLessThan(1e-9);
  });
  test('turned boxes keep to their grid', () => {
    const turned = k.move(box(k, [1, 2, 3], [4, 6, 8]), multiply(translation([10, 0, 0]), rotation('z', Math.PI / 2)));
    expect(k.box(turned)).toEqual({ min: [4, 1, 3], max: [8, 4, 8] });
  });
  test.for([
    { axis: 'x', min: [7, 1, 2], max: [11, 4, 9] },
    { axis: 'y', min: [1, 7, 2], max: [4, 11, 9] },
    { axis: 'z', min: [1, 2, 7], max: [4, 9, 11] },
  ] as const)('a prism along $axis lies where its outlines say', ({ axis, min, max }) => {
    const solid = prism(k, rectangle(1, 2, 4, 9), { axis, from: 7, to: 11 });
    expect(k.box(solid)).toEqual({ min, max });
    expect(k.volume(solid)).toBeCloseTo(3 * 7 * 4, 9);
  });
  test('an L along y is not mirrored', () => {
    const solid = prism(
      k,
      [
        [
          [0, 0],
          [5, 0],
          [5, 1],
          [1, 1],
          [1, 3],
          [0, 3],
        ],
      ],
      { axis: 'y', from: 2, to: 4 },
    );
    expect(k.rayHit(solid, [4.5, 3, 10], [4.5, 3, -1])?.[2]).toBeCloseTo(1, 9);
    expect(k.rayHit(solid, [0.5, 3, 10], [0.5, 3, -1])?.[2]).toBeCloseTo(3, 9);
  });
  test('a cylinder aslant', () => {
    const solid = cylinder(k, { from: [1, 2, 3], to: [4, 6, 15], radius: 0.5, fit: 'pin' });
    // Length 13; the polygon lies within the circle.
    expect(k.volume(solid)).toBeLessThan(13 * Math.PI * 0.25);
    expect(k.volume(solid)).toBeGreaterThan(13 * Math.PI * 0.49 ** 2);
    expect(k.rayHit(solid, [1, 2, 3], [4, 6, 15])).not.toBeNull();
  });
  test('a cone: π h (a² + ab + b²) / 3', () => {
    const solid = cone(k, { from: [2, 3, 9], to: [2, 3, 4], radii: [4, 1.5], fit: 'pin' });
    const ideal = (Math.PI * 5 * (16 + 6 + 2.25)) / 3;
    expect(k.volume(solid)).toBeLessThan(ideal);
    expect(k.volume(solid) / ideal).toBeGreaterThan(0.994);
    expect(k.box(solid).min[2]).toBe(4);
    expect(k.section(solid, 8.999)[0]!.reduce((most, [x]) => Math.max(most, x), 0)).toBeCloseTo(6, 2);
  });
  test('gaps and overlaps of two boxes', () => {
    const a = box(k, [0, 0, 0], [2, 3, 4]);
    expect(k.gap(a, box(k, [2.3, 0, 4.4], [4, 3, 5]), 1)).toBeCloseTo(0.5, 6);
    expect(k.gap(a, box(k, [2.7, 0, 0], [4, 3, 5]), 0.6)).toBe(0.6);
    expect(k.gap(a, box(k, [1, 1, 1], [4, 3, 5]), 1)).toBe(0);
    expect(k.overlap(a, box(k, [1, 1, 1], [4, 3, 5]))).toBeCloseTo(1 * 2 * 3, 9);
    expect(k.overlap(a, box(k, [2, 0, 0], [4, 3, 5]))).toBe(0);
  });
  test('a ray that begins inside hits at once; one that ends short misses', () => {
    const a = box(k, [0, 0, 0], [2, 3, 4]);
    expect(k.rayHit(a, [1, 1, 1], [1, 1, 2])).toEqual([1, 1, 1]);
    expect(k.rayHit(a, [1, 1, 9], [1, 1, 4.5])).toBeNull();
    expect(k.rayHit(a, [1, 1, 9], [1, 1, -4])).toEqual([1, 1, 4]);
  });
});

test('a scope frees what it does not keep', () => {
  let inner: ReturnType<typeof box> | undefined;
  const kept = k.scope(() => {
    inner = box(k, [0, 0, 0], [1, 2, 3]);
    const keep = box(k, [0, 0, 0], [4, 5, 6]);
    return { keep: [keep], value: keep };
  });
  expect(k.volume(kept)).toBeCloseTo(120, 9);
  expect(() => k.volume(inner!)).toThrow(/deleted/i);
});

describe('profiles', () => {
  test('a square grown with round corners: a² + 4 a d + π d²', () => {
    const grown = profiles.offset(rectangle(0, 0, 7, 7), 2, { corners: 'round' });
    expect(profiles.area(grown)).toBeCloseTo(49 + 56 + Math.PI * 4, 0);
    expect(profiles.area(profiles.offset(rectangle(0, 0, 7, 7), 2, { corners: 'miter' }))).toBeCloseTo(121, 6);
    expect(profiles.area(profiles.offset(rectangle(0, 0, 7, 7), -2))).toBeCloseTo(9, 6);
  });
  test('set operations', () => {
    const [a, b] = [rectangle(0, 0, 5, 4), rectangle(3, 1, 9, 2)];
    expect(profiles.area(profiles.union([a, b]))).toBeCloseTo(20 + 6 - 2, 9);
    expect(profiles.area(profiles.difference(a, b))).toBeCloseTo(18, 9);
    expect(profiles.area(profiles.intersection(a, b))).toBeCloseTo(2, 9);
    expect(profiles.pieces([...a, ...rectangle(20, 0, 21, 3)])).toHaveLength(2);
  });
  test('a teardrop holds its circle and a 45° roof, whichever side is up', () => {
    for (const roof of ['+x', '-x', '+y', '-y'] as const) {
      const drop = teardrop([10, 20], 3, { roof });
      expect(profiles.area(profiles.difference(circle([10, 20], 3, { fit: 'pin' }), drop))).toBeLessThan(1e-6);
      const { min, max } = profiles.bounds(drop);
      const reach = { '+x': max[0] - 10, '-x': 10 - min[0], '+y': max[1] - 20, '-y': 20 - min[1] };
      expect(reach[roof]).toBeCloseTo(3 * Math.SQRT2, 6);
      for (const [side, far] of Object.entries(reach)) if (side !== roof) expect(far).toBeCloseTo(3, 6);
    }
    expect(profiles.bounds(teardrop([0, 0], 3, { roof: '+y', top: 3.2 })).max[1]).toBeCloseTo(3.2, 6);
  });
  test('every printable character has an outline or is blank', () => {
    for (let c = 33; c < 127; c++) {
      const letter = text(profiles, String.fromCharCode(c), { height: 7 });
      expect(profiles.area(letter)).toBeGreaterThan(0.5);
    }
    expect(text(profiles, '  ', { height: 7 })).toEqual([]);
    expect(() => text(profiles, 'é', { height: 7 })).toThrow(RangeError);
  });
});

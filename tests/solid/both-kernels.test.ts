import { beforeAll, describe, expect, test } from 'vitest';
import { jscadKernel } from '../../src/solid/jscad-kernel.js';
import type { Kernel, MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { rotation } from '../../src/solid/matrix.js';
import { meshBox, meshVolume } from '../../src/solid/mesh-measures.js';
import { hexagon, ring, roundedRectangle, slot, teardrop } from '../../src/solid/outlines.js';
import { box, cone, cylinder, prism } from '../../src/solid/shapes.js';

let one: MeasuringKernel;
beforeAll(async () => {
  one = await loadManifoldKernel();
});
const other = jscadKernel();

const plate = (k: Kernel) => box(k, [0, 0, 0], [44, 26, 9]);
const rows: readonly { readonly what: string; readonly make: (k: Kernel) => Solid }[] = [
  { what: 'a ring', make: (k) => k.extrude(ring([3, 4], 7, 2.5), 6) },
  {
    what: 'a rounded plate on its edge',
    make: (k) => prism(k, roundedRectangle([0, 0, 30, 11], 3), { axis: 'y', from: -3, to: 4 }),
  },
  { what: 'a cone aslant', make: (k) => cone(k, { from: [1, 2, 3], to: [5, 9, 11], radii: [3, 1.2], fit: 'hole' }) },
  {
    what: 'a plate with holes, pockets and roofs',
    make: (k) =>
      k.subtract(plate(k), [
        cylinder(k, { from: [6, 7, -1], to: [6, 7, 10], radius: 1.7, fit: 'hole' }),
        prism(k, hexagon([17, 9], 5.7, { along: 'x' }), { axis: 'z', from: 6, to: 10 }),
        prism(k, slot([25, 6], [31, 15], 1.4), { axis: 'z', from: -1, to: 10 }),
        prism(k, teardrop([38, 4], 2.2, { roof: '+y' }), { axis: 'y', from: -1, to: 27 }),
      ]),
  },
  {
    what: 'two plates crossed, and what they share',
    make: (k) => {
      const crossed = k.move(plate(k), rotation('z', 0.4));
      return k.union([k.subtract(plate(k), [crossed]), k.intersect(plate(k), crossed)]);
    },
  },
];

describe('both kernels draw the same', () => {
  test.for(rows)('$what', ({ make }) => {
    const [a, b] = [one.mesh(make(one)), other.mesh(make(other))];
    expect(meshVolume(b) / meshVolume(a)).toBeCloseTo(1, 4);
    for (const side of ['min', 'max'] as const)
      for (let i = 0; i < 3; i++) expect(meshBox(b)[side][i]).toBeCloseTo(meshBox(a)[side][i]!, 2);
  });
});

test('two crossed plates are one plate again: 44 · 26 · 9', () => {
  expect(one.volume(rows[4]!.make(one))).toBeCloseTo(44 * 26 * 9, 6);
});

test('the other kernel refuses cutters that take nothing, too', () => {
  expect(() => other.subtract(plate(other), [box(other, [50, 0, 0], [52, 3, 4])])).toThrow(RangeError);
});

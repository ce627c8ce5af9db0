import fc from 'fast-check';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { gateFile } from '../../src/outputs/gate.js';
import { stlBytes } from '../../src/outputs/stl.js';
import { readStl } from '../../src/outputs/stl-read.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { teardrop } from '../../src/solid/outlines.js';
import type { Profiles } from '../../src/solid/profiles.js';
import { box, cone, cylinder, prism } from '../../src/solid/shapes.js';
import { text } from '../../src/solid/text.js';
import { expectSolid } from '../solid/expect-solid.js';

let k: MeasuringKernel;
let profiles: Profiles;
beforeAll(async () => {
  ({ kernel: k, profiles } = await loadManifold());
});

const names = { kit: 'bench-console', part: 'drilled-block' };
const written = (solid: Solid) => stlBytes(k.mesh(solid), names);

function read(bytes: Uint8Array) {
  const file = readStl(bytes);
  if (!file.ok) throw new Error('not an STL');
  return file.mesh;
}

/** The independent reader: three's loader, volume by the divergence theorem over its own vertices and normals. */
function readByThree(bytes: Uint8Array) {
  const geometry = new STLLoader().parse(bytes.slice().buffer);
  const p = geometry.getAttribute('position').array;
  const n = geometry.getAttribute('normal').array;
  let [volume, worstNormal] = [0, 1];
  for (let i = 0; i < p.length; i += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = p.slice(i, i + 9) as unknown as number[] as never as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    volume += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    const u = [bx - ax, by - ay, bz - az] as const;
    const v = [cx - ax, cy - ay, cz - az] as const;
    const w = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
    const cosine = (w[0] * n[i]! + w[1] * n[i + 1]! + w[2] * n[i + 2]!) / Math.hypot(...w);
    worstNormal = Math.min(worstNormal, cosine);
  }
  return { volume, triangles: p.length / 9, worstNormal };
}

const drilled = () =>
  k.subtract(box(k, [0, 0, 0], [30, 20, 10]), [
    cylinder(k, { from: [12, 8, -1], to: [12, 8, 11], radius: 2.75, fit: 'hole' }),
  ]);

describe('read back by an independent reader', () => {
  test('a plain block: 30 · 20 · 10', () => {
    const { volume, triangles, worstNormal } = readByThree(written(box(k, [0, 0, 0], [30, 20, 10])));
    expect(volume).toBeCloseTo(6000, 2);
    expect(triangles).toBe(12);
    expect(worstNormal).toBeGreaterThan(0.9999);
  });
  test('a drilled block: 30 · 20 · 10 − π 2.75² 10, the hole up to 0.01 mm larger in radius', () => {
    const { volume } = readByThree(written(drilled()));
    expect(volume).toBeLessThan(6000 - Math.PI * 2.75 ** 2 * 10);
    expect(volume).toBeGreaterThan(6000 - Math.PI * 2.76 ** 2 * 10);
  });
});

test('the header names kit and part in ASCII, and does not read as a text STL', () => {
  const head = (kit: string) =>
    new TextDecoder().decode(stlBytes(k.mesh(drilled()), { kit, part: 'tile' }).slice(0, 80));
  expect(head('bench-console').trimEnd()).toBe('beamloom bench-console / tile');
  expect(head('solid')).not.toMatch(/^solid/);
  expect(head('gläser')).toContain('gl?ser / tile');
  expect(head('long-'.repeat(40))).toHaveLength(80);
});

test('the same mesh gives the same bytes', () => {
  const mesh = k.mesh(drilled());
  expect(stlBytes(mesh, names)).toEqual(stlBytes(mesh, names));
});

describe('the own reader agrees with the solid', () => {
  test.for([
    { what: 'a drilled block', make: drilled, genus: 1 },
    {
      what: 'a block with a lying roofed hole and a countersink',
      make: () =>
        k.subtract(box(k, [0, 0, 0], [31, 17, 12]), [
          prism(k, teardrop([15, 6], 2.1, { roof: '+y' }), { axis: 'y', from: -1, to: 18 }),
          cone(k, { from: [5, 8, 13], to: [5, 8, 7], radii: [4, 0], fit: 'hole' }),
        ]),
      genus: 1,
    },
    {
      what: 'engraved letters',
      make: () =>
        k.subtract(
          box(k, [0, 0, 0], [60, 12, 3]),
          [prism(k, text(profiles, 'B8&g', { height: 7 }), { axis: 'z', from: 2.4, to: 4 })].map((s) =>
            k.move(s, [1, 0, 0, 3, 0, 1, 0, 3, 0, 0, 1, 0, 0, 0, 0, 1]),
          ),
        ),
      genus: 0,
    },
  ])('$what', ({ make, genus }) => {
    const solid = make();
    expectSolid(read(written(solid)), { genus, volume: k.volume(solid), volumeWithin: 5e-4, box: k.box(solid) });
  });
});

test('random drilled and slotted plates pass the gate', () => {
  const length = fc.integer({ min: 300, max: 2600 }).map((n) => n / 10);
  const hole = fc.record({
    x: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    r: fc.integer({ min: 8, max: 40 }).map((n) => n / 10),
    aslant: fc.boolean(),
  });
  fc.assert(
    fc.property(length, fc.array(hole, { minLength: 1, maxLength: 9 }), (l, holes) =>
      k.scope(() => {
        const solid = k.subtract(
          box(k, [0, 0, 0], [l, 23, 11]),
          holes.map(({ x, r, aslant }) =>
            aslant
              ? cylinder(k, { from: [l * x, -6, 4], to: [l * x + 3, 30, 7], radius: r / 2, fit: 'hole' })
              : cylinder(k, { from: [l * x, 12, -1], to: [l * x, 12, 12], radius: r, fit: 'hole' }),
          ),
        );
        const bytes = written(solid);
        expect(gateFile({ path: 'plate.stl', bytes, volume: k.volume(solid), onBed: true })).toEqual([]);
        return { keep: [], value: undefined };
      }),
    ),
    { numRuns: 60, seed: 20 },
  );
});

/** Every part of every shipped preset as a solid, and the simple ones against figures worked out by hand. */
import { beforeAll, describe, expect, test } from 'vitest';
import { meshBox, meshVolume, shellCount } from '../../src/solid/mesh-measures.js';
import { type Drawn, draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';
import { expectSolid } from '../solid/expect-solid.js';

let shop: Workshop;
const drawn = new Map<string, Drawn>();
const NAMES = ['greenhouse-bench', 'glaze-selector', 'tight-cue-strip', 'foyer-row', 'seed-library'];
beforeAll(async () => {
  shop = await openWorkshop();
  for (const name of NAMES) drawn.set(name, draw(shop, shipped(name)));
}, 120_000);

describe.each(NAMES)('%s', (name) => {
  test('each printed part is one closed solid on the bed, in every pose', () => {
    for (const part of drawn.get(name)!.kit.parts.values()) {
      const mesh = shop.kernel.mesh(part.solid);
      const { min, max } = meshBox(mesh);
      expectSolid(mesh, {
        genus: shop.kernel.genus(part.solid),
        box: { min, max },
        volume: shop.kernel.volume(part.solid),
      });
      if (part.kind === 'printed') {
        expect(min[2], part.id).toBeCloseTo(0, 6);
        expect(shellCount(mesh), `${part.id} in one piece`).toBe(1);
      }
      for (const solid of Object.values(part.posed ?? {})) expect(shellCount(shop.kernel.mesh(solid))).toBe(1);
    }
  }, 120_000);

  test('a mount keeps its volume at every pose: the leaf bends, it does not stretch (1 in 1000)', () => {
    const mount = drawn.get(name)!.kit.parts.get('tilt-mount')!;
    const printed = meshVolume(shop.kernel.mesh(mount.solid));
    for (const solid of Object.values(mount.posed!))
      expect(meshVolume(shop.kernel.mesh(solid)) / printed).toBeCloseTo(1, 3);
  });
});

test('genus by hand: a collar and a nut are rings, a pin and a barrel balls, a bracket has four holes', () => {
  const { parts } = drawn.get('greenhouse-bench')!.kit;
  const genus = (id: string) => shop.kernel.genus(parts.get(id)!.solid);
  expect(genus('roll-collar')).toBe(1);
  expect(genus('nut-m3')).toBe(1);
  expect(genus('pin-3x10')).toBe(0);
  expect(genus('barrel-6x12')).toBe(0);
  expect(genus('corner-bracket')).toBe(4);
});

test('volumes by hand: hexagon nut M3 and parallel pin 3 × 10', () => {
  const { parts } = drawn.get('greenhouse-bench')!.kit;
  // ISO 4032 M3: s 5.5, m 2.4: (√3/2 · 5.5² − π/4 · 3²) · 2.4 = 45.9 mm³; ISO 2338 3 × 10: π/4 · 9 · 10 = 70.69 mm³.
  // Round faces are polygons within .01 mm: up to 1 % of a circle of radius 1.5.
  expect(shop.kernel.volume(parts.get('nut-m3')!.solid)).toBeCloseTo(45.91, 0);
  expect(shop.kernel.volume(parts.get('pin-3x10')!.solid) / 70.686).toBeGreaterThan(0.985);
  expect(shop.kernel.volume(parts.get('pin-3x10')!.solid) / 70.686).toBeLessThanOrEqual(1);
});

test('the leaf measured on the printed mount: thickness, and its two legs at their pitch', () => {
  const { kit, layout } = drawn.get('greenhouse-bench')!;
  const { leaf, origin } = layout.mount;
  const outlines = shop.kernel.section(kit.parts.get('tilt-mount')!.solid, layout.mount.width / 2);
  // A plumb line through the middle of the legs crosses base, leg, leg and arm: the leaf's faces are the inner four crossings.
  const at = origin[0] - leaf.length / 2;
  const crossings = outlines
    .flatMap((points) =>
      points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length]!;
        return p[0] < at !== q[0] < at ? [p[1] + ((at - p[0]) / (q[0] - p[0])) * (q[1] - p[1])] : [];
      }),
    )
    .sort((a, b) => a - b);
  const faces = crossings.filter(
    (w) => w > origin[1] - leaf.thickness && w < origin[1] + leaf.legPitch + leaf.thickness,
  );
  expect(faces).toHaveLength(4);
  expect(faces[1]! - faces[0]!).toBeCloseTo(leaf.thickness, 3);
  expect(faces[3]! - faces[2]!).toBeCloseTo(leaf.thickness, 3);
  expect((faces[3]! + faces[2]! - faces[1]! - faces[0]!) / 2).toBeCloseTo(leaf.legPitch, 3);
});

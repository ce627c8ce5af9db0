/**
 * No wall of a printed part is thinner than two lines: what is thinner is left out by whoever slices it, or breaks.
 * Two lines of width w in layers of h with rounded sides are 2 w − h (1 − π / 4) thick: .86 for .45 and .2.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Drawn, draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';
import { blockMesh, both } from '../solid/meshes.js';
import { thinPlaces } from './thin.js';

const NAMES = ['greenhouse-bench', 'tight-cue-strip', 'glaze-selector'];
let shop: Workshop;
const drawn = new Map<string, Drawn>();
beforeAll(async () => {
  shop = await openWorkshop();
  for (const name of NAMES) drawn.set(name, draw(shop, shipped(name)));
}, 120_000);

test('the ray finds a wall of .5, and none of .9', () => {
  const thin = both(blockMesh([0, 0, 0], [20, 0.5, 10]), blockMesh([0, 5, 0], [20, 5.9, 10]));
  const found = thinPlaces(thin, { rays: 200, below: 0.86 });
  expect(found.length).toBeGreaterThan(50);
  for (const { thickness, at } of found) {
    expect(thickness).toBeCloseTo(0.5, 5);
    expect(at[1]).toBeLessThan(1);
  }
});

describe.each(NAMES)('%s', (name) => {
  test('walls are two lines and more, but for what is engraved', () => {
    const { kit, layout } = drawn.get(name)!;
    const { lineWidth, layer } = layout.spec.printer.machine;
    const least = 2 * lineWidth.value - layer.value * (1 - Math.PI / 4);
    for (const part of kit.parts.values()) {
      // A deck is full of letters; what carries them is a plate.
      if (part.kind !== 'printed' || part.id.startsWith('deck-tile')) continue;
      for (const [pose, solid] of [['as printed', part.solid] as const, ...Object.entries(part.posed ?? {})]) {
        const thin = thinPlaces(shop.kernel.mesh(solid), { rays: 1500, below: least - 0.01 }).filter(
          // The target is cut .4 deep into a socket's face.
          ({ at }) =>
            !(part.id === 'receiver-socket' && at[0] > layout.socket.face - 0.41 && at[0] <= layout.socket.face),
        );
        expect(thin.slice(0, 3), `${part.id}, ${pose}`).toEqual([]);
      }
    }
  }, 120_000);
});

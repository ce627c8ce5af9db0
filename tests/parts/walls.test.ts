/**
 * No wall of a printed part is thinner than two lines: what is thinner is left out by whoever slices it, or breaks.
 * Two lines of width w in layers of h with rounded sides are 2 w − h (1 − π / 4) thick: .86 for .45 and .2.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { apply, invertRigid } from '../../src/solid/matrix.js';
import { cylinder } from '../../src/solid/shapes.js';
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

test('a deck keeps two lines’ thickness between a pilot and the letters engraved over it', () => {
  const { kit } = drawn.get('glaze-selector')!;
  const screws = kit.screws.filter(({ placement }) => placement.startsWith('deck-plate'));
  expect(screws.length).toBeGreaterThan(5);
  let under = 0;
  for (const { head, into } of screws) {
    const tile = kit.placements.find(({ name }) => into.kind === 'formed' && name === into.part)!;
    const { solid } = kit.parts.get(tile.part)!;
    const [x, y] = apply(invertRigid(tile.matrix), [head[0], head[1], 0]);
    // The file lies face down: letters are cut from z 0 to .6.
    const column = (from: number, to: number) => {
      const one = cylinder(shop.kernel, { from: [x, y, from], to: [x, y, to], radius: 1.3, fit: 'pin' });
      return shop.kernel.overlap(one, solid) / shop.kernel.volume(one);
    };
    if (column(0, 0.59) < 0.99) under++;
    expect(column(0.61, 0.61 + 0.86)).toBeCloseTo(1, 6);
  }
  // Some pilots do lie under letters: the test looks at something.
  expect(under).toBeGreaterThan(0);
});

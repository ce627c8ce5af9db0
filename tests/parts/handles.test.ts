/**
 * Handles of every printed part, counted by hand from what goes through it: a hole that two sides see is one handle, and a
 * cavity with n mouths is n − 1. A membrane or a lost hole changes the count.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { jointPlaces } from '../../src/layout/bay/sizes.js';
import type { Layout } from '../../src/layout/layout.js';
import { mountOpenings } from '../../src/layout/openings.js';
import type { RailSegment } from '../../src/layout/runs.js';
import { handleCount } from '../../src/solid/mesh-measures.js';
import { type Drawn, draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';

const NAMES = ['greenhouse-bench', 'glaze-selector', 'tight-cue-strip', 'foyer-row', 'seed-library'];
let shop: Workshop;
const drawn = new Map<string, Drawn>();
beforeAll(async () => {
  shop = await openWorkshop();
  for (const name of NAMES) drawn.set(name, draw(shop, shipped(name)));
}, 120_000);

/** Seat: bore front and rear, clamp hole, nut's side (4 mouths); adjusting screw: top, bottom, nut's side; fixing screw: bottom, nut's side. */
const MOUNT = 3 + 2 + 1;

const always: Readonly<Record<string, number>> = {
  'tilt-mount': MOUNT,
  'roll-collar': 1,
  // The screw's slot; the pocket, open above, with the tube's mouth in front.
  'receiver-socket': 2,
  'socket-lid': 0,
  'plug-mount': 0,
  'plug-socket': 0,
  // Two screws a leg.
  'corner-bracket': 4,
  // Two screws a tab, two slits for a tie; the cable's slot is open below.
  'corner-post': 6,
  'sill-bar': 4,
  // Four screws beside each other, at two heights.
  'wall-plate': 8,
  // Its screw.
  'board-clip': 1,
};

/** At a corner two screws go through the sill and two through the outer wall, at a seam two and four. */
const ends = ({ ends: both }: RailSegment) => both.reduce((sum, end) => sum + (end === 'corner' ? 4 : 6), 0);
const screws = ({ bosses, fieldBosses }: RailSegment) => bosses.length + fieldBosses.length;

function expected(id: string, layout: Layout): number | undefined {
  if (id in always) return always[id];
  if (id.startsWith('bay-')) return inBay(id, layout);
  if (id.startsWith('hood-')) return 0;
  // The screws near the deck's corners go through; those of its splices are blind. Whole, or in pieces in which a corner each lies.
  if (id.startsWith('deck-tile')) return cornersOn(id, layout);
  const splice = /^deck-splice-.*-(\d+)$/.exec(id);
  if (splice) return 2 * Number(splice[1]);
  const piece = /(far|near|left|right)(?:-(\d+))?$/.exec(id);
  const segment = layout.runs.find((run) => run.side === piece?.[1])?.segments[Number(piece?.[2] ?? 1) - 1];
  if (!segment) return undefined;
  const n = segment.beams.length;
  // A window a beam, and with emitters a hole for the mount's screw; the cover's pilots are blind.
  if (id.startsWith('emitter-rail')) return 2 * n + ends(segment);
  if (id.startsWith('receiver-rail')) return n + ends(segment);
  if (!id.startsWith('cover-')) return undefined;
  return screws(segment) + n * (segment.kind === 'emitter' ? 3 : 1);
}

/**
 * Of a tray: its screws through the inner wall, or those through its right wall into the next tray; every hole in a wall that is
 * not open above; the two slits of the tie's rib. Pilots are blind. Of a lid: its screws, and what is left open in it.
 */
function inBay(id: string, { bay }: Layout): number {
  const i = Number(/\d+$/.exec(id)![0]) - 1;
  const { held, walls, tie, lid, bosses, size } = bay!.units[i]!;
  if (!id.startsWith('bay-tray')) return bosses.length + lid.length;
  const into = i < bay!.units.length - 1 && bay!.place === 'apart' ? jointPlaces(size, bay!.wall).length : 0;
  const screws = held.length + into;
  return screws * bay!.screw.heights.length + walls.filter(({ open }) => !open).length + (tie ? 2 : 0);
}

/** A screw for each of the field's corners that the tile reaches. */
function cornersOn(id: string, { deck }: Layout): number {
  const tile = deck.tiles[Number(/\d+$/.exec(id)?.[0] ?? 1) - 1]!;
  const sides = (seams: readonly [boolean, boolean]) => seams.filter((seam) => !seam).length;
  return sides([tile.seams.left, tile.seams.right]) * sides([tile.seams.near, tile.seams.far]);
}

describe.each(NAMES)('%s', (name) => {
  test('every printed part has the handles counted by hand, at every pose', () => {
    const { kit, layout } = drawn.get(name)!;
    // Clamp, collar, adjusting screw: three openings that lie apart at the shipped presets' tilt.
    expect(mountOpenings({ ...layout, section: layout.frame.section })).toHaveLength(3);
    for (const part of kit.parts.values()) {
      if (part.kind !== 'printed') continue;
      const want = expected(part.id, layout);
      expect(want, `a count for ${part.id}`).toBeTypeOf('number');
      for (const [pose, solid] of [['as printed', part.solid] as const, ...Object.entries(part.posed ?? {})])
        expect(handleCount(shop.kernel.mesh(solid)), `${part.id}, ${pose}`).toBe(want);
    }
  }, 120_000);

  test('bought parts: a nut is a ring, a board has its holes, but for those that a socket fills, everything else is a ball', () => {
    const { kit, layout } = drawn.get(name)!;
    for (const part of kit.parts.values()) {
      if (part.kind === 'printed') continue;
      const board = kit.boards?.boards.find(({ id }) => id === part.id);
      const module = layout.spec.bay?.modules.find((one) => `module-${one.name}` === part.id);
      const open = module?.part.holes.value.length ?? board?.holes.filter(({ use }) => use !== 'leg').length ?? 0;
      expect(handleCount(shop.kernel.mesh(part.solid)), part.id).toBe(part.id.startsWith('nut-') ? 1 : open);
    }
  });
});

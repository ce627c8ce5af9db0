/** The greenhouse kit, broken on purpose: each fault is found by the check meant for it, and the sound kit passes them all. */
import { beforeAll, describe, expect, test } from 'vitest';
import { bed } from '../../src/checks/bed.js';
import { clearance } from '../../src/checks/clearance.js';
import type { Check, ShapeContext } from '../../src/checks/context.js';
import { corridors } from '../../src/checks/corridors.js';
import { declarations } from '../../src/checks/declarations.js';
import { fits } from '../../src/checks/fits.js';
import { freeAsPrinted } from '../../src/checks/free-as-printed.js';
import { insertion } from '../../src/checks/insertion.js';
import { interference } from '../../src/checks/interference.js';
import { threads } from '../../src/checks/threads.js';
import { toolAccess } from '../../src/checks/tool-access.js';
import type { Kit, Part, Placement, Screw } from '../../src/kit/types.js';
import { drawSunkScrew } from '../../src/parts/bought.js';
import type { Solid } from '../../src/solid/kernel.js';
import { multiply, translation } from '../../src/solid/matrix.js';
import { box } from '../../src/solid/shapes.js';
import { type Drawn, draw, openWorkshop, sceneOf, shipped, type Workshop } from './make.js';

let shop: Workshop;
let sound: Drawn;
beforeAll(async () => {
  shop = await openWorkshop();
  sound = draw(shop, shipped('greenhouse-bench'));
});

const ask = (check: Check<ShapeContext>, kit: Kit) =>
  check.run({ kit, spec: sound.layout.spec, kernel: shop.kernel, scene: sceneOf(shop, kit) });
const errors = (check: Check<ShapeContext>, kit: Kit) => ask(check, kit).filter(({ severity }) => severity === 'error');

const withPart = (kit: Kit, id: string, change: (part: Part) => Part): Kit => ({
  ...kit,
  parts: new Map(kit.parts).set(id, change(kit.parts.get(id)!)),
});
const withPlacement = (kit: Kit, name: string, change: (placement: Placement) => Placement): Kit => ({
  ...kit,
  placements: kit.placements.map((one) => (one.name === name ? change(one) : one)),
});
const withScrew = (kit: Kit, name: string, change: (screw: Screw) => Screw): Kit => ({
  ...kit,
  screws: kit.screws.map((one) => (one.placement === name ? change(one) : one)),
});
const shifted = (kit: Kit, name: string, by: readonly [number, number, number]): Kit =>
  withPlacement(kit, name, (one) => ({ ...one, matrix: multiply(translation(by), one.matrix) }));

test('the sound kit passes every check of shapes', () => {
  for (const check of [bed, freeAsPrinted, interference, clearance, fits, corridors, threads, toolAccess, insertion])
    expect(errors(check, sound.kit), check.name).toEqual([]);
}, 60_000);

describe('a fault is found by the check meant for it', () => {
  const rows: readonly {
    readonly fault: string;
    readonly check: Check<ShapeContext>;
    readonly code: string;
    readonly about: string;
    readonly broken: (kit: Kit) => Kit;
  }[] = [
    {
      fault: 'a socket slid half a millimetre into its ridge',
      check: interference,
      code: 'interference/overlap',
      about: 'column-2-socket',
      broken: (kit) => shifted(kit, 'column-2-socket', [0, 0.5, 0]),
    },
    {
      fault: 'a mount a tenth of a millimetre into its rib',
      check: interference,
      code: 'interference/more-than-meant',
      about: 'column-2-mount',
      broken: (kit) => shifted(kit, 'column-2-mount', [-0.1, 0, 0]),
    },
    {
      fault: 'a cover screw beside its pilot',
      check: interference,
      code: 'interference/more-than-meant',
      about: 'near-cover-screw-2',
      broken: (kit) => shifted(kit, 'near-cover-screw-2', [0.4, 0, 0]),
    },
    {
      fault: 'a corner post drawn as a solid block',
      check: interference,
      code: 'interference/overlap',
      about: 'far-left-post',
      broken: (kit) =>
        withPart(kit, 'corner-post', (part) => {
          const { min, max } = shop.kernel.box(part.solid);
          return { ...part, solid: box(shop.kernel, min, max) };
        }),
    },
    {
      fault: 'a mount whose slot closes as printed',
      check: freeAsPrinted,
      code: 'pose/joined',
      about: 'tilt-mount',
      broken: (kit) =>
        withPart(kit, 'tilt-mount', (part) => {
          // A thin web across the gap between arm and base at the rear.
          const { mount } = sound.layout;
          const web = box(shop.kernel, [-mount.length + 1, 1, 0], [-mount.length + 2, mount.arm.neckTop - 1, 1]);
          return { ...part, solid: shop.kernel.union([part.solid, web]) };
        }),
    },
    {
      fault: 'a mount whose arm and base a web joins at every pose',
      check: freeAsPrinted,
      code: 'pose/joined',
      about: 'tilt-mount',
      broken: (kit) =>
        withPart(kit, 'tilt-mount', (part) => {
          const { mount } = sound.layout;
          const web = box(shop.kernel, [-mount.length + 1, 1, 0], [-mount.length + 2, mount.arm.neckTop - 2, 1]);
          const joined = (one: Solid) => shop.kernel.union([one, web]);
          const { lowest, level, highest } = part.posed!;
          return {
            ...part,
            solid: joined(part.solid),
            posed: { lowest: joined(lowest), level: joined(level), highest: joined(highest) },
          };
        }),
    },
    {
      fault: 'the deck shifted up to its wall',
      check: clearance,
      code: 'clearance/gap',
      about: 'deck',
      broken: (kit) => ({
        ...shifted(kit, 'deck', [0.25, 0, 0]),
        placements: shifted(kit, 'deck', [0.25, 0, 0]).placements.map((one) =>
          one.name === 'deck' ? { ...one, touches: [] } : one,
        ),
      }),
    },
    {
      fault: 'a nut pocket declared as a snug fit',
      check: fits,
      code: 'fit/loose',
      about: 'column-0-clamp-nut',
      broken: (kit) => ({
        ...kit,
        fits: kit.fits.map((fit) =>
          fit.b === 'column-0-clamp-nut' ? { ...fit, fitClass: 'snug', wanted: 0.0875 } : fit,
        ),
      }),
    },
    {
      fault: 'a window without its hole',
      check: corridors,
      code: 'corridor/blocked',
      about: 'column-3',
      broken: (kit) =>
        withPart(kit, 'emitter-rail-far', (part) => {
          const { min, max } = shop.kernel.box(part.solid);
          const wall = box(shop.kernel, [min[0], 0, min[2]], [max[0], 3, max[2]]);
          return { ...part, solid: shop.kernel.union([part.solid, wall]) };
        }),
    },
    {
      fault: 'a fixing screw too short for its nut',
      check: threads,
      code: 'thread/short-of-nut',
      about: 'row-1-fix-screw',
      broken: (kit) =>
        withScrew(kit, 'row-1-fix-screw', (screw) => ({
          ...screw,
          into: screw.into.kind === 'nut' ? { ...screw.into, beyond: 0.2 } : screw.into,
        })),
    },
    {
      fault: 'a fixing screw bought 2 mm shorter than declared',
      check: threads,
      code: 'thread/not-as-drawn',
      about: 'row-1-fix-screw',
      broken: (kit) =>
        withPart(kit, kit.placements.find(({ name }) => name === 'row-1-fix-screw')!.part, (part) => ({
          ...part,
          solid: drawSunkScrew(shop.kernel, { size: 'M3', length: part.order!.lengthMm! - 2 }),
        })),
    },
    {
      fault: 'a cover screw that bottoms in its boss',
      check: threads,
      code: 'thread/bottoms',
      about: 'far-cover-screw-1',
      broken: (kit) => withScrew(kit, 'far-cover-screw-1', (screw) => ({ ...screw, tipRoom: 0.1 })),
    },
    {
      fault: 'a plug left in before the alignment',
      check: toolAccess,
      code: 'tool/blocked',
      about: 'column-1-clamp-screw',
      broken: (kit) =>
        withPlacement(kit, 'column-1-mount-plug', ({ afterAlignment, ...one }) => ({ ...one, afterAlignment: false })),
    },
    {
      fault: 'a mount lowered after the covers are on',
      check: insertion,
      code: 'insertion/blocked',
      about: 'column-0-mount',
      broken: (kit) => {
        const moves = kit.assembly.flatMap((step) => step.moves.filter((move) => move.placement === 'column-0-mount'));
        const without = kit.assembly.map((step) => ({
          ...step,
          moves: step.moves.filter((move) => move.placement !== 'column-0-mount'),
        }));
        const last = without.at(-1)!;
        return { ...kit, assembly: [...without.slice(0, -1), { ...last, moves: [...moves, ...last.moves] }] };
      },
    },
    {
      fault: 'a rail longer than any bed',
      check: bed,
      code: 'bed/too-large',
      about: 'emitter-rail-far',
      broken: (kit) =>
        withPart(kit, 'emitter-rail-far', (part) => ({ ...part, solid: box(shop.kernel, [0, 0, 0], [231, 47, 32]) })),
    },
  ];

  test.each(rows)(
    '$fault: $code',
    ({ check, code, about, broken }) => {
      const found = errors(check, broken(sound.kit));
      expect(found.map((finding) => finding.code)).toContain(code);
      expect(found.some(({ subject, message }) => `${subject} ${message}`.includes(about))).toBe(true);
    },
    60_000,
  );
});

test('a mount without its highest pose is refused before anything else is asked', () => {
  const broken = withPart(sound.kit, 'tilt-mount', (part) => {
    const { lowest, level } = part.posed!;
    return { ...part, posed: { lowest, level } as unknown as Part['posed'] };
  });
  const found = declarations.run({ kit: broken });
  expect(found.map(({ code }) => code)).toContain('kit/missing-pose');
});

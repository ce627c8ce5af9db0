/** Presets at the corners of what may be asked, each of which once broke the kit or ended the run as a bug. */
import { beforeAll, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { handleCount, shellCount } from '../../src/solid/mesh-measures.js';
import { draw, findingsOf, openWorkshop, type Workshop } from './make.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

const rows = [
  ['deeper than the bed, narrower than it', 'grid: { rows: 12, columns: 2, pitch: 22 }'],
  ['an LED with a flange, in a sleeve', 'grid: { rows: 3, columns: 4, pitch: 24 }\nemitters: { part: led-5-red }'],
  [
    'a barrel too short for its seat, in a sleeve',
    'grid: { rows: 2, columns: 3, pitch: 24 }\nemitters: { part: { base: barrel-6x12, length: 6 } }',
  ],
  ['so steep that cover openings meet', 'grid: { rows: 2, columns: 3, pitch: 24 }\naim: { tilt: 5 }'],
  [
    'a barrel thinner than its diamond is deep',
    'grid: { rows: 2, columns: 3, pitch: 24 }\nemitters: { part: { base: barrel-6x12, diameter: 3.2 } }',
  ],
  [
    'three legs over the post',
    'grid: { rows: 2, columns: 3, pitch: 22 }\naim: { tilt: 2 }\nleaf: { layout: folded, legs: 3 }',
  ],
  [
    'M4 in a plate at a seam, wires behind the mounts beside it',
    'grid: { rows: 2, columns: 8, pitch: 24 }\nprinter: bed-180\nscrews: { fix: M4 }',
  ],
  // The engraved line runs beside the heads of the deck's screws, or across them.
  ['M4 in the deck, on rails along y', 'grid: { rows: 4, columns: [46, 51], pitch: { y: 22 } }\nscrews: { fix: M4 }'],
  ['M4 in the deck, on rails along x', 'grid: { rows: 5, columns: 6, pitch: { x: 23, y: 27 } }\nscrews: { fix: M4 }'],
  ['a thin deck in pieces', 'grid: { rows: 2, columns: 8, pitch: 24 }\nprinter: bed-180\nframe: { deck: 1.2 }'],
  [
    'an aperture as wide as its target',
    'grid: { rows: 1, columns: 2, pitch: 24 }\nreceivers: { part: { base: three-leg, aperture_diameter: 6 } }',
  ],
  ['leaves wider than the corner posts let pass', 'grid: { rows: 2, columns: 3, pitch: 40 }\nleaf: { width: 30 }'],
  ['wide leaves at a close pitch', 'grid: { rows: 2, columns: 3, pitch: 24 }\nleaf: { width: 20 }'],
  [
    'a thick and long barrel',
    'grid: { rows: 2, columns: 3, pitch: 30 }\nemitters: { part: { base: barrel-6x12, diameter: 15, length: 40, mass_g: 20 } }\naim: { tilt: 1.5 }',
  ],
  [
    'a receiver 20 high, 20 wide and 15 deep',
    'grid: { rows: 2, columns: 3, pitch: 30 }\nreceivers: { part: { base: three-leg, width: 20, height: 20, depth: 15 } }',
  ],
  [
    'a wide and long aperture before a flat receiver, its stop over the tube',
    'grid: { rows: 2, columns: 3, pitch: 24 }\nbeam: { height: 6 }\nemitters: { part: { base: barrel-8x13, divergence_mrad: 60 } }\nreceivers: { part: { base: three-leg, width: 9, height: 6, sensor_from_top: 3, aperture_diameter: 8, aperture_depth: 40 } }\nscrews: { fix: M2.5 }',
  ],
  [
    'vertical holes drawn as wide as the thread',
    'grid: { rows: 2, columns: 8, pitch: 24 }\nprinter: { base: bed-180, hole_growth: 0.5 }\nscrews: { fix: M2 }',
  ],
  [
    'ridge and floor that once left facets without area at the rail’s end',
    'grid: { rows: 3, columns: 2, pitch: { x: 34, y: 20.5 } }\nbeam: { height: 6 }\nreceivers: { part: { base: three-leg, width: 5, height: 6, depth: 9.5, legs: 2, leg_width: 0.67, leg_pitch: 0.67, aperture_diameter: 4, aperture_depth: 7, sensor_from_top: 1.2 } }\nmaterial: abs\nscrews: { fix: M2, adjust: M3 }\nleaf: { width: 15.5 }\naim: { tilt: 1.6 }',
  ],
  [
    'a coarse printer, its wires beside the adjusting screw',
    'grid: { rows: 1, columns: 2, pitch: 30 }\nprinter: { base: bed-220, gap_tolerance: 0.3, warp_per_100: 0 }\nscrews: { adjust: M3 }\naim: { tilt: 1.5 }',
  ],
  [
    'an upright leaf shorter than the arm’s rear is high',
    'grid: { rows: 1, columns: 2, pitch: 26 }\nreceivers: { part: side-looker }\nmaterial: pc\nscrews: { fix: M4, adjust: M2, clamp: M4 }\nleaf: { layout: upright, length: 6 }\naim: { tilt: 1.8 }',
  ],
  ['one key', 'grid: { rows: 1, columns: 1, pitch: 22 }'],
] as const;

test.each(rows)(
  '%s: no error',
  (_, preset) => {
    const errors = findingsOf(shop, `${preset}\n`).filter(({ severity }) => severity === 'error');
    expect(errors).toEqual([]);
  },
  60_000,
);

test.each(rows)(
  '%s: every part in one piece, the mount with its six handles',
  (_, preset) => {
    shop.kernel.scope(() => {
      const { kit } = draw(shop, `${preset}\n`);
      for (const part of kit.parts.values())
        for (const solid of [part.solid, ...Object.values(part.posed ?? {})]) {
          const mesh = shop.kernel.mesh(solid);
          expect(shellCount(mesh), part.id).toBe(1);
          if (part.id === 'tilt-mount') expect(handleCount(mesh)).toBe(6);
        }
      return { keep: [], value: null };
    });
  },
  60_000,
);

test('a leaf given in full that the search’s reserve would refuse is judged by the nonlinear solver', () => {
  const pinned = (tilt: number) =>
    `grid: { rows: 2, columns: 3, pitch: 22 }\nleaf: { layout: in-line, length: 10, thickness: 0.86 }\naim: { tilt: ${tilt} }\n`;
  const found = findingsOf(shop, pinned(2.4)).filter(({ severity }) => severity === 'error');
  expect(found).toEqual([]);
  // It is within 2 % of what PETG holds for years; a tenth of a degree more is refused, and so is a search with its reserve.
  expect(() => draw(shop, pinned(2.5))).toThrow(PresetError);
  expect(() => draw(shop, pinned(2.4).replace(', thickness: 0.86', ''))).toThrow(PresetError);
}, 60_000);

test('mounts beside a seam have a rib on both sides, at the least pitch of a rail in pieces', () => {
  const preset = (pitch: number) => `grid: { rows: 1, columns: 20, pitch: { x: ${pitch}, y: 22 } }\n`;
  let least = 0;
  try {
    draw(shop, preset(10));
  } catch (error) {
    least = Number(/([\d.]+) mm$/.exec((error as PresetError).mistakes[0]!.hint!)![1]);
  }
  shop.kernel.scope(() => {
    const { kit, layout } = draw(shop, preset(least));
    const { mount, frame } = layout;
    const run = layout.runs.find(({ side }) => side === 'far')!;
    expect(run.segments.length).toBeGreaterThan(1);
    run.segments.forEach((segment, i) => {
      const rail = shop.kernel.section(kit.parts.get(`emitter-rail-far-${i + 1}`)!.solid, frame.section.floor + 2.5);
      // Along the rail, beside the posts' middles but off the bumps.
      const y = frame.section.mountFront + 1;
      const crossings = rail
        .flatMap((points) =>
          points.flatMap((p, j) => {
            const q = points[(j + 1) % points.length]!;
            return p[1] < y === q[1] < y ? [] : [p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0])];
          }),
        )
        .sort((a, b) => a - b);
      const ribs = crossings.flatMap((from, j) => (j % 2 === 0 ? [[from, crossings[j + 1]!] as const] : []));
      const free = mount.width / 2 + layout.spec.printer.machine.snug.value / 2;
      for (const beam of segment.beams)
        for (const face of [beam - free, beam + free]) {
          const rib = ribs.find(([from, to]) => Math.abs(from - face) < 0.01 || Math.abs(to - face) < 0.01);
          expect(rib, `a rib at ${face} of piece ${i + 1}`).toBeDefined();
          // Two lines of .45 with rounded sides: .86.
          expect(rib![1] - rib![0]).toBeGreaterThan(0.86);
        }
    });
    return { keep: [], value: null };
  });
}, 60_000);

test.each([
  ['beams too high for the sill', 'grid: { rows: 2, columns: 3, pitch: 22 }\nbeam: { height: 20 }', 'beam.height'],
  [
    'splice plates below the rails',
    'grid: { rows: 2, columns: 8, pitch: 24 }\nprinter: bed-180\nbeam: { height: 13.5 }',
    'beam.height',
  ],
  [
    'three soft legs, whose preload would tilt the printed arm by 26°',
    'grid: { rows: 1, columns: 2, pitch: 24 }\nmaterial: pa12\nleaf: { legs: 3, length: 12, thickness: 0.86 }\naim: { tilt: 1.2 }',
    'leaf.length',
  ],
  ['a plastic too soft for the tilt', 'grid: { rows: 2, columns: 3, pitch: 22 }\nmaterial: pp', 'aim.tilt'],
])('%s: refused with the figure that would do', (_, preset, path) => {
  let refused: unknown;
  try {
    draw(shop, `${preset}\n`);
  } catch (error) {
    refused = error;
  }
  expect(refused).toBeInstanceOf(PresetError);
  const mistakes = (refused as PresetError).mistakes.filter((mistake) => mistake.path === path);
  expect(mistakes.length).toBeGreaterThan(0);
  for (const { hint } of mistakes) expect(hint).toMatch(/\d/);
});

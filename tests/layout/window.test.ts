/** The emitters' windows against beams followed from the placed barrels, turned by the worst boresight error. */
import { beforeAll, expect, test } from 'vitest';
import { apply, applyDirection } from '../../src/solid/matrix.js';
import type { Vec3 } from '../../src/solid/mesh.js';
import { draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

/** Heights off the straight beam at which crooked beams of column 0 pass the field wall's face. */
function strays(preset: string): { readonly off: readonly number[]; readonly window: number } {
  const { kit, layout } = draw(shop, preset);
  const beam = kit.beams.find(({ name }) => name === 'column-0')!;
  const barrel = kit.placements.find(({ name }) => name === 'column-0-barrel')!;
  const error = (3 * layout.spec.emitters.part.boresightSigmaDeg.value * Math.PI) / 180;
  const off = (['lowest', 'highest'] as const).flatMap((pose) => {
    const m = barrel.rides![pose];
    const from = apply(m, [0, 0, 0]);
    // The barrel's axis, toward the field (−y for a far rail), then turned further by the error.
    const axis = applyDirection(m, [0, 0, 1]);
    const out: Vec3 = axis[1] < 0 ? axis : [-axis[0], -axis[1], -axis[2]];
    const tilt = Math.atan2(out[2], -out[1]);
    return [tilt + error, tilt - error].map(
      (angle) => from[2] + (from[1] - layout.grid.depth) * Math.tan(angle) - beam.from[2],
    );
  });
  return { off: off.map(Math.abs), window: layout.window };
}

test.each(['greenhouse-bench', 'tight-cue-strip'])('%s: the most crooked beam gets out, and not by much', (name) => {
  const { off, window } = strays(shipped(name));
  const need = Math.max(...off) + 1;
  expect(window).toBeGreaterThanOrEqual(need);
  expect(window).toBeLessThan(need + 0.5);
});

test('truer barrels need smaller windows, but never less than the aligned beam', () => {
  const preset = (sigma: number) =>
    `grid: { rows: 2, columns: 3, pitch: 24 }\naim: { tilt: 2 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: ${sigma} } }\n`;
  const [loose, tight] = [strays(preset(2)), strays(preset(0.1))];
  expect(tight.window).toBeLessThan(loose.window);
  // Beam 2 and .1 mm of divergence, a millimetre of air: 3.2 across at least.
  expect(tight.window).toBeGreaterThanOrEqual(1.6);
});

test('beams that run low have windows that end above the deck', () => {
  const { window } = strays(
    'grid: { rows: 2, columns: 3, pitch: 24 }\nbeam: { height: 3 }\naim: { tilt: 4 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: 2 } }\n',
  );
  expect(window).toBeCloseTo(2.7, 9);
});

test('windows of neighbours that stand close leave two printed lines of wall between them', () => {
  const { layout } = draw(
    shop,
    'grid: { rows: 3, columns: 2, pitch: 14.1 }\nemitters: { part: led-5-infrared }\nbeam: { height: 8 }\nprinter: bed-180\nscrews: { fix: M2.5 }\n',
  );
  expect(14.1 - 2 * layout.window).toBeGreaterThanOrEqual(2 * 0.45);
});

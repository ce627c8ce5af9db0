/**
 * Random valid presets, far from the usual parts: every one that the layout takes makes a kit that goes together, interference
 * included (at most .01 mm³ a pair that is not declared to overlap), with a sound file for every part. One that is refused names a
 * figure of the preset and how far it is off.
 */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { openWorkshop, type Said, said, type Workshop } from './make.js';

let workshop: Workshop;
beforeAll(async () => {
  workshop = await openWorkshop();
});

const RUNS = 44;
const MADE = 22;

const int = (min: number, max: number) => fc.integer({ min, max });
/** From `min` to `max` in steps, as a preset would write it. */
const num = (min: number, max: number, step: number) =>
  int(Math.round(min / step), Math.round(max / step)).map((n) => Number((n * step).toFixed(3)));
/** Left out in most presets. */
const seldom = <T>(arbitrary: fc.Arbitrary<T>, one = 4) =>
  fc.oneof({ weight: one - 1, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary });
/** An axis as a number of lines, or as a list of unequal cells, each so much over the least. */
const axis = (most: number) =>
  fc.oneof(
    { weight: 2, arbitrary: int(1, most) },
    { weight: 1, arbitrary: fc.array(int(0, 29), { minLength: 1, maxLength: most }) },
  );

const emitter = fc.oneof(
  fc.constantFrom('barrel-6x12', 'barrel-6x10', 'barrel-8x13').map((base) => ({ base })),
  fc.record({
    base: fc.constant('barrel-6x12'),
    diameter: num(3, 15, 0.1),
    length: num(9, 40, 0.5),
    wire_diameter: num(0.5, 3, 0.1),
    mass_g: num(0.5, 20, 0.5),
    boresight_sigma_deg: num(0.2, 0.8, 0.1),
    beam_diameter: num(0.5, 3, 0.5),
    divergence_mrad: fc.constantFrom(0.5, 5, 50),
  }),
);
const receiver = fc.oneof(
  fc.constantFrom('three-leg', 'three-leg-formed', 'side-looker').map((base) => ({ base })),
  fc
    .record({
      width: num(2, 20, 0.5),
      height: num(2, 20, 0.5),
      depth: num(1, 15, 0.5),
      spot: num(0.2, 0.6, 0.1),
      legs: int(2, 4),
      leg_width: num(0.2, 1.5, 0.1),
      leg_pitch: num(0.5, 5.08, 0.01),
      aperture_diameter: num(0.5, 8, 0.5),
      aperture_depth: num(2, 40, 1),
    })
    .map(({ spot, ...r }) => ({
      base: 'three-leg',
      ...r,
      leg_width: Math.min(r.leg_width, r.leg_pitch, r.depth),
      aperture_diameter: Math.min(r.aperture_diameter, Math.max(0.5, Math.floor(r.width - 0.5))),
      sensor_from_top: Math.min(7, Math.max(0.2, Number((spot * r.height).toFixed(1)))),
    })),
);
const printer = fc.oneof(
  fc.constantFrom('bed-220', 'bed-180', 'bed-300', 'bed-220-fine').map((base) => ({ base })),
  fc.record({
    base: fc.constantFrom('bed-220', 'bed-180'),
    bed_x: int(170, 400),
    bed_y: int(170, 400),
    line_width: num(0.25, 0.7, 0.05),
    layer: num(0.08, 0.24, 0.04),
    press: num(0, 0.1, 0.01),
    snug: num(0.1, 0.3, 0.05),
    slide: num(0.3, 0.5, 0.05),
    free: num(0.5, 0.8, 0.1),
    hole_growth: num(0, 0.5, 0.05),
    gap_tolerance: num(0.05, 0.3, 0.05),
    warp_per_100: num(0, 0.2, 0.05),
  }),
);

const preset = fc
  .record({
    rows: axis(5),
    columns: axis(7),
    x: num(0, 27, 0.5),
    y: num(0, 27, 0.5),
    labels: fc.boolean(),
    height: num(4, 9, 0.5),
    emitter,
    receiver,
    printer,
    columnsFrom: fc.constantFrom('far', 'near'),
    rowsFrom: fc.constantFrom('left', 'right'),
    material: fc.constantFrom('pla', 'petg', 'asa', 'abs', 'pa12', 'pc'),
    fix: fc.constantFrom('M2', 'M2.5', 'M3', 'M4'),
    adjust: fc.constantFrom('M2', 'M2.5', 'M3', 'M4'),
    clamp: fc.constantFrom('M2', 'M2.5', 'M3', 'M4'),
    wall: seldom(num(1.8, 5, 0.2), 2),
    deck: seldom(num(1.2, 6, 0.2), 2),
    margin: seldom(num(18, 50, 1)),
    tilt: seldom(num(1, 4, 0.2), 3),
    leaf: seldom(
      fc.record({
        legs: seldom(int(1, 3), 2),
        length: seldom(num(4, 14, 0.5)),
        thickness: seldom(num(0.86, 1.7, 0.02)),
      }),
    ),
    wider: seldom(num(0, 20, 0.5), 5),
  })
  .map((p) => {
    const diameter = 'diameter' in p.emitter ? p.emitter.diameter : 8;
    const width = p.wider === undefined ? undefined : Math.max(14, Math.ceil(diameter + 3.3)) + p.wider;
    const legs = 'legs' in p.receiver ? (p.receiver.legs - 1) * p.receiver.leg_pitch : 5;
    const body = 'width' in p.receiver ? p.receiver.width : 4.6;
    // Near the least pitch that mounts, collars and sockets allow: a few are refused for it.
    const least = Math.ceil(Math.max(13, diameter + 5.4, (width ?? 0) + 2, body + 6, legs + 7));
    const flow = (figures: object) => {
      const said = Object.entries(figures).filter(([, value]) => value !== undefined);
      return `{ ${said.map(([key, value]) => `${key}: ${value}`).join(', ')} }`;
    };
    const cells = (lines: number | number[]) =>
      typeof lines === 'number' ? lines : `[${lines.map((over) => least + over).join(', ')}]`;
    const count = (lines: number | number[]) => (typeof lines === 'number' ? lines : lines.length);
    const words = ['ok', 'W', '""', 'MIST 1', 'a longer one'];
    const rows = Array.from(
      { length: count(p.rows) },
      (_, j) => `[${Array.from({ length: count(p.columns) }, (_, i) => words[(i + j) % words.length]).join(', ')}]`,
    );
    return `grid: { rows: ${cells(p.rows)}, columns: ${cells(p.columns)}, pitch: { x: ${least + p.x}, y: ${least + p.y} }${p.labels ? `, labels: [${rows.join(', ')}]` : ''} }
beam: { height: ${p.height} }
emitters: { part: ${flow(p.emitter)}, columns_from: ${p.columnsFrom}, rows_from: ${p.rowsFrom} }
receivers: { part: ${flow(p.receiver)} }
material: ${p.material}
printer: ${flow(p.printer)}
screws: { fix: ${p.fix}, adjust: ${p.adjust}, clamp: ${p.clamp} }
leaf: ${flow({ ...p.leaf, width })}
frame: ${flow({ wall: p.wall, deck: p.deck, margin: p.margin })}
aim: ${flow({ tilt: p.tilt })}
`;
  });

/** Findings that refuse by a figure of the preset's own: what a kit is for, not whether it goes together. */
const BY_FIGURE = /^(rail\/alignment|flexure\/)/;

test(`${RUNS} random presets make kits without an error, or are refused by a figure that names what to change`, () => {
  let made = 0;
  fc.assert(
    fc.property(preset, (text) => {
      let told: Said;
      try {
        told = said(workshop, text);
      } catch (error) {
        if (!(error instanceof PresetError)) throw error;
        for (const { message, hint, path } of error.mistakes) {
          expect(path).toMatch(/^(grid|beam|emitters|receivers|aim|leaf|material|printer|screws|frame)\b/);
          expect(`${message} ${hint}`).toMatch(/\d/);
        }
        return;
      }
      const errors = told.findings.filter(({ severity }) => severity === 'error');
      expect(errors.filter(({ code }) => !BY_FIGURE.test(code))).toEqual([]);
      for (const { message, remedies } of errors) {
        expect(remedies.length).toBeGreaterThan(0);
        expect(message).toMatch(/\d/);
      }
      expect(told.inPieces).toEqual([]);
      if (errors.length === 0) made++;
    }),
    { numRuns: RUNS, seed: 20261125, endOnFailure: true },
  );
  expect(made).toBeGreaterThanOrEqual(MADE);
}, 400_000);

/**
 * Random valid presets: every one that the layout takes makes a kit without an error, interference included (at most .01 mm³ a
 * pair that is not declared to overlap). One that it refuses names what is too small, and by how much.
 */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { openWorkshop, type Said, said, type Workshop } from './make.js';

let workshop: Workshop;
beforeAll(async () => {
  workshop = await openWorkshop();
});

const RUNS = 40;

/** An axis as a number of lines, or as a list of unequal cells. */
const axis = (most: number) =>
  fc.oneof(
    { weight: 2, arbitrary: fc.integer({ min: 1, max: most }) },
    { weight: 1, arbitrary: fc.array(fc.integer({ min: 0, max: 29 }), { minLength: 1, maxLength: most }) },
  );
/** The least pitch that the emitter allows, in whole millimetres: narrower ones are refused, and so may be the least on a small bed. */
const LEAST: Readonly<Record<string, number>> = { 'barrel-6x12': 11, 'barrel-6x10': 11, 'barrel-8x13': 13 };

const preset = fc
  .record({
    rows: axis(6),
    columns: axis(10),
    over: fc.record({ x: fc.integer({ min: 0, max: 54 }), y: fc.integer({ min: 0, max: 54 }) }),
    height: fc.integer({ min: 8, max: 24 }).map((half) => half / 2),
    emitter: fc.constantFrom('barrel-6x12', 'barrel-6x10', 'barrel-8x13'),
    columnsFrom: fc.constantFrom('far', 'near'),
    rowsFrom: fc.constantFrom('left', 'right'),
    receiver: fc.constantFrom('three-leg', 'three-leg-formed', 'side-looker'),
    material: fc.constantFrom('pla', 'petg', 'asa', 'abs', 'pa12', 'pc'),
    printer: fc.constantFrom('bed-220', 'bed-180', 'bed-300', 'bed-220-fine'),
    fix: fc.constantFrom('M2', 'M2.5', 'M3', 'M4'),
    adjust: fc.constantFrom('M2', 'M2.5', 'M3'),
    wall: fc.constantFrom(2.4, 3, 4),
    deck: fc.constantFrom(2.4, 3, 5),
  })
  .map((p) => {
    const least = LEAST[p.emitter]!;
    const cells = (lines: number | number[]) =>
      typeof lines === 'number' ? lines : `[${lines.map((over) => least + over).join(', ')}]`;
    return `grid: { rows: ${cells(p.rows)}, columns: ${cells(p.columns)}, pitch: { x: ${least + p.over.x / 2}, y: ${least + p.over.y / 2} } }
beam: { height: ${p.height} }
emitters: { part: ${p.emitter}, columns_from: ${p.columnsFrom}, rows_from: ${p.rowsFrom} }
receivers: { part: ${p.receiver} }
material: ${p.material}
printer: ${p.printer}
screws: { fix: ${p.fix}, adjust: ${p.adjust} }
frame: { wall: ${p.wall}, deck: ${p.deck} }
`;
  });

test(`${RUNS} random presets make kits without an error, or are refused with figures`, () => {
  let made = 0;
  let refused = 0;
  fc.assert(
    fc.property(preset, (text) => {
      let told: Said;
      try {
        told = said(workshop, text);
      } catch (error) {
        if (!(error instanceof PresetError)) throw error;
        refused++;
        for (const { message, hint, path } of error.mistakes) {
          expect(path).not.toBe('');
          expect(`${message} ${hint}`).toMatch(/\d/);
        }
        return;
      }
      made++;
      expect(told.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
      expect(told.inPieces).toEqual([]);
    }),
    { numRuns: RUNS + 8, seed: 20261125, endOnFailure: true },
  );
  expect(made).toBeGreaterThanOrEqual(RUNS);
  expect(refused).toBeLessThanOrEqual(8);
}, 400_000);

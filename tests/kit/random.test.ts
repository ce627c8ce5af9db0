/**
 * Random valid presets: every one that the layout takes makes a kit without an error, interference included (at most .01 mm³ a
 * pair that is not declared to overlap). One that it refuses names what is too small, and by how much.
 */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { findingsOf, openWorkshop, type Workshop } from './make.js';

let workshop: Workshop;
beforeAll(async () => {
  workshop = await openWorkshop();
});

const RUNS = 40;

const cell = fc.integer({ min: 11, max: 38 });
const axis = (most: number) =>
  fc.oneof(
    { weight: 2, arbitrary: fc.integer({ min: 1, max: most }).map(String) },
    { weight: 1, arbitrary: fc.array(cell, { minLength: 1, maxLength: most }).map((cells) => `[${cells.join(', ')}]`) },
  );

const preset = fc
  .record({
    rows: axis(4),
    columns: axis(6),
    pitch: fc.integer({ min: 22, max: 72 }).map((half) => half / 2),
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
  .map(
    (p) => `grid: { rows: ${p.rows}, columns: ${p.columns}, pitch: ${p.pitch} }
beam: { height: ${p.height} }
emitters: { part: ${p.emitter}, columns_from: ${p.columnsFrom}, rows_from: ${p.rowsFrom} }
receivers: { part: ${p.receiver} }
material: ${p.material}
printer: ${p.printer}
screws: { fix: ${p.fix}, adjust: ${p.adjust} }
frame: { wall: ${p.wall}, deck: ${p.deck} }
`,
  );

test(`${RUNS} random presets make kits without an error, or are refused with figures`, () => {
  let made = 0;
  let refused = 0;
  fc.assert(
    fc.property(preset, (text) => {
      let findings: ReturnType<typeof findingsOf>;
      try {
        findings = findingsOf(workshop, text);
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
      expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    }),
    { numRuns: RUNS + 8, seed: 20261125, endOnFailure: true },
  );
  expect(made).toBeGreaterThanOrEqual(RUNS);
  expect(refused).toBeLessThanOrEqual(8);
}, 400_000);

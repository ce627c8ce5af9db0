/** A design put into a preset whose barrels lean: the kit made of it is the one that was swept. */
import { expect, test } from 'vitest';
import { layOut, withLean } from '../../src/layout/lay-out.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { applied, valuesOf } from '../../src/tune/apply.js';

const TEXT =
  'grid: { rows: 1, columns: 2, pitch: 30 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: 0.2 } }\naim: { mount_error: 0.8 } # measured\n';
const open = { width: undefined, material: undefined, tiltDeg: undefined, adjust: undefined };
const point = { number: 1, layout: 'folded', legs: 2, length: 4, thickness: 1.26, ...open } as const;

test('the lean that was solved for the sweep is written beside the leaf', () => {
  const spec = withLean(readPreset(TEXT, 'a.yaml'));
  const lean = spec.aim.wedgeDeg!;
  expect(lean).toBeGreaterThanOrEqual(1);
  const values = valuesOf(point, { axes: [], lean });
  expect(values).toMatchObject({ 'aim.wedge': lean, 'leaf.length': 4 });
  const text = applied(TEXT, 'a.yaml', values);
  expect(text).toContain('# measured');
  const { mount, spec: again } = layOut(readPreset(text, 'a.yaml'));
  expect(again.aim.wedgeDeg).toBe(lean);
  expect(mount.sleeve!.lean).toBeCloseTo((lean * Math.PI) / 180, 12);
  expect(mount.leaf).toMatchObject({ length: 4, thickness: 1.26 });
}, 30_000);

test('none is written where none was solved, and what the preset says is kept', () => {
  expect(valuesOf(point, { axes: [] })).not.toHaveProperty(['aim.wedge']);
  const given = readPreset(TEXT.replace('0.8', '0.8, wedge: 0'), 'a.yaml');
  expect(withLean(given)).toBe(given);
});

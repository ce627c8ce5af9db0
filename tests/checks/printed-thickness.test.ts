import { beforeAll, expect, test } from 'vitest';
import { printedThickness } from '../../src/checks/printed-thickness.js';
import { findingsOf, openWorkshop, shipped, type Workshop } from '../kit/make.js';
import { leaf } from './sound-figures.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

const strain = { code: 'strain', measured: 0.8, limit: 0.7, unit: '%' } as const;
const preload = { code: 'preload', measured: 1, limit: 1.2, unit: '°' } as const;

test('a leaf that holds both ways is not mentioned', () => {
  expect(
    printedThickness.run({
      leaf,
      leafOff: [
        { by: -0.05, faults: [] },
        { by: 0.05, faults: [] },
      ],
    }),
  ).toEqual([]);
});

test('what it misses is named with the side that misses it', () => {
  const found = printedThickness.run({
    leaf,
    leafOff: [
      { by: -0.05, faults: [preload] },
      { by: 0.05, faults: [strain] },
    ],
  });
  expect(found.map(({ measured, limit, unit }) => [measured, limit, unit])).toEqual([
    [1, 1.2, '°'],
    [0.8, 0.7, '%'],
  ]);
  expect(found[0]!.message).toContain('0.05 mm thinner');
  expect(found[1]!.message).toContain('0.05 mm thicker');
  expect(found[1]).toMatchObject({ code: 'flexure/printed-thickness', severity: 'warning' });
});

test('the shipped bench holds both ways; a leaf pinned at the edge of its strain does not', { timeout: 60_000 }, () => {
  const codes = (preset: string) => findingsOf(shop, preset).filter(({ code }) => code === 'flexure/printed-thickness');
  expect(codes(shipped('greenhouse-bench'))).toEqual([]);
  // Strain at a given angle grows with the thickness: a plastic that just bears the drawn leaf does not bear a thicker one.
  const pinned =
    'grid: { rows: 1, columns: 2, pitch: 24 }\nleaf: { layout: folded, legs: 2, length: 4.5, thickness: 0.86, width: 12 }\naim: { tilt: 3 }\nmaterial: { base: petg, sustained_strain: 0.0051 }\nsurroundings: { warmest: 23 }\n';
  const found = codes(pinned);
  expect(found.length).toBeGreaterThan(0);
  expect(found[0]!.message).toContain('thicker');
});

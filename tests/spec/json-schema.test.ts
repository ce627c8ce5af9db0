import { expect, test } from 'vitest';
import { emitters, receivers } from '../../src/components/index.js';
import { plastics } from '../../src/materials/index.js';
import { printers } from '../../src/printers/index.js';
import {
  emitterFigures,
  type Figure,
  plasticFigures,
  presetKey,
  printerFigures,
  receiverFigures,
} from '../../src/spec/figures.js';
import { nodeAt, presetJsonSchema, presetPaths, type SchemaNode } from '../../src/spec/json-schema.js';

const root = presetJsonSchema();

test('the keys that were agreed are there', () => {
  const agreed =
    'title grid.rows grid.columns grid.pitch grid.pitch.x grid.pitch.y grid.labels beam.height emitters.part emitters.columns_from emitters.rows_from receivers.part aim.tilt leaf.layout leaf.legs leaf.length leaf.thickness leaf.width material material.base printer printer.base screws.adjust screws.clamp screws.fix frame.wall frame.deck frame.margin';
  expect(presetPaths()).toEqual(expect.arrayContaining(agreed.split(' ')));
  expect(root.required).toEqual(['grid']);
  expect(nodeAt(root, ['grid'])?.required).toEqual(['rows', 'columns', 'pitch']);
});

test('every key says what it is', () => {
  const bare = presetPaths().filter((path) => {
    const node = nodeAt(root, path.split('.')) as SchemaNode;
    return !node.description && path.split('.').at(-1) !== 'title';
  });
  expect(bare).toEqual([]);
});

test('no object takes keys it doesn’t know', () => {
  // But for the sets of labels, whose names are the preset's own.
  expect(JSON.stringify(root).match(/"type":"object"/g)!.length).toBe(
    JSON.stringify(root).match(/"additionalProperties":false/g)!.length + 1,
  );
  const sets = nodeAt(root, ['grid', 'label_sets'])!;
  expect(sets.additionalProperties).toMatchObject({ type: 'array' });
  expect(nodeAt(root, ['grid', 'label_sets', 'winter', 0, 0])).toMatchObject({ type: 'string', maxLength: 24 });
});

test.for([
  { name: 'boresightSigmaDeg', want: 'boresight_sigma_deg' },
  { name: 'densityGcm3', want: 'density_gcm3' },
  { name: 'warpPer100', want: 'warp_per_100' },
  { name: 'bedX', want: 'bed_x' },
  { name: 'creepA', want: 'creep_a' },
])('$name is $want in a preset', ({ name, want }) => expect(presetKey(name)).toBe(want));

test('every figure of the catalogues lies within its own limits', () => {
  for (const [catalogue, figures] of [
    [emitters, emitterFigures],
    [receivers, receiverFigures],
    [plastics, plasticFigures],
    [printers, printerFigures],
  ] as const) {
    for (const [name, part] of Object.entries(catalogue)) {
      const data = part as unknown as Record<string, { value: number }>;
      expect(
        Object.keys(data)
          .filter((key) => key !== 'title' && (figures as Readonly<Record<string, Figure>>)[key]?.open !== true)
          .sort(),
        name,
      ).toEqual(
        Object.entries(figures as Readonly<Record<string, Figure>>)
          .filter(([, { open }]) => open !== true)
          .map(([key]) => key)
          .sort(),
      );
      for (const [figure, { least, most, open }] of Object.entries(figures as Readonly<Record<string, Figure>>)) {
        if (open === true && data[figure] === undefined) continue;
        expect(data[figure]!.value, `${name}.${figure}`).toBeGreaterThanOrEqual(least);
        expect(data[figure]!.value, `${name}.${figure}`).toBeLessThanOrEqual(most);
      }
    }
  }
});

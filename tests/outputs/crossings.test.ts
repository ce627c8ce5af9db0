import { expect, test } from 'vitest';
import { crossings } from '../../src/outputs/crossings-json.js';
import { readPreset } from '../../src/spec/read-preset.js';

test('the crossing table by hand: near row first, wires of both receivers, labels of every set', () => {
  const spec = readPreset(
    `grid:
  rows: 2
  columns: 1
  pitch: 22
  labels: [[far], [near]]
  label_sets:
    winter: [[fern], [nah]]
    dress-2: [["Ω mega"], [""]]
`,
    'bench.yaml',
  );
  // Wires: two each for 3 emitters, then plus, minus, signal of column 0 (7, 8, 9), row 0 (10–12), row 1 (13–15).
  expect(crossings(spec)).toEqual({
    format: 'beamloom-crossings/1',
    kit: 'bench',
    label_sets: ['winter', 'dress-2'],
    keys: [
      {
        row: 0,
        column: 0,
        beams: ['column-0', 'row-0'],
        signal_wires: ['W9', 'W12'],
        label: 'near',
        labels: { winter: 'nah', 'dress-2': '' },
      },
      {
        row: 1,
        column: 0,
        beams: ['column-0', 'row-1'],
        signal_wires: ['W9', 'W15'],
        label: 'far',
        labels: { winter: 'fern', 'dress-2': 'Ω mega' },
      },
    ],
  });
});

test('without further sets there is no word of them', () => {
  const spec = readPreset('grid: { rows: 1, columns: 1, pitch: 22 }\n', 'bench.yaml');
  expect(crossings(spec)).toEqual({
    format: 'beamloom-crossings/1',
    kit: 'bench',
    keys: [{ row: 0, column: 0, beams: ['column-0', 'row-0'], signal_wires: ['W7', 'W10'], label: '' }],
  });
});

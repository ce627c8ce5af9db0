/** `crossings.json`: which pair of lines is which key, neutral, for whatever program reads the panel. */
import { netsOf, wireNamed } from '../kit/wires.js';
import type { Spec } from '../spec/spec.js';
import type { Output } from './context.js';
import { type Json, jsonText } from './json-text.js';

export const crossingsJson: Output = ({ spec }) => [
  { path: 'crossings.json', bytes: new TextEncoder().encode(jsonText(crossings(spec))) },
];

/** Rows count from the near side, columns from the left; `label` is the engraved one, `labels` those of the further sets. */
export function crossings(spec: Spec): Json {
  const { rows, columns, labels, labelSets } = spec.grid;
  const wire = wireNamed(netsOf(spec));
  return {
    format: 'beamloom-crossings/1',
    kit: spec.name,
    ...(labelSets !== undefined && { label_sets: labelSets.map(({ name }) => name) }),
    keys: rows.flatMap((_, row) =>
      columns.map((__, column) => {
        const beams = [`column-${column}`, `row-${row}`];
        return {
          row,
          column,
          beams,
          signal_wires: beams.map((beam) => wire(`${beam} receiver signal`).id),
          label: labels?.[row]?.[column] ?? '',
          ...(labelSets !== undefined && {
            labels: Object.fromEntries(labelSets.map((set) => [set.name, set.labels[row]?.[column] ?? ''])),
          }),
        };
      }),
    ),
  };
}

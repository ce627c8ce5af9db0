/** Does every label come out in lines that the printer draws or in letters that can be read, and mean one key? */
import type { Finding } from '../findings.js';
import { BEYOND_PDF, fittingHeight, LEAST_LETTER } from '../kit/printed-legends.js';
import type { LabelSet, Spec } from '../spec/spec.js';
import type { Check, ShapeContext } from './context.js';
import { figure, say } from './say.js';

export const labels: Check<Pick<ShapeContext, 'kit' | 'spec'>> = {
  name: 'labels',
  codes: ['label/too-fine', 'label/too-long', 'label/not-in-pdf', 'label/twice'],
  run({ kit, spec }) {
    const limit = spec.printer.machine.lineWidth.value;
    const fine = (kit.legends ?? [])
      .filter(({ stroke }) => stroke < limit - 1e-9)
      .map(
        ({ label, place, stroke }): Finding =>
          say({
            code: 'label/too-fine',
            severity: 'warning',
            subject: `label of ${place}`,
            measured: stroke,
            limit,
            unit: 'mm',
            message: `"${label}" at ${place}, counted from 0 at the near left, would be engraved in strokes of ${figure(stroke)} mm, under the printed line of ${figure(limit)} mm, and is left out: about ${Math.max(1, Math.floor((label.length * stroke) / limit))} letters would fit.`,
            remedies: ['grid.labels', 'grid.pitch', 'printer'],
          }),
      );
    const sets = spec.grid.labelSets ?? [];
    return [
      ...fine,
      ...twice(spec.grid.labels, null),
      ...sets.flatMap((set) => [...printed(set, spec), ...twice(set.labels, set.name)]),
    ];
  },
};

/** A further set is printed on paper: what its sheets can't show. */
function printed({ name, labels: rows }: LabelSet, { grid }: Spec): Finding[] {
  const remedies = ['grid.label_sets'];
  return rows.flatMap((row, j) =>
    row.flatMap((label, i): Finding[] => {
      if (label.trim() === '') return [];
      const subject = `label of row ${j}, column ${i} in set ${name}`;
      const height = fittingHeight(label, [grid.columns[i]!, grid.rows[j]!]);
      const beyond = [...new Set(label.match(BEYOND_PDF) ?? [])];
      return [
        ...(height >= LEAST_LETTER - 1e-9
          ? []
          : [
              say({
                code: 'label/too-long',
                severity: 'warning',
                subject,
                measured: height,
                limit: LEAST_LETTER,
                unit: 'mm',
                message: `"${label}" of the label set ${name}, row ${j} and column ${i} counted from 0 at the near left, fits its key only in letters ${figure(height)} mm high; it is printed ${LEAST_LETTER} mm high and runs over the key's edge.`,
                remedies: [...remedies, 'grid.pitch'],
              }),
            ]),
        ...(beyond.length === 0
          ? []
          : [
              say({
                code: 'label/not-in-pdf',
                severity: 'note',
                subject,
                measured: beyond.length,
                unit: 'letters',
                message: `"${label}" of the label set ${name}, row ${j} and column ${i} counted from 0 at the near left, holds what the built-in faces of a PDF lack: print sheets/${name}/legend.svg instead.`,
                remedies,
              }),
            ]),
      ];
    }),
  );
}

/** Two keys may well do the same: it is only told. */
function twice(rows: readonly (readonly string[])[] | null, set: string | null): Finding[] {
  const places = new Map<string, string[]>();
  (rows ?? []).forEach((row, j) => {
    row.forEach((label, i) => {
      const text = label.trim();
      if (text === '') return;
      places.set(text, [...(places.get(text) ?? []), `column ${i} row ${j}`]);
    });
  });
  return [...places]
    .filter(([, at]) => at.length > 1)
    .map(([label, at]) =>
      say({
        code: 'label/twice',
        severity: 'note',
        subject: set === null ? `label ${label}` : `label ${label} in set ${set}`,
        measured: at.length,
        limit: 1,
        unit: 'keys',
        message: `"${label}"${set === null ? '' : ` of the label set ${set}`} stands on ${at.length} keys, counted from 0 at the near left: ${at.join(', ')}.`,
        remedies: [set === null ? 'grid.labels' : 'grid.label_sets'],
      }),
    );
}

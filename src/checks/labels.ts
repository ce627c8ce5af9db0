/** Does every label come out in lines that the printer draws, and mean one key? */
import type { Finding } from '../findings.js';
import type { Check, ShapeContext } from './context.js';
import { figure, say } from './say.js';

export const labels: Check<Pick<ShapeContext, 'kit' | 'spec'>> = {
  name: 'labels',
  codes: ['label/too-fine', 'label/twice'],
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
    return [...fine, ...twice(spec.grid.labels)];
  },
};

/** Two keys may well do the same: it is only told. */
function twice(rows: readonly (readonly string[])[] | null): Finding[] {
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
        subject: `label ${label}`,
        measured: at.length,
        limit: 1,
        unit: 'keys',
        message: `"${label}" stands on ${at.length} keys, counted from 0 at the near left: ${at.join(', ')}.`,
        remedies: ['grid.labels'],
      }),
    );
}

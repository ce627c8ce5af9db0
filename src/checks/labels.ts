/** Does every label come out in lines that the printer draws? */
import type { Finding } from '../findings.js';
import type { Check, ShapeContext } from './context.js';
import { figure, say } from './say.js';

export const labels: Check<Pick<ShapeContext, 'kit' | 'spec'>> = {
  name: 'labels',
  codes: ['label/too-fine'],
  run({ kit, spec }) {
    const limit = spec.printer.machine.lineWidth.value;
    return (kit.legends ?? [])
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
  },
};

/** Every figure that the kit was computed with, and where it comes from. */
import type { Datum } from '../../data.js';
import {
  ambientFigures,
  emitterFigures,
  type Figure,
  plasticFigures,
  presetKey,
  printerFigures,
  receiverFigures,
} from '../../spec/figures.js';
import type { Spec } from '../../spec/spec.js';
import { table, text } from './html.js';

export function sourcesHtml({ emitters, receivers, light, material, printer }: Spec): string {
  const blocks = [
    [`Emitter: ${emitters.part.title}`, emitters.part, emitterFigures],
    [`Receiver: ${receivers.part.title}`, receivers.part, receiverFigures],
    [`Light around: ${light.ambient.title}`, light.ambient, ambientFigures],
    [`Plastic: ${material.plastic.title}`, material.plastic, plasticFigures],
    [`Printer: ${printer.machine.title}`, printer.machine, printerFigures],
  ] as const;
  return blocks
    .map(([caption, entry, figures]) => {
      const said = figures as Readonly<Record<string, Figure>>;
      const rows = Object.entries(entry as unknown as Readonly<Record<string, string | Datum>>).flatMap(
        ([name, datum]) =>
          typeof datum === 'string'
            ? []
            : [[presetKey(name), said[name]?.what ?? '', String(datum.value), said[name]?.unit ?? '', datum.source]],
      );
      return `<details><summary>${text(caption)}</summary>${table(caption, ['key', 'what', 'value', 'unit', 'source'], rows, { numbers: [2] })}</details>`;
    })
    .join('\n');
}

/** What to print, on which bed, and what to buy. */

import { cutLength, OVER, wireLengths } from '../../kit/wire-lengths.js';
import { PLASTIC_ASSUMES } from '../beds/plastic.js';
import type { OutputContext } from '../context.js';
import { partFigures, quantities, spareEmitters } from '../part-figures.js';
import { table, text } from './html.js';

const WIRES = 'emitter-wires';

export function hardwareHtml(context: OutputContext): string {
  const { kit, kernel, beds, light, spec } = context;
  const count = quantities(kit);
  const parts = [...kit.parts.values()];
  const printed = parts.filter(({ kind }) => kind === 'printed');
  const bought = parts.filter(({ kind, id }) => kind === 'bought' && id !== WIRES);
  const spares = spareEmitters(light, count.get(spec.emitters.name) ?? 0) ?? 0;
  const wires = wireLengths(kit);
  return [
    table(
      'To print',
      ['part', 'what it is', 'number', 'size [mm]', 'g each, as filled', 'file'],
      printed.map((part) => [
        part.id,
        part.title,
        count.get(part.id) ?? 0,
        partFigures(part, kernel)
          .size.map((edge) => edge.toFixed(1))
          .join(' × '),
        (beds.plasticG.get(part.id) ?? 0).toFixed(1),
        `stl/${part.id}.stl`,
      ]),
      { numbers: [2, 3, 4] },
    ),
    table(
      'Beds',
      ['file', 'pieces', 'filled', 'plastic [g]', 'filament [m]', 'hours'],
      beds.beds.map((bed) => [
        bed.file,
        bed.items.length,
        `${Math.round(100 * bed.fill)} %`,
        bed.plasticG.toFixed(0),
        bed.filamentM.toFixed(0),
        bed.hours.toFixed(1),
      ]),
      { numbers: [1, 2, 3, 4, 5] },
    ),
    `<p class="soft">${text(PLASTIC_ASSUMES)}</p>`,
    table(
      'To buy',
      ['part', 'standard', 'size', 'length [mm]', 'number', 'spares'],
      [
        ...bought.map((part) => [
          part.title,
          part.order?.standard ?? '',
          part.order?.size ?? '',
          part.order?.lengthMm ?? null,
          count.get(part.id) ?? 0,
          part.id === spec.emitters.name && spares > 0 ? spares : null,
        ]),
        ...wires.map(({ what, number, length }) => [what, '', '', cutLength(length), number, null]),
      ],
      { numbers: [3, 4, 5] },
    ),
    `<p class="soft">Wires by the shortest way along the rails to the corner where they leave, with ${OVER} mm over at each end; all of one side are cut alike, to the longest.</p>`,
  ].join('\n');
}

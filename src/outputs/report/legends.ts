/** Further sets of labels, as they lie on the panel. */
import type { OutputContext } from '../context.js';
import { table, text } from './html.js';

/** @returns nothing where the preset has no further sets */
export function legendsHtml({ spec: { grid } }: Pick<OutputContext, 'spec'>): string {
  const sets = grid.labelSets ?? [];
  if (sets.length === 0) return '';
  return [
    '<h3>Further legends</h3>',
    '<p>Printed on paper and laid on the deck in place of the engraved labels; the sheets are at 1:1. <code>crossings.json</code> names every key in each set.</p>',
    ...sets.flatMap(({ name, labels }) => [
      table(
        `Labels of ${name}`,
        ['row', ...grid.columns.map((_, i) => `column ${i}`)],
        // The far row is the upper one, as the panel is seen.
        labels.map((row, j) => [j, ...row]).toReversed(),
      ),
      `<p class="soft">sheets/${text(name)}/legend.svg, legend.pdf on A4 and legend-letter.pdf on Letter.</p>`,
    ]),
  ].join('\n');
}

/** Sheets to print on paper, 1:1: the keys' legend to cut out, and a template to drill or centre by. SVG whole, PDF on A4 pages. */

import type { Vec2 } from '../../solid/mesh.js';
import type { Output, OutputContext, OutputFile } from '../context.js';
import { type Mark, sheetSvg } from '../drawings/marks.js';
import { sheetPdf } from './pdf.js';
import { deckScrewPlaces, footprint } from './places.js';

/** White around what is drawn [mm]. */
const AROUND = 8;

export const sheets: Output = (context) => [
  ...both('legend', `${context.spec.title}: key legend, 1:1`, legend(context)),
  ...both(
    'template',
    `${context.spec.title}: template of the panel's outline, beams and screws, 1:1`,
    template(context),
  ),
];

interface Sheet {
  readonly size: Vec2;
  readonly about: string;
  readonly marks: readonly Mark[];
}

const both = (name: string, title: string, { size, about, marks }: Sheet): OutputFile[] => [
  { path: `sheets/${name}.svg`, bytes: new TextEncoder().encode(sheetSvg(size, { title, about, marks })) },
  { path: `sheets/${name}.pdf`, bytes: sheetPdf(size, { title, marks }) },
];

/** Cells as wide as the preset's, labels in their middles; without labels the keys' row and column. */
export function legend({ spec: { grid } }: Pick<OutputContext, 'spec'>): Sheet {
  const x = edges(grid.columns);
  const y = edges(grid.rows);
  const [width, depth] = [x.at(-1)!, y.at(-1)!];
  // Row 0 is the near one: lowest on the sheet.
  const at = (px: number, py: number): Vec2 => [AROUND + px, AROUND + depth - py];
  const cuts = [
    ...x.map((one): Mark => ({ kind: 'line', points: [at(one, 0), at(one, depth)], pen: 'cut' })),
    ...y.map((one): Mark => ({ kind: 'line', points: [at(0, one), at(width, one)], pen: 'cut' })),
  ];
  const labels = grid.rows.flatMap((cellDepth, j) =>
    grid.columns.flatMap((cellWidth, i): Mark[] => {
      const text = grid.labels === null ? `${j}.${i}` : (grid.labels[j]?.[i] ?? '');
      if (text.trim() === '') return [];
      // A letter is about .75 as broad as it is high.
      const size = Math.max(1.2, Math.min(4.5, (cellWidth - 4) / (0.75 * text.length), cellDepth - 4));
      const [px, py] = at((x[i]! + x[i + 1]!) / 2, (y[j]! + y[j + 1]!) / 2);
      return [{ kind: 'text', at: [px, py + size / 2], text, size, anchor: 'middle' }];
    }),
  );
  return {
    size: [width + 2 * AROUND, depth + 2 * AROUND],
    about: `${grid.columns.length} by ${grid.rows.length} keys, ${width} by ${depth} mm; cut along the dashed lines`,
    marks: [...cuts, ...labels],
  };
}

const edges = (cells: readonly number[]): readonly number[] =>
  [0, ...cells].map((_, i) => cells.slice(0, i).reduce((sum, cell) => sum + cell, 0));

/** The kit's outline on the table, the field, every beam, and crosses where screws of the deck go down. */
export function template(context: OutputContext): Sheet {
  const { kit } = context;
  const { min, max } = footprint(context);
  const [width, depth] = [max[0] - min[0], max[1] - min[1]];
  const at = ([px, py]: Vec2): Vec2 => [AROUND + px - min[0], AROUND + max[1] - py];
  const beams = kit.beams.flatMap(({ name, line, from, to }): Mark[] => {
    const [a, b] = [at([from[0], from[1]]), at([to[0], to[1]])];
    return [
      { kind: 'line', points: [a, b], pen: 'beam' },
      line === 'column'
        ? { kind: 'text', at: [a[0] - 0.8, (a[1] + b[1]) / 2], text: name, size: 1.8, turn: 90 }
        : { kind: 'text', at: [(a[0] + b[0]) / 2, a[1] - 0.8], text: name, size: 1.8 },
    ];
  });
  const crosses = deckScrewPlaces(kit).flatMap((place): Mark[] => {
    const [x, y] = at(place);
    return [
      {
        kind: 'line',
        points: [
          [x - 4, y],
          [x + 4, y],
        ],
        pen: 'thin',
      },
      {
        kind: 'line',
        points: [
          [x, y - 4],
          [x, y + 4],
        ],
        pen: 'thin',
      },
    ];
  });
  const outline: Mark = {
    kind: 'line',
    points: [at(min), at([max[0], min[1]]), at(max), at([min[0], max[1]]), at(min)],
  };
  return {
    size: [width + 2 * AROUND, depth + 2 * AROUND],
    about: `Outline ${width.toFixed(1)} by ${depth.toFixed(1)} mm, beams dash-dotted, crosses at the deck's screws`,
    marks: [outline, ...beams, ...crosses],
  };
}

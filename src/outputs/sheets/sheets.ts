/** Sheets to print on paper, 1:1: the keys' legend to cut out, and a template to drill or centre by. SVG whole, PDF on A4 or Letter pages. */
import { BREADTH, fittingHeight, LEAST_LETTER } from '../../kit/printed-legends.js';
import type { Vec2 } from '../../solid/mesh.js';
import type { Output, OutputContext, OutputFile } from '../context.js';
import { cellsOf } from '../drawings/cells.js';
import { type Mark, type Pen, sheetSvg } from '../drawings/marks.js';
import { fitted, ring } from '../drawings/sheet-frame.js';
import { sheetPdf } from './pdf.js';
import { deckHoles, deckOutlines, footprint } from './places.js';
import { rulerMarks } from './ruler.js';
import { A4, LETTER } from './tiles.js';

/** White around what is drawn, and strip for title and ruler below it on an SVG sheet [mm]. */
const AROUND = 8;
const FOOT = 16;
/** Ruler and what is written beside it. */
const LEAST_WIDE = 216;

export const sheets: Output = (context) => [
  ...files('legend', `${context.spec.title}: key legend, 1:1`, legend(context)),
  ...(context.spec.grid.labelSets ?? []).flatMap(({ name, labels }) =>
    files(`${name}/legend`, `${context.spec.title}: key legend ${name}, 1:1`, legend(context, labels)),
  ),
  ...files(
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

/** SVG whole, with title and ruler below; PDF for either paper. */
function files(name: string, title: string, { size: [width, height], about, marks }: Sheet): OutputFile[] {
  const wide = Math.max(width, LEAST_WIDE);
  const foot = height + 5;
  const below: Mark[] = [
    ...rulerMarks([AROUND, foot]),
    { kind: 'text', at: [AROUND, foot + 5], text: fitted(title, { size: 2, room: wide - 2 * AROUND }), size: 2 },
  ];
  return [
    {
      path: `sheets/${name}.svg`,
      bytes: new TextEncoder().encode(sheetSvg([wide, height + FOOT], { title, about, marks: [...marks, ...below] })),
    },
    { path: `sheets/${name}.pdf`, bytes: sheetPdf([width, height], { title, marks, page: A4 }) },
    { path: `sheets/${name}-letter.pdf`, bytes: sheetPdf([width, height], { title, marks, page: LETTER }) },
  ];
}

/**
 * Cells as wide as the preset's, labels in their middles; without labels the keys' row and column.
 *
 * @param texts - by row from near and column from left; left out: those that are engraved
 */
export function legend({ spec: { grid } }: Pick<OutputContext, 'spec'>, texts = grid.labels): Sheet {
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
      const text = texts === null ? `${j}.${i}` : (texts[j]?.[i] ?? '');
      if (text.trim() === '') return [];
      const size = Math.max(LEAST_LETTER, fittingHeight(text, [cellWidth, cellDepth]));
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

/** The kit's outline on the table, the deck and its keys, every beam, and where screws of the deck go down. */
export function template(context: OutputContext): Sheet {
  const { kit } = context;
  const { min, max } = footprint(context);
  const [width, depth] = [max[0] - min[0], max[1] - min[1]];
  const at = ([px, py]: readonly [number, number, ...number[]]): Vec2 => [AROUND + px - min[0], AROUND + max[1] - py];
  const line = (points: readonly Vec2[], pen: Pen): Mark => ({ kind: 'line', points: points.map(at), pen });
  const frame = (low: Vec2, high: Vec2, pen: Pen): Mark =>
    line([low, [high[0], low[1]], high, [low[0], high[1]], low], pen);
  const beams = kit.beams.flatMap(({ name, line: kind, from, to }): Mark[] => {
    // Names stand beyond the beams' nearer or left ends.
    const [x, y] =
      kind === 'column' ? at([from[0], Math.min(from[1], to[1])]) : at([Math.min(from[0], to[0]), from[1]]);
    return [
      line(
        [
          [from[0], from[1]],
          [to[0], to[1]],
        ],
        'beam',
      ),
      kind === 'column'
        ? { kind: 'text', at: [x + 0.9, y + 1.5 + BREADTH * 1.8 * name.length], text: name, size: 1.8, turn: 90 }
        : { kind: 'text', at: [x - 1.5, y + 0.9], text: name, size: 1.8, anchor: 'end' },
    ];
  });
  const holes = deckHoles(context).flatMap(({ place: [x, y], diameter }): Mark[] => {
    const [px, py] = at([x, y]);
    const text = `Ø${diameter} at ${(x - min[0]).toFixed(1)}, ${(y - min[1]).toFixed(1)}`;
    return [
      line(
        [
          [x - 4, y],
          [x + 4, y],
        ],
        'thin',
      ),
      line(
        [
          [x, y - 4],
          [x, y + 4],
        ],
        'thin',
      ),
      { kind: 'line', points: ring([px, py], diameter / 2), pen: 'thin' },
      { kind: 'text', at: [px + diameter / 2 + 1, py - 1], text, size: 1.8 },
    ];
  });
  const [left, low] = at(min);
  return {
    size: [width + 2 * AROUND, depth + 2 * AROUND],
    about: `Outline ${width.toFixed(1)} by ${depth.toFixed(1)} mm, deck and keys, beams dash-dotted, holes at the deck's screws`,
    marks: [
      frame(min, max, 'edge'),
      ...deckOutlines(context).map(({ min: from, max: to }) => frame(from, to, 'thin')),
      ...cellLines(context).map((points) => line(points, 'hidden')),
      ...beams,
      ...holes,
      {
        kind: 'text',
        at: [left + 3, low - 3],
        text: `0, 0; outline ${width.toFixed(1)} × ${depth.toFixed(1)} mm`,
        size: 1.8,
      },
    ],
  };
}

/** Boundaries of the keys, each once, so that their dashes don't fill one another's gaps. */
function cellLines(context: OutputContext): readonly (readonly Vec2[])[] {
  const cells = cellsOf(context);
  const along = (k: 0 | 1) =>
    [...new Set(cells.flatMap(({ min, max }) => [min[k], max[k]]).map((at) => Math.round(at * 1000) / 1000))].toSorted(
      (a, b) => a - b,
    );
  const [x, y] = [along(0), along(1)];
  if (x.length === 0) return [];
  return [
    ...x.map((at): readonly Vec2[] => [
      [at, y[0]!],
      [at, y.at(-1)!],
    ]),
    ...y.map((at): readonly Vec2[] => [
      [x[0]!, at],
      [x.at(-1)!, at],
    ]),
  ];
}

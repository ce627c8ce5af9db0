/** `parts.csv`: what to print and what to buy, with numbers. */
import type { Part } from '../kit/types.js';
import { cutLength, wireLengths } from '../kit/wire-lengths.js';
import { boardRows } from './boards/board-rows.js';
import type { Output, OutputContext } from './context.js';
import { tidy } from './json-text.js';
import { partFigures, quantities, spareEmitters } from './part-figures.js';

const HEADER = [
  'kind',
  'id',
  'title',
  'quantity',
  'material',
  'mass_g',
  'mass_all_g',
  'plastic_all_g',
  'spares',
  'x_mm',
  'y_mm',
  'z_mm',
  'standard',
  'size',
  'length_mm',
  'file',
];

/** One row a part, printed ones first. RFC 4180: commas, CRLF, quotes doubled. */
export const partsCsv: Output = (context) => [
  { path: 'parts.csv', bytes: new TextEncoder().encode(csvText([HEADER, ...rows(context)])) },
];

/**
 * @param rows - cells as text or numbers; null is an empty cell
 * @returns text by RFC 4180, UTF-8 once encoded
 */
export const csvText = (rows: readonly (readonly (string | number | null)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

/** Text that a spreadsheet would take for a formula gets an apostrophe in front: a title from a preset is never run. */
function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function rows(context: OutputContext): (string | number | null)[][] {
  const { kit } = context;
  const count = quantities(kit);
  const parts = [...kit.parts.values()];
  const printedFirst = [...parts.filter((p) => p.kind === 'printed'), ...parts.filter((p) => p.kind === 'bought')];
  return [
    ...printedFirst.map((part) => row(part, count.get(part.id) ?? 0, context)),
    ...panelRows(context),
    ...wireRows(context),
  ];
}

function row(part: Part, quantity: number, { kernel, beds, spec, light }: OutputContext): (string | number | null)[] {
  const plastic = beds.plasticG.get(part.id);
  const { massG, size } = partFigures(part, kernel);
  return [
    part.kind,
    part.id,
    part.title,
    quantity,
    part.material,
    tidy(massG, 3),
    tidy(massG * quantity, 3),
    plastic === undefined ? null : tidy(plastic * quantity, 1),
    // Barrels too crooked for the mount are sent back or thrown away: buy more than are placed.
    part.id === spec.emitters.name ? spareEmitters(light, quantity) : null,
    ...size.map((edge) => tidy(edge, 3)),
    part.order?.standard ?? null,
    part.order?.size ?? null,
    part.order?.lengthMm ?? null,
    part.kind === 'printed' ? `stl/${part.id}.stl` : null,
  ];
}

/** Panels to order, from which the boards above are cut, and what is soldered to those. */
const panelRows = ({ kit: { boards }, spec }: OutputContext): (string | number | null)[][] =>
  boards
    ? boardRows(boards, spec).map((cells) => HEADER.map((name) => ({ kind: 'bought', ...cells })[name] ?? null))
    : [];

/** Wires by the yard: what the drawn ones at the mounts stand for. */
const wireRows = ({ kit }: OutputContext): (string | number | null)[][] =>
  wireLengths(kit).map(({ id, what, number, length }) => {
    const cells: Readonly<Record<string, string | number>> = {
      kind: 'bought',
      id,
      title: what,
      quantity: number,
      material: 'copper and insulation',
      length_mm: cutLength(length),
    };
    return HEADER.map((name) => cells[name] ?? null);
  });

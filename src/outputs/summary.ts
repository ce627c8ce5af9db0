/** `summary.txt`: what was made, what was chosen, what was found, for the person who builds it. */
import type { GridSamples } from '../layout/light/sample-grids.js';
import { aimText } from './aim-text.js';
import { boardsText } from './boards/boards-text.js';
import { CAUTIONS } from './cautions.js';
import type { Output, OutputContext } from './context.js';
import { findingsText, tally } from './findings-text.js';
import { partFigures, quantities } from './part-figures.js';
import { counted, hanging, wrap } from './text.js';

export const summary: Output = (context) => [
  { path: 'summary.txt', bytes: new TextEncoder().encode(summaryText(context, { width: 80, files: true })) },
];

/**
 * @param width - columns to wrap at
 * @param files - false when no files were written
 * @returns the summary, ending in a newline
 */
export function summaryText(
  context: OutputContext,
  {
    width,
    files,
    samples = null,
  }: { readonly width: number; readonly files: boolean; readonly samples?: GridSamples | null },
): string {
  const { spec, solved, findings } = context;
  const sections = [
    `${spec.title}\n${'='.repeat(Math.min(spec.title.length, width))}`,
    madeText(context, width),
    ...(files ? [filesText(context, width)] : []),
    aimText(context.light, { width, samples }),
    `Findings: ${tally(findings)}${findings.length === 0 ? '' : `\n${findingsText(findings, { width })}`}`,
    ...(solved.length === 0
      ? []
      : [`Chosen for you, because the preset leaves it open\n${chosenText(context, width)}`]),
    cautionsText(width),
  ];
  return `${sections.join('\n\n')}\n`;
}

/** Cautions as a list. */
export const cautionsText = (width: number): string =>
  `Cautions\n${CAUTIONS.map((caution) => `  - ${wrap(caution, { width, indent: '    ' })}`).join('\n')}`;

/** What the kit is, in two or three lines. */
export function madeText(context: OutputContext, width: number): string {
  const { spec, kit, kernel } = context;
  const { rows, columns } = spec.grid;
  const count = quantities(kit);
  const sum = (kind: 'printed' | 'bought') => {
    const parts = [...kit.parts.values()].filter((part) => part.kind === kind);
    const pieces = parts.reduce((total, part) => total + (count.get(part.id) ?? 0), 0);
    const mass = parts.reduce((total, part) => total + (count.get(part.id) ?? 0) * partFigures(part, kernel).massG, 0);
    return { kinds: parts.length, pieces, mass };
  };
  const printed = sum('printed');
  const bought = sum('bought');
  const lines = [
    `${counted(rows.length, 'row')} by ${counted(columns.length, 'column')}: ${counted(rows.length * columns.length, 'key')}, ${counted(kit.beams.length, 'beam')} ${figure(spec.beam.height)} mm above the deck.`,
    `To print: ${counted(printed.pieces, 'piece')} of ${counted(printed.kinds, 'kind')}, ${Math.round(printed.mass)} g if solid, in ${spec.material.plastic.title} on ${spec.printer.machine.title}.`,
    ...bedsLine(context),
    `To buy: ${counted(bought.pieces, 'piece')} of ${counted(bought.kinds, 'kind')}.`,
    ...(kit.boards ? [boardsText(kit.boards)] : []),
  ];
  return lines.map((line) => wrap(line, { width, indent: '  ' })).join('\n');
}

function bedsLine({ beds: { beds, atLeast } }: OutputContext): string[] {
  if (beds.length === 0) return [];
  const sum = (of: (bed: (typeof beds)[number]) => number) => beds.reduce((total, bed) => total + of(bed), 0);
  const least = atLeast === beds.length ? 'the fewest possible' : `${atLeast} at the very least by area`;
  return [
    `On ${counted(beds.length, 'bed')} (${least}): roughly ${Math.round(sum((bed) => bed.plasticG))} g, ${Math.round(sum((bed) => bed.filamentM))} m of filament, ${Math.round(sum((bed) => bed.hours))} hours of printing.`,
  ];
}

const WHAT_FOR: Readonly<Record<string, string>> = {
  'stl/': 'the parts to print, each the right way up; how many of each stands in parts.csv',
  'posed/': 'the mounts as they stand once aligned; not for printing',
  'bought/': 'simple shapes of the bought parts; not for printing',
  'prints/': 'the same parts laid out on beds, one file a bed, ready for the printer’s own program',
  'kit.3mf': 'the assembled kit, bought parts too, to turn and look at; not for printing',
  'drawings/': 'each printed part to scale, the plan with its beams, the kit taken apart',
  'sheets/':
    'on paper, 1:1: the keys’ legend, and a template of outline, beams and screws; the PDFs on A4 or Letter pages',
  'pictures/': 'the kit, closed and open, and each printed part',
  'boards/':
    'outline and drill of each board, and of each panel to order them on, as DXF and SVG; every hole in holes.csv; the copper is not drawn',
  'parts.csv': 'what to print and what to buy, with numbers',
  'channels.csv': 'which line is read on which channel, for wiring and program',
  'report.html':
    'all of it on one page, with a 3D view, the order of assembly in pictures, and how to align; open it in a browser',
  'wires.csv': 'every wire, from where to where, how long',
  'wiring.svg': 'the circuit, its wires numbered as in the lists',
  'crossings.json': 'which pair of beams is which key, for the program that reads the panel',
  'kit.json': 'everything about the kit, the order of assembly included, for other programs',
  'summary.txt': 'this text',
};

function filesText({ shapes, kit }: OutputContext, width: number): string {
  const folders = new Set([
    'prints/',
    'drawings/',
    'sheets/',
    'pictures/',
    ...(kit.boards ? ['boards/'] : []),
    ...shapes.map(({ folder }) => `${folder}/`),
  ]);
  const there = Object.entries(WHAT_FOR).filter(([path]) => !path.endsWith('/') || folders.has(path));
  const lines = there.map(([path, what]) => hanging(`  ${path}`, what, { width, column: 15 }));
  return `Files\n${lines.join('\n')}`;
}

function chosenText({ solved }: OutputContext, width: number): string {
  return solved
    .map(({ path, value, why }) => {
      const said =
        typeof value === 'object' ? value.map(figure).join(', ') : typeof value === 'number' ? figure(value) : value;
      return hanging(`  ${path}`, `${said}${why === '' ? '' : `: ${why}`}`, { width, column: 26 });
    })
    .join('\n');
}

const figure = (value: number): string => String(Number(value.toPrecision(4)));

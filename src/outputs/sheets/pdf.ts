/** A sheet as a PDF on A4 pages that overlap, each with a ruler to check the printer's scale by. */
import { jsPDF } from 'jspdf';
import type { Vec2 } from '../../solid/mesh.js';
import { type Mark, PENS } from '../drawings/marks.js';
import { FOOT, onTile, PAGE, type Tile, tilesOf, WHITE } from './tiles.js';

/** Length of the ruler at each page's foot. */
export const RULER = 100;
const POINTS_PER_MM = 72 / 25.4;
/** Same content, same bytes. */
const NO_TIME = "D:20000101000000+00'00'";
const NO_ID = '0'.repeat(32);

export function sheetPdf(
  size: Vec2,
  { title, marks }: { readonly title: string; readonly marks: readonly Mark[] },
): Uint8Array {
  const pdf = new jsPDF({ unit: 'mm', format: [...PAGE], compress: true, putOnlyUsedFonts: true });
  pdf.setCreationDate(NO_TIME);
  pdf.setFileId(NO_ID);
  pdf.setDocumentProperties({ title: latin(title), creator: 'beamloom' });
  pdf.setFont('helvetica', 'normal');
  for (const [i, tile] of tilesOf(size).entries()) {
    if (i > 0) pdf.addPage([...PAGE]);
    for (const mark of [...marks.flatMap((mark) => onTile(mark, tile)), ...footMarks(tile, title)]) draw(pdf, mark);
  }
  return new Uint8Array(pdf.output('arraybuffer'));
}

function draw(pdf: jsPDF, mark: Mark): void {
  if (mark.kind === 'text') {
    // Capitals of Helvetica are .718 of its size high.
    pdf.setFontSize((mark.size / 0.718) * POINTS_PER_MM);
    const align = ({ start: 'left', middle: 'center', end: 'right' } as const)[mark.anchor ?? 'start'];
    pdf.text(latin(mark.text), mark.at[0], mark.at[1], { align, angle: mark.turn ?? 0 });
    return;
  }
  if (mark.kind === 'area') return;
  const { width, dash, colour } = PENS[mark.pen ?? 'edge'];
  pdf.setLineWidth(width);
  pdf.setLineDashPattern([...dash], 0);
  pdf.setDrawColor(colour);
  for (let i = 1; i < mark.points.length; i++) pdf.line(...mark.points[i - 1]!, ...mark.points[i]!);
}

/** Ruler, page number, and crosses by which neighbouring pages are laid on each other. */
function footMarks({ column, row, columns, rows, shows: [left, top, right, bottom] }: Tile, title: string): Mark[] {
  const y = PAGE[1] - WHITE - 4;
  const ticks = Array.from({ length: RULER / 10 + 1 }, (_, i): Mark => {
    const x = WHITE + 10 * i;
    return {
      kind: 'line',
      points: [
        [x, y],
        [x, y - (i % 5 === 0 ? 4 : 2.5)],
      ],
      pen: 'thin',
    };
  });
  const [w, h] = [right - left, bottom - top];
  const corners: Vec2[] = [
    [WHITE, WHITE],
    [WHITE + w, WHITE],
    [WHITE, WHITE + h],
    [WHITE + w, WHITE + h],
  ];
  const crosses = corners.flatMap(([x, at]): Mark[] => [
    {
      kind: 'line',
      points: [
        [x - 3, at],
        [x + 3, at],
      ],
      pen: 'cut',
    },
    {
      kind: 'line',
      points: [
        [x, at - 3],
        [x, at + 3],
      ],
      pen: 'cut',
    },
  ]);
  return [
    {
      kind: 'line',
      points: [
        [WHITE, y],
        [WHITE + RULER, y],
      ],
      pen: 'thin',
    },
    ...ticks,
    {
      kind: 'text',
      at: [WHITE + RULER + 3, y],
      text: `${RULER} mm: measure it. Print at 100 %, not fitted to the page.`,
      size: 2,
    },
    {
      kind: 'text',
      at: [WHITE, y - FOOT + 10],
      text: `${title}: page ${row * columns + column + 1} of ${rows * columns}${rows * columns > 1 ? `, row ${row + 1} of ${rows}, column ${column + 1} of ${columns}; lay the crosses on each other` : ''}`,
      size: 2,
    },
    ...crosses,
  ];
}

/** The built-in faces know Latin-1 only. */
const latin = (text: string): string => text.replace(/[^\x20-\x7e\xa0-\xff]/g, '?');

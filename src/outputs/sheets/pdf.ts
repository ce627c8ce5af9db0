/** A sheet as a PDF on pages that overlap, each with a ruler to check the printer's scale by. */
import { jsPDF } from 'jspdf';
import { BEYOND_PDF } from '../../kit/printed-legends.js';
import type { Vec2 } from '../../solid/mesh.js';
import { type Mark, PENS } from '../drawings/marks.js';
import { fitted } from '../drawings/sheet-frame.js';
import { rulerMarks } from './ruler.js';
import { FOOT, onTile, registration, type Tile, tilesOf, WHITE } from './tiles.js';

const POINTS_PER_MM = 72 / 25.4;
/** Same content, same bytes. */
const NO_TIME = "D:20000101000000+00'00'";
const NO_ID = '0'.repeat(32);

export function sheetPdf(
  size: Vec2,
  { title, marks, page }: { readonly title: string; readonly marks: readonly Mark[]; readonly page: Vec2 },
): Uint8Array {
  const pdf = new jsPDF({ unit: 'mm', format: [...page], compress: true, putOnlyUsedFonts: true });
  pdf.setCreationDate(NO_TIME);
  pdf.setFileId(NO_ID);
  pdf.setDocumentProperties({ title: latin(title), creator: 'beamloom' });
  pdf.setFont('helvetica', 'normal');
  const tiles = tilesOf(size, page);
  const sheet = [...marks, ...registration(tiles)];
  for (const [i, tile] of tiles.entries()) {
    if (i > 0) pdf.addPage([...page]);
    for (const mark of [...sheet.flatMap((mark) => onTile(mark, tile)), ...footMarks(tile, { title, page })])
      draw(pdf, mark);
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
  if (mark.kind !== 'line') return;
  const { width, dash, colour } = PENS[mark.pen ?? 'edge'];
  pdf.setLineWidth(width);
  pdf.setLineDashPattern([...dash], 0);
  pdf.setDrawColor(colour);
  for (let i = 1; i < mark.points.length; i++) pdf.line(...mark.points[i - 1]!, ...mark.points[i]!);
}

/** Ruler and page number. */
function footMarks(
  { column, row, columns, rows }: Tile,
  { title, page }: { readonly title: string; readonly page: Vec2 },
): Mark[] {
  const y = page[1] - WHITE - 4;
  const many = rows * columns > 1;
  const text = `${fitted(title, { size: 2, room: 90 })}: page ${row * columns + column + 1} of ${rows * columns}${many ? `, row ${row + 1} of ${rows}, column ${column + 1} of ${columns}; lay the circled crosses on each other` : ''}`;
  return [...rulerMarks([WHITE, y]), { kind: 'text', at: [WHITE, y - FOOT + 10], text, size: 2 }];
}

/** The built-in faces know Latin-1 only. */
const latin = (text: string): string => text.replaceAll('…', '...').replace(BEYOND_PDF, '?');

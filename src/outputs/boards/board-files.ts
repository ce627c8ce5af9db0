/** `boards/`: outline and drill of every board and panel, to order them by. */
import type { Output } from '../context.js';
import { dxf } from './dxf.js';
import { holesCsv } from './holes-csv.js';
import { sheetsOf } from './sheet.js';
import { boardSvg } from './svg.js';

export const boardFiles: Output = ({ kit }) => {
  if (!kit.boards) return [];
  const sheets = sheetsOf(kit.boards);
  const file = (name: string, text: string) => ({ path: `boards/${name}`, bytes: new TextEncoder().encode(text) });
  return [
    ...sheets.flatMap((sheet) => [file(`${sheet.id}.dxf`, dxf(sheet)), file(`${sheet.id}.svg`, boardSvg(sheet))]),
    file('holes.csv', holesCsv(sheets)),
  ];
};

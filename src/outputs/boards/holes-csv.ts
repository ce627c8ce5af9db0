/** `boards/holes.csv`: every hole of every board and panel, from its lower left corner. */
import { csvText } from '../parts-csv.js';
import type { Sheet } from './sheet.js';

const HEADER = ['board', 'hole', 'x_mm', 'y_mm', 'diameter_mm', 'plated', 'use', 'label'];

export const holesCsv = (sheets: readonly Sheet[]): string =>
  csvText([
    HEADER,
    ...sheets.flatMap(({ id, holes }) =>
      holes.map(({ x, y, d, plated, use, label }, i) => [id, i + 1, x, y, d, plated ? 'yes' : 'no', use, label]),
    ),
  ]);

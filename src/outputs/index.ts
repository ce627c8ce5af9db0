/** Every kind of output besides the shapes, which the gate reads before anything else is made. A new one is one line. */
import { boardFiles } from './boards/board-files.js';
import { channelsCsv } from './channels-csv.js';
import type { Outputs } from './context.js';
import { crossingsJson } from './crossings-json.js';
import { kitJson } from './kit-json.js';
import { partsCsv } from './parts-csv.js';
import { report } from './report/report.js';
import { sheets } from './sheets/sheets.js';
import { summary } from './summary.js';
import { bed3mf } from './three-mf/bed-3mf.js';
import { wiresCsv } from './wires-csv.js';
import { wiringSvg } from './wiring-diagram/diagram.js';

export const OUTPUTS = {
  bed3mf,
  kit3mf: ({ drawn }) => drawn.kit3mf(),
  partsCsv,
  channelsCsv,
  wiresCsv,
  wiringSvg,
  crossingsJson,
  kitJson,
  summary,
  boardFiles,
  partSheets: ({ drawn }) => drawn.partSheets(),
  plan: ({ drawn }) => drawn.plan(),
  exploded: ({ drawn }) => drawn.exploded(),
  sheets,
  pictures: ({ drawn }) => [{ path: 'pictures/kit.png', bytes: drawn.kitPicture() }, ...drawn.pictures()],
  report,
} as const satisfies Outputs;

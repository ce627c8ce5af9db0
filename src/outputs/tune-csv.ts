/** `tune.csv`: one line a design, one column a figure with its unit. */
import type { TuneReport } from '../tune/report.js';
import type { OutputFile } from './context.js';
import { csvText } from './parts-csv.js';
import { fieldsOf } from './tune-fields.js';

export function tuneCsv(report: TuneReport): OutputFile {
  const lines = report.rows.map((row) => fieldsOf(row, report));
  const header = lines[0]?.map(([name]) => name) ?? [];
  const cell = (value: number | string | boolean | null) =>
    typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
  const text = csvText([header, ...lines.map((line) => line.map(([, value]) => cell(value)))]);
  return { path: 'tune.csv', bytes: new TextEncoder().encode(text) };
}

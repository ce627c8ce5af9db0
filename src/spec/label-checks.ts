/** Labels that fit the grid: the engraved ones, and every further set by its name. */
import { type Unplaced, valueAt } from './mistakes.js';
import { folderProblem } from './name.js';
import { MOST_SETS, presetSchema, SET_NAME } from './schema.js';
import { type Path, quote } from './words.js';

/** @returns mistakes in `grid.labels` and `grid.label_sets` that only the grid's size or a set's name shows */
export function checkLabels(data: unknown): readonly Unplaced[] {
  return [...checkRows(data, { path: ['grid', 'labels'], whose: 'the labels' }), ...checkSets(data)];
}

function checkSets(data: unknown): readonly Unplaced[] {
  const path: Path = ['grid', 'label_sets'];
  const sets = valueAt(data, path);
  if (typeof sets !== 'object' || sets === null || Array.isArray(sets)) return [];
  const names = Object.keys(sets);
  const tooMany: readonly Unplaced[] =
    names.length <= MOST_SETS
      ? []
      : [
          {
            code: 'preset/too-long',
            path,
            message: `found ${names.length} sets of labels`,
            hint: `allowed are ${MOST_SETS}`,
            at: 'key',
          },
        ];
  return [
    ...tooMany,
    ...names.flatMap((name): readonly Unplaced[] => {
      const problem = folderProblem(name, SET_NAME.most);
      const own: Path = [...path, name];
      const rows = checkRows(data, { path: own, whose: `the label set ${quote(name)}` });
      if (problem === null) return rows;
      const message = `a folder of the kit is named after each set of labels, and ${quote(name)} ${problem}`;
      return [{ code: 'preset/name', path: own, message, hint: 'rename it, e.g. spring-show', at: 'key' }, ...rows];
    }),
  ];
}

function checkRows(data: unknown, { path, whose }: { readonly path: Path; readonly whose: string }): Unplaced[] {
  const labels = valueAt(data, path);
  if (!Array.isArray(labels)) return [];
  const rows = linesOf(data, 'rows');
  const columns = linesOf(data, 'columns');
  const mistakes: Unplaced[] = [];
  if (rows !== undefined && labels.length !== rows) {
    const message = `found ${plural(labels.length, 'row')} of labels${path.length > 2 ? ` in ${whose}` : ''}, but the grid has ${plural(rows, 'row')}`;
    mistakes.push({
      code: 'preset/labels',
      path,
      message,
      hint: 'one row of labels for each row, far row first',
      at: 'key',
    });
  }
  if (columns === undefined) return mistakes;
  for (const [index, row] of labels.entries()) {
    if (!Array.isArray(row) || row.length === columns) continue;
    const message = `row ${index + 1} of ${whose}, counted from the far side, has ${plural(row.length, 'label')}, but the grid has ${plural(columns, 'column')}`;
    mistakes.push({
      code: 'preset/labels',
      path: [...path, index],
      message,
      hint: 'write "" for a key without label',
      at: 'value',
    });
  }
  return mistakes;
}

function linesOf(data: unknown, axis: 'rows' | 'columns'): number | undefined {
  const lines = presetSchema.shape.grid.shape[axis].safeParse(valueAt(data, ['grid', axis]));
  if (!lines.success) return undefined;
  return typeof lines.data === 'number' ? lines.data : lines.data.length;
}

const plural = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;

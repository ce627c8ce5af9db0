/** The keys' cells on the deck: each as wide as its column and as deep as its row, its beams through the middle. Assembly, mm. */
import type { Vec2 } from '../../solid/mesh.js';
import type { ShownContext } from '../context.js';

export interface Cell {
  readonly min: Vec2;
  readonly max: Vec2;
  readonly label: string;
}

/** @returns row by row from the near left; a key is where two beams cross */
export function cellsOf({ kit, spec: { grid } }: Pick<ShownContext, 'kit' | 'spec'>): readonly Cell[] {
  const rows = kit.beams.filter(({ line }) => line === 'row');
  const columns = kit.beams.filter(({ line }) => line === 'column');
  return rows.flatMap((row) =>
    columns.map((column): Cell => {
      const [x, y] = [column.from[0], row.from[1]];
      const [w, d] = [grid.columns[column.index] ?? 0, grid.rows[row.index] ?? 0];
      return {
        min: [x - w / 2, y - d / 2],
        max: [x + w / 2, y + d / 2],
        label: grid.labels?.[row.index]?.[column.index] ?? '',
      };
    }),
  );
}

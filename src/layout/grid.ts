/** Where the beams cross, and how large the field is. Assembly coordinates, mm. */
import type { Spec } from '../spec/spec.js';

export interface Grid {
  /** x of each column's beam, left to right; y of each row's beam, near to far. */
  readonly columns: readonly number[];
  readonly rows: readonly number[];
  /** Boundaries between cells and around them, in the field's coordinates. */
  readonly columnEdges: readonly number[];
  readonly rowEdges: readonly number[];
  /** Field between the walls: x from 0 to width, y from 0 to depth. */
  readonly width: number;
  readonly depth: number;
  /** Least distance between neighbouring beams; Infinity with one row and one column. */
  readonly leastPitch: number;
}

/** Margin along each axis, outermost beam to wall [mm]. */
export interface Margins {
  readonly x: number;
  readonly y: number;
}

/** @param margins - as the preset gives them, or as `margin.ts` solves them */
export function layGrid(spec: Spec, margins: Margins): Grid {
  const x = axis(spec.grid.columns, margins.x);
  const y = axis(spec.grid.rows, margins.y);
  return {
    columns: x.beams,
    rows: y.beams,
    columnEdges: x.edges,
    rowEdges: y.edges,
    width: x.size,
    depth: y.size,
    leastPitch: leastPitchOf(spec),
  };
}

/** Least distance between neighbouring beams [mm]; Infinity with one row and one column. */
export const leastPitchOf = ({ grid }: Spec): number =>
  Math.min(Infinity, ...gaps(middles(grid.columns)), ...gaps(middles(grid.rows)));

function axis(cells: readonly number[], margin: number) {
  const edges = [margin - cells[0]! / 2];
  for (const cell of cells) edges.push(edges.at(-1)! + cell);
  return {
    edges,
    beams: cells.map((cell, i) => edges[i]! + cell / 2),
    size: spanOf(cells) + 2 * margin,
  };
}

/** From the first beam to the last [mm]. */
export const spanOf = (cells: readonly number[]): number =>
  cells.reduce((a, b) => a + b, 0) - cells[0]! / 2 - cells.at(-1)! / 2;

function middles(cells: readonly number[]): number[] {
  let at = 0;
  return cells.map((cell) => {
    at += cell;
    return at - cell / 2;
  });
}

const gaps = (beams: readonly number[]) => beams.slice(1).map((b, i) => b - beams[i]!);

/** Where the beams cross, and how large the field is. Assembly coordinates, mm. */
import type { Solved, Spec } from '../spec/spec.js';

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

/**
 * From the outermost beam to the wall: a finger's radius and some play, as the bezel is a wall beside the finger; and the
 * openings over the last mount must clear the corner post.
 */
const MARGIN = 18;
/** Where the cells are too narrow for the cover's screws between them, those stand beside the outermost. */
const MARGIN_NARROW = 25.2;
const ROOMY = 19.95;
/** Beyond the outermost cell, so that its boundary is seen. */
const BORDER = 2;

/** @param leastField - two legs of a corner bracket and a gap between them [mm] */
export function layGrid(spec: Spec, leastField: number): { readonly grid: Grid; readonly solved: readonly Solved[] } {
  const x = axis(spec.grid.columns, spec.frame.margin, leastField);
  const y = axis(spec.grid.rows, spec.frame.margin, leastField);
  const solved: Solved[] =
    spec.frame.margin === undefined
      ? [
          {
            path: 'frame.margin',
            value: [x.margin, y.margin],
            why: `along x and y: at least ${MARGIN} mm for the finger beside the wall and for the openings over the last mount, ${MARGIN_NARROW} where the cover's inner screws have no room between the cells, ${BORDER} mm beyond the outermost cell, and room for two corner brackets on each side`,
          },
        ]
      : [];
  const pitches = [...gaps(x.beams), ...gaps(y.beams)];
  return {
    grid: {
      columns: x.beams,
      rows: y.beams,
      columnEdges: x.edges,
      rowEdges: y.edges,
      width: x.size,
      depth: y.size,
      leastPitch: Math.min(Infinity, ...pitches),
    },
    solved,
  };
}

function axis(cells: readonly number[], given: number | undefined, leastField: number) {
  const total = cells.reduce((a, b) => a + b, 0);
  const [first, last] = [cells[0]! / 2, cells.at(-1)! / 2];
  const span = total - first - last;
  const roomy = cells.length > 2 && Math.min(...cells) >= ROOMY;
  const margin =
    given ?? Math.max(roomy ? MARGIN : MARGIN_NARROW, first + BORDER, last + BORDER, (leastField - span) / 2);
  const start = margin - first;
  const edges = [start];
  for (const cell of cells) edges.push(edges.at(-1)! + cell);
  return {
    margin,
    edges,
    beams: cells.map((cell, i) => edges[i]! + cell / 2),
    size: span + 2 * margin,
  };
}

const gaps = (beams: readonly number[]) => beams.slice(1).map((b, i) => b - beams[i]!);

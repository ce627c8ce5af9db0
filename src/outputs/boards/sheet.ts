/** What a board's or panel's files show: closed outlines and holes, by layer. x right, y up, mm. */
import type { BoardsOfKit } from '../../kit/types.js';
import type { PanelDesign } from '../../layout/boards/panels.js';
import type { Board, BoardHole } from '../../layout/boards/types.js';
import { tidy } from '../json-text.js';

export type Layer = 'OUTLINE' | 'CUT' | 'DRILL-PLATED' | 'DRILL-UNPLATED';
export const LAYERS: readonly Layer[] = ['OUTLINE', 'CUT', 'DRILL-PLATED', 'DRILL-UNPLATED'];

export type Point = readonly [x: number, y: number];

export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly rings: readonly { readonly layer: Layer; readonly points: readonly Point[] }[];
  readonly holes: readonly SheetHole[];
}

export interface SheetHole extends Pick<BoardHole, 'x' | 'y' | 'd' | 'plated' | 'use' | 'label'> {
  readonly layer: Layer;
}

const rectangle = ([x, y]: Point, width: number, height: number): readonly Point[] =>
  [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ].map(([a, b]): Point => [tidy(a!, 3), tidy(b!, 3)]);

const placed = (hole: BoardHole, [x, y]: Point): SheetHole => ({
  x: tidy(x, 3),
  y: tidy(y, 3),
  d: hole.d,
  plated: hole.plated,
  use: hole.use,
  label: hole.label,
  layer: hole.plated ? 'DRILL-PLATED' : 'DRILL-UNPLATED',
});

export const boardSheet = ({ id, title, length, height, holes }: Board): Sheet => ({
  id,
  title,
  width: length,
  height,
  rings: [{ layer: 'OUTLINE', points: rectangle([0, 0], length, height) }],
  holes: holes.map((hole) => placed(hole, [hole.x, hole.y])),
});

/** A panel with its boards: each board's edge is a line to cut along, outside of it. */
export function panelSheet({ id, spots, width, height }: PanelDesign, boards: readonly Board[]): Sheet {
  const laid = spots.map((spot) => ({ spot, board: boards.find((one) => one.id === spot.id)! }));
  return {
    id,
    title: `panel of ${laid.map(({ board }) => board.id).join(', ')}`,
    width,
    height,
    rings: [
      { layer: 'OUTLINE', points: rectangle([0, 0], width, height) },
      ...laid.map(({ spot, board }) => ({
        layer: 'CUT' as const,
        points: rectangle(
          [spot.x, spot.y],
          spot.turned ? board.height : board.length,
          spot.turned ? board.length : board.height,
        ),
      })),
    ],
    // A quarter turn counter-clockwise, back into the rectangle: (x, y) becomes (height − y, x).
    holes: laid.flatMap(({ spot, board }) =>
      board.holes.map((hole) =>
        placed(
          hole,
          spot.turned ? [spot.x + board.height - hole.y, spot.y + hole.x] : [spot.x + hole.x, spot.y + hole.y],
        ),
      ),
    ),
  };
}

/** Every board, then every panel. */
export const sheetsOf = ({ boards, panels }: BoardsOfKit): readonly Sheet[] => [
  ...boards.map(boardSheet),
  ...panels.designs.map((design) => panelSheet(design, boards)),
];

/** Boards: carriers that are lowered with their receivers, supply boards behind the mounts. */
import { side } from '../layout/fits.js';
import type { RailRun } from '../layout/runs.js';
import { drawBoard } from '../parts/board.js';
import { frame, multiply } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { type Bench, move } from './bench.js';
import { railName } from './mounts.js';
import type { BoardsOfKit } from './types.js';

/** FR-4 with copper and solder [g/cm³]. Source: common practice, 1.85 for the laminate. */
const DENSITY = 1.9;
/** A leg's way into its socket, and free before it [mm]. */
const PLUG_TRAVEL = 8;

export interface PlacedBoard {
  readonly name: string;
  /** Beams it serves: `row-3`. */
  readonly beams: readonly string[];
}

/** A run's boards from its left end on: which, where, called what. */
function ownBoards({ layout: { boards } }: Bench, { side: at }: RailRun) {
  const own = boards?.places.filter((place) => place.side === at) ?? [];
  return own.map((place, i) => ({
    ...place,
    name: `${at}-board${own.length > 1 ? `-${i + 1}` : ''}`,
    beams: place.beams.map(({ line, index }) => `${line}-${index}`),
  }));
}

/** Name of the board that serves a beam of a run; none without. */
export const boardAt = (b: Bench, run: RailRun, beam: string): readonly string[] =>
  ownBoards(b, run).flatMap(({ name, beams }) => (beams.includes(beam) ? [name] : []));

/** @returns the boards of a run, none where the preset asks for none */
export function placeBoards(b: Bench, run: RailRun): PlacedBoard[] {
  const { k, layout } = b;
  const { board: plane } = layout.frame;
  if (!plane) return [];
  return ownBoards(b, run).map(({ board: id, from, name, beams }) => {
    const board = layout.boards!.boards.find((one) => one.id === id)!;
    // Board's x along the rail, its y up, its front toward the field.
    const inRail: Matrix = frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [from, plane.front[run.kind], plane.low]);
    const rail = railName(run, from + board.beams[0]!);
    b.place({
      name,
      part: b.bought(
        {
          id,
          title: board.title,
          material: 'FR-4',
          densityGcm3: DENSITY,
          order: { standard: '', size: `${board.length} × ${board.height} × ${board.thickness}`, lengthMm: null },
        },
        () => drawBoard(k, board, layout.spec.receivers.part.legWidth.value),
      ),
      matrix: multiply(run.matrix, inRail),
      touches: [rail],
    });
    b.fit({
      a: rail,
      b: name,
      what: "the board's edge in its guides",
      fitClass: 'slide',
      drawn: side(layout.spec, 'slide'),
    });
    return { name, beams };
  });
}

/** What outputs and checks need to know of a kit's boards; undefined without. */
export function boardsOf(b: Bench): BoardsOfKit | undefined {
  const { boards: laid, runs } = b.layout;
  if (!laid) return undefined;
  const places = runs.flatMap((run) =>
    ownBoards(b, run).map(({ board, name, beams }) => ({ board, placement: name, beams })),
  );
  return { boards: laid.boards, panels: laid.panels, places, legLength: laid.legLength };
}

/** Receivers go into a carrier from its front, then all of it is lowered. */
export const plugMoves = (carrier: PlacedBoard, receivers: readonly string[]) =>
  receivers.map((receiver) => move(receiver, [0, 0, -1], PLUG_TRAVEL, { inFrameOf: carrier.name }));

/** Supply boards are lowered behind the mounts that stand already. */
export function supplySteps(b: Bench, boards: readonly PlacedBoard[]): void {
  if (boards.length === 0) return;
  const { section } = b.layout.frame;
  b.step(
    'Solder a resistor for each emitter to the supply boards, lower each board into its guides behind the mounts, lead each pair of wires through its two relief holes and solder it',
    {
      joins: [],
      hardware: boards.map(({ name }) => name),
      moves: boards.map(({ name }) => move(name, [0, 0, -1], section.height + 5)),
    },
  );
}

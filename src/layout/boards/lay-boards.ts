/** Boards along the rails: where each stands, which are alike, what holds them, which panels they are cut from. */
import { type Mistake, PresetError } from '../../errors.js';
import type { Spec } from '../../spec/spec.js';
import { downTenth, side, upTenth } from '../fits.js';
import type { FrameLayout } from '../frame.js';
import type { RailRun, RailSegment } from '../runs.js';
import type { SocketLayout } from '../socket.js';
import { carrierHoles, placeHalf, supplyHoles } from './holes.js';
import { solvePanels } from './panels.js';
import { longestOn, pieces } from './pieces.js';
import { CUT_AIR, END_MOST, legDrill, POST_AIR, ROW_WEB } from './sizes.js';
import type { Board, BoardPlace, BoardsLayout } from './types.js';

export interface BoardsOptions {
  readonly runs: readonly RailRun[];
  readonly frame: FrameLayout;
  readonly socket: SocketLayout;
}

/** A board before it is known which are alike. */
interface Piece {
  readonly run: RailRun;
  readonly from: number;
  readonly length: number;
  readonly beams: RailRun['beams'];
}

/**
 * @returns undefined where the preset asks for none
 * @throws {PresetError} when legs stand too close, or the panel's limit is too small
 */
export function layBoards(spec: Spec, { runs, frame, socket }: BoardsOptions): BoardsLayout | undefined {
  const { board: plane } = frame;
  if (!plane || !spec.boards) return undefined;
  const served = runs.filter(({ kind }) => (kind === 'emitter' ? spec.boards?.emitters : spec.boards?.receivers));
  const height = tidy(plane.top - plane.low);
  const need = Math.max(...served.map(({ kind }) => placeHalf(spec, kind, socket.slide)));
  const room = roomBeside(served, frame.tab.reach);
  const longest = longestOn(spec.boards.panel, height);
  const mistakes = [...legsTooClose(spec), ...panelTooSmall(spec, { longest, need, height })];
  if (mistakes.length > 0) throw new PresetError(spec.name, mistakes);

  const end = downTenth(Math.min(room, END_MOST, longest / 2));
  const all = served.flatMap((run) => run.segments.flatMap((segment) => piecesOf(run, segment, { end, longest })));
  // Alike where kind and beams are; a board that is chained somewhere has its second pads everywhere.
  const key = ({ run, from, beams }: Piece) => [run.kind, ...beams.map(({ at }) => (at - from).toFixed(3))].join(' ');
  const chained = new Set(all.filter(({ run }) => all.filter((p) => p.run === run).length > 1).map(key));
  const kinds = [...new Map(all.map((piece) => [key(piece), piece])).entries()];
  const counts = { emitter: 0, receiver: 0 };
  const ids = new Map<string, string>();
  const boards = kinds.map(([k, piece]): Board => {
    const { kind } = piece.run;
    const id = `${kind === 'receiver' ? 'carrier' : 'supply-board'}-${++counts[kind]}`;
    ids.set(k, id);
    const beams = piece.beams.map(({ at }) => tidy(at - piece.from));
    const options = { plane, length: piece.length, beams, room: end, slide: socket.slide, chained: chained.has(k) };
    const { holes, strips } =
      kind === 'receiver' ? carrierHoles(spec, options) : { holes: supplyHoles(spec, options), strips: [] };
    const title = `${kind === 'receiver' ? 'receiver carrier' : 'emitter supply board'}, ${beams.length} place${beams.length === 1 ? '' : 's'}`;
    return { id, title, kind, length: piece.length, height, thickness: plane.thickness, beams, holes, strips };
  });
  const places = all.map((piece): BoardPlace => {
    const beams = piece.beams.map(({ line, index }) => ({ line, index }));
    return { board: ids.get(key(piece))!, side: piece.run.side, from: piece.from, beams };
  });
  const wanted = boards.map(({ id, length }) => ({
    id,
    length,
    height,
    quantity: places.filter(({ board }) => board === id).length,
  }));
  return {
    boards,
    places,
    panels: solvePanels(wanted, spec.boards.panel)!,
    legLength: spec.boards.receivers ? legLength(spec, socket) : 0,
  };
}

function piecesOf(
  run: RailRun,
  segment: RailSegment,
  { end, longest }: { readonly end: number; readonly longest: number },
): Piece[] {
  const beams = run.beams.filter(({ at }) => at > segment.from && at < segment.from + segment.length);
  return pieces({ beams: beams.map(({ at }) => at), end, longest }).map(([first, last]) => {
    const [a, b] = [beams[first]!.at, beams[last]!.at];
    return { run, from: tidy(a - end), length: tidy(b - a + 2 * end), beams: beams.slice(first, last + 1) };
  });
}

/** Half the least distance between beams, and from the corner post's top, past which boards are lowered, to the next beam. */
function roomBeside(runs: readonly RailRun[], reach: number): number {
  const gaps = runs.flatMap(({ beams }) => beams.slice(1).map(({ at }, i) => at - beams[i]!.at));
  const ends = runs.flatMap(({ beams, length }) => [beams[0]!.at, length - beams.at(-1)!.at]);
  return Math.min(...gaps.map((gap) => gap / 2 - CUT_AIR), ...ends.map((at) => at - reach - POST_AIR));
}

/** Holes for legs that stand closer run into each other. */
function legsTooClose({ boards, receivers }: Spec): Mistake[] {
  const pitch = receivers.part.legPitch.value;
  const least = legDrill(pitch) + ROW_WEB;
  if (!boards?.receivers || pitch >= least - 1e-9) return [];
  return [
    {
      code: 'preset/legs-too-close',
      path: 'receivers.part.leg_pitch',
      message: `legs ${pitch} mm apart leave no web of ${ROW_WEB} mm between holes of ${legDrill(pitch)} mm in a carrier`,
      hint: `at least ${least} mm, or boards without carriers: receivers: false`,
    },
  ];
}

function panelTooSmall(
  { boards }: Spec,
  { longest, need, height }: { readonly longest: number; readonly need: number; readonly height: number },
): Mistake[] {
  if (longest >= 2 * need - 1e-9) return [];
  const { x, y } = boards!.panel;
  return [
    {
      code: 'preset/panel-too-small',
      path: 'boards.panel',
      message: `panels of ${x} × ${y} mm don't take a board of one place, ${upTenth(2 * need)} mm long and ${upTenth(height)} mm high`,
      hint: `at least ${upTenth(2 * need)} × ${upTenth(height)} mm`,
    },
  ];
}

/** Up from the body, back over the stop and into the socket. */
function legLength(spec: Spec, { legs, axis, tube }: SocketLayout): number {
  const { sensorFromTop, height, depth } = spec.receivers.part;
  const up = legs.top - (axis - sensorFromTop.value + height.value);
  const back = -legs.out + tube.end - side(spec, 'slide') - depth.value / 2;
  return upTenth(up + back);
}

const tidy = (value: number): number => Math.round(value * 1000) / 1000;

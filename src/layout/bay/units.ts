/** How many trays, and how large: the shallowest row of least area that takes everything. */
import type { BayModule } from '../../spec/bay.js';
import { upTenth } from '../fits.js';
import { footprints } from './footprint.js';
import { type Floor, type Packed, pack } from './pack.js';
import { jointPlaces } from './sizes.js';
import type { Rect } from './types.js';

export interface TrayRoom {
  /** Inside of the largest tray, along the row and outward. */
  readonly most: readonly [number, number];
  readonly corner: readonly [number, number];
  /** Taken in the first tray of boards, or of batteries where there are none, at its inner wall. */
  readonly tie: readonly [number, number];
  /** Least length inside: room for its screws. */
  readonly least: number;
  /** Between the insides of neighbouring trays. */
  readonly between: number;
  /** Columns at the left wall of every tray but the first, where trays are screwed to each other; null on a rail. */
  readonly joint: { readonly wall: number; readonly depth: number; readonly breadth: number } | null;
}

export interface Tray {
  readonly kind: 'boards' | 'battery';
  readonly packed: Packed;
  readonly length: number;
}

export interface Row {
  readonly depth: number;
  readonly trays: readonly Tray[];
  /** Inside lengths and what lies between. */
  readonly length: number;
}

/** Between depths tried: a finer one gains little and takes as much longer. */
const STEP = 2;
const PASSAGE = 16;

/** Depths tried beyond the best. */
const PATIENCE = 12;

/** Rows whose area is within this of the least are as good: the shallowest of them is taken. */
const AS_GOOD = 1.1;

/** @returns of the rows that are taken the shallowest of near the least area; else the shortest there is; null: a module no tray takes */
export function layTrays(
  modules: readonly BayModule[],
  { room, takes }: { readonly room: TrayRoom; readonly takes: (row: Row) => boolean },
): Row | null {
  const boards = modules.filter(({ part }) => !part.cell);
  const cells = modules.filter(({ part }) => part.cell);
  const rows: Row[] = [];
  const taken: { readonly row: Row; readonly cost: number }[] = [];
  let best: { readonly cost: number; readonly at: number } | null = null;
  for (const [i, depth] of depths(modules, room).entries()) {
    // None of the deeper rows was better for long: the rest is not tried.
    if (best !== null && i - best.at > PATIENCE) break;
    const batteries = fill('battery', cells, { depth, room, behind: false, tied: boards.length === 0 });
    const trays = [...batteries, ...fill('boards', boards, { depth, room, behind: batteries.length > 0, tied: true })];
    const count = trays.reduce((sum, { packed }) => sum + packed.spots.length, 0);
    if (count < modules.length || trays.some((tray) => tray.length > room.most[0] + 1e-6)) continue;
    const length = trays.reduce((sum, tray) => sum + tray.length, 0) + (trays.length - 1) * room.between;
    const row = { depth, trays, length };
    rows.push(row);
    if (!takes(row)) continue;
    const cost = costOf(row);
    taken.push({ row, cost });
    if (best === null || cost < best.cost) best = { cost, at: i };
  }
  const shortest = (list: readonly Row[]) =>
    list.reduce<Row | null>((one, row) => (one === null || row.length < one.length - 1e-6 ? row : one), null);
  if (best === null) return shortest(rows);
  const most = AS_GOOD * best.cost;
  return taken.find(({ cost }) => cost <= most)!.row;
}

/** Walls cost as well: a few millimetres around each tray. */
const costOf = ({ depth, length, trays }: Row): number => (depth + 6) * (length + 6 * trays.length);

/** Depths inside worth trying: from the least that any module needs up, and those that pinned modules ask for. */
function depths(modules: readonly BayModule[], { most, corner }: TrayRoom): readonly number[] {
  const forms = modules.map((module) => ({ module, all: footprints(module) }));
  const need = forms.map(({ all }) =>
    Math.min(...all.map(({ size, margins }) => size[1] + margins.inner + margins.outer)),
  );
  // Between the bosses at both walls wires pass from tray to tray.
  const least = upTenth(Math.max(2 * corner[1] + PASSAGE, ...need));
  const pinned = forms.flatMap(({ module, all }) =>
    module.at ? all.map(({ size, margins }) => upTenth(module.at![1] + size[1] + margins.outer)) : [],
  );
  const steps: number[] = [];
  for (let depth = least; depth <= most[1] + 1e-9; depth += STEP) steps.push(upTenth(depth));
  return [...new Set([...steps, ...pinned.filter((depth) => depth >= least && depth <= most[1])])].sort(
    (a, b) => a - b,
  );
}

function fill(
  kind: Tray['kind'],
  modules: readonly BayModule[],
  {
    depth,
    room,
    behind,
    tied,
  }: {
    readonly depth: number;
    readonly room: TrayRoom;
    /** Of another tray. */
    readonly behind: boolean;
    /** Wires come into its first tray. */
    readonly tied: boolean;
  },
): Tray[] {
  const trays: Tray[] = [];
  let rest = modules;
  while (rest.length > 0) {
    const first = tied && trays.length === 0;
    const floor: Floor = {
      room: [room.most[0], depth],
      corner: room.corner,
      // The rib for the wires' tie stands along the inner wall, beside the first boss.
      taken: [
        ...(first ? [tieRect(room)] : []),
        ...(room.joint !== null && (behind || trays.length > 0) ? joints(room.joint, depth) : []),
      ],
    };
    const tried = pack(rest, floor);
    const best = tried.reduce((a, b) =>
      b.spots.length > a.spots.length || (b.spots.length === a.spots.length && b.length < a.length) ? b : a,
    );
    if (best.spots.length === 0) return trays;
    trays.push({ kind, packed: best, length: upTenth(Math.max(room.least, best.length)) });
    rest = best.left;
  }
  return trays;
}

const tieRect = ({ corner, tie }: TrayRoom): Rect => [corner[0], 0, corner[0] + tie[0], tie[1]];

const joints = ({ wall, depth, breadth }: NonNullable<TrayRoom['joint']>, inside: number): Rect[] =>
  jointPlaces([0, inside + 2 * wall], wall).map((at) => [0, at - wall - breadth / 2, depth, at - wall + breadth / 2]);

/** The deck: tiles, the seams between them, ribs below. Assembly coordinates, mm. */

import { threads } from '../components/index.js';
import type { Vec2 } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import { formedSunk, upTenth } from './fits.js';
import type { FrameLayout } from './frame.js';
import type { Grid } from './grid.js';
import { split } from './split.js';

export interface DeckTile {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  /** Which sides meet another tile: left, right, near, far. */
  readonly seams: { readonly left: boolean; readonly right: boolean; readonly near: boolean; readonly far: boolean };
}

/** A plate under a seam, with two rows of screws. */
export interface DeckSplice {
  readonly along: 'x' | 'y';
  /** Line of the seam across `along`, and the plate's extent along it. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly screws: readonly number[];
}

export interface DeckLayout {
  readonly tiles: readonly DeckTile[];
  readonly splices: readonly DeckSplice[];
  /** Ribs: depth below the tile, thickness; strips beside a seam. */
  readonly ribDepth: number;
  readonly rib: number;
  readonly strip: number;
  /** Ribs keep this far from the field's edges: sills and brackets are there. */
  readonly inset: number;
  readonly plate: { readonly thickness: number; readonly width: number };
  readonly screwLength: number;
  readonly engaged: number;
  /** Of the pilots in the strips, from below. */
  readonly pilotDepth: number;
}

/** Between deck and field walls, all round, so that it lifts out. */
export const DECK_GAP = 0.3;
const SEAM_GAP = 0.2;
const RIB_DEPTH = 5;
const RIB = 2.4;
const STRIP_LEAST = 9;
const PLATE = 4;
const SCREW_EVERY = 60;
/** Past a screw's tip; and what is left above it: letters .6 deep over two layers and more. */
const TIP_ROOM = 0.5;
const OVER_PILOT = 1.4;

export function layDeck(
  spec: Spec,
  { grid, frame, bed }: { readonly grid: Grid; readonly frame: FrameLayout; readonly bed: readonly [number, number] },
): DeckLayout | null {
  const inset = frame.section.sill + 1.5;
  const head = threads[spec.screws.fix];
  const strip = Math.max(STRIP_LEAST, upTenth(head.diameter.value + 2 * head.sunkHeight.value + 1.2));
  const cut = (size: number, edges: readonly number[], longest: number) =>
    split({ length: size, at: edges.slice(1, -1), longest, shortest: 2 * strip + inset + 2 });
  const [long, short] = [Math.max(...bed), Math.min(...bed)];
  const ways = [
    [long, short],
    [short, long],
  ].map(([bx, by]) => ({ x: cut(grid.width, grid.columnEdges, bx!), y: cut(grid.depth, grid.rowEdges, by!) }));
  const pieces = ({ x, y }: (typeof ways)[number]) => (x && y ? (x.length + 1) * (y.length + 1) : Infinity);
  const best = pieces(ways[0]!) <= pieces(ways[1]!) ? ways[0]! : ways[1]!;
  if (!best.x || !best.y) return null;

  const xs = bounds(grid.width, best.x);
  const ys = bounds(grid.depth, best.y);
  const tiles = ys.flatMap((y, j) =>
    xs.map(
      (x, i): DeckTile => ({
        x,
        y,
        seams: { left: i > 0, right: i < xs.length - 1, near: j > 0, far: j < ys.length - 1 },
      }),
    ),
  );
  const screwLength = formedSunk(spec, PLATE);
  const pilotDepth = screwLength - PLATE + TIP_ROOM;
  const splices = [
    ...best.x.flatMap((at) => ys.map((span) => plate('y', { at, span, inset, strip, size: grid.depth }))),
    ...best.y.flatMap((at) => xs.map((span) => plate('x', { at, span, inset, strip, size: grid.width }))),
  ];
  return {
    tiles,
    splices,
    ribDepth:
      splices.length > 0 ? upTenth(Math.max(RIB_DEPTH, pilotDepth + OVER_PILOT - frame.section.deck)) : RIB_DEPTH,
    rib: RIB,
    strip,
    inset,
    plate: { thickness: PLATE, width: 2 * strip + SEAM_GAP - 0.6 },
    screwLength,
    engaged: screwLength - PLATE,
    pilotDepth,
  };
}

/** @returns which of the deck's tiles lies under a point of the field, inside its edges; −1 for none */
export const tileAt = ({ tiles }: Pick<DeckLayout, 'tiles'>, [x, y]: Vec2): number =>
  tiles.findIndex((tile) => x > tile.x[0] && x < tile.x[1] && y > tile.y[0] && y < tile.y[1]);

function bounds(size: number, seams: readonly number[]): (readonly [number, number])[] {
  const ends = [0, ...seams, size];
  return ends.slice(1).map((end, i) => {
    const from = ends[i]!;
    return [from === 0 ? DECK_GAP : from + SEAM_GAP / 2, end === size ? size - DECK_GAP : end - SEAM_GAP / 2] as const;
  });
}

interface PlateOptions {
  readonly at: number;
  readonly span: readonly [number, number];
  readonly inset: number;
  readonly strip: number;
  /** Of the field, along the plate. */
  readonly size: number;
}

/** A plate spans one tile's side, clear of the sills and of the plates that cross it. */
function plate(along: 'x' | 'y', { at, span, inset, strip, size }: PlateOptions): DeckSplice {
  const from = span[0] + (span[0] <= DECK_GAP ? inset : strip) + 1;
  const to = span[1] - (span[1] >= size - DECK_GAP ? inset : strip) - 1;
  const count = Math.max(2, Math.ceil((to - from - 10) / SCREW_EVERY) + 1);
  const screws = Array.from({ length: count }, (_, i) => from + 5 + (i * (to - from - 10)) / (count - 1));
  return { along, at, from, to, screws };
}

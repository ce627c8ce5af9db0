/** What a module takes of a tray's floor: its outline, turned, and the room it needs on each side. */
import type { Edge, Module } from '../../components/module.js';
import type { Vec2 } from '../../solid/mesh.js';
import { type BayModule, CLIP_OVER, clipEdges, pastCorners, TO_WALL, type Turn } from '../../spec/bay.js';
import type { Wall } from './types.js';

export const TURNS: readonly Turn[] = [0, 90, 180, 270];
/** Free on each side of a board, so that fingers get at it. Source: common practice. */
const AROUND = 1;
/** Play of a board between the bars that hold it, on a side. */
export const BOARD_PLAY = 0.25;
/** Bars end `press` below the board's top, so that the clip presses. */
export const CLIP = { depth: 7.2, cheek: 1.6, ledge: 1.5, plate: 2, press: 0.1, ...CLIP_OVER } as const;
/** What holds a board reaches so far into the wall or the bar beside it: no slit is left that prints shut. */
const INTO = 0.1;
/** Ribs around a battery, and the play between: cells swell. Source: common practice. */
export const BATTERY = { rib: 1.6, play: 0.7, height: 6 } as const;

/** Room on each side of the turned outline. */
export type Margins = Readonly<Record<Wall, number>>;

export interface Footprint {
  readonly turn: Turn;
  /** Of the outline. */
  readonly size: Vec2;
  readonly margins: Margins;
  /** Sides that look at a wall from which something is plugged. */
  readonly faces: readonly Wall[];
}

/** Edges counter-clockwise from the right one. */
const EDGES: readonly Edge[] = ['right', 'back', 'left', 'front'];
const WALLS: readonly Wall[] = ['right', 'outer', 'left', 'inner'];

/** @returns the wall that a board's edge looks at once it is turned to the left */
export const wallOf = (edge: Edge, turn: Turn): Wall => WALLS[(EDGES.indexOf(edge) + turn / 90) % 4]!;

/** @returns where a board's point lies from the turned outline's corner */
export function turned({ length, width }: Module, [x, y]: Vec2, turn: Turn): Vec2 {
  const [l, w] = [length.value, width.value];
  if (turn === 0) return [x, y];
  if (turn === 90) return [w - y, x];
  if (turn === 180) return [l - x, w - y];
  return [y, l - x];
}

/** @returns room at each edge of the board as it lies unturned [mm] */
function edgeRoom(part: Module): Readonly<Record<Edge, number>> {
  const plain = part.cell ? BATTERY.rib + BATTERY.play - INTO : AROUND;
  const room = { left: plain, right: plain, front: plain, back: plain };
  const clips = part.cell ? null : clipEdges(part);
  for (const edge of EDGES) {
    if (clips !== null) room[edge] = (clips.includes(edge) ? CLIP.depth : BOARD_PLAY + CLIP.cheek) - INTO;
    for (const { side, access, room: needed } of part.connectors.value)
      if (side === edge) room[edge] = access === 'outside' ? TO_WALL : Math.max(room[edge], needed);
  }
  // A plug broader than its edge reaches past the corners.
  const plugged = part.connectors.value.filter(({ access }) => access === 'outside').map(({ side }) => side);
  for (const connector of part.connectors.value)
    for (const [beside, past] of pastCorners(part, connector))
      if (!plugged.includes(beside)) room[beside] = Math.max(room[beside], past);
  return room;
}

/** @returns one for each way in which it may lie: as pinned, or every turn */
export function footprints({ part, turn: pinned }: BayModule): readonly Footprint[] {
  const room = edgeRoom(part);
  const outside = part.connectors.value.filter(({ access }) => access === 'outside');
  return TURNS.filter((turn) => pinned === undefined || turn === pinned).map((turn) => {
    const size: Vec2 = turn % 180 === 0 ? [part.length.value, part.width.value] : [part.width.value, part.length.value];
    const margins = Object.fromEntries(EDGES.map((edge) => [wallOf(edge, turn), room[edge]])) as Record<Wall, number>;
    return { turn, size, margins, faces: outside.map(({ side }) => wallOf(side, turn)) };
  });
}

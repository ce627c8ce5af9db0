/** Boards in numbers. Board coordinates [mm]: x along the board, y up from its lower edge, seen from the side that bears sockets. */
import type { RailKind, Side } from '../sides.js';
import type { PanelSet } from './panels.js';

export type HoleUse = 'leg' | 'pull-up' | 'pad' | 'mounting' | 'wire' | 'relief' | 'resistor';

export interface BoardHole {
  readonly x: number;
  readonly y: number;
  /** As drilled, through the copper of its walls [mm]. */
  readonly d: number;
  readonly plated: boolean;
  readonly use: HoleUse;
  /** Net, or what goes in. */
  readonly label: string;
  /** Web that must be left around it: to the board's edge, and to holes that are not in a row with it. */
  readonly ring: number;
}

/** A row of sockets on the board's front. */
export interface SocketStrip {
  readonly x: number;
  readonly y: number;
  readonly holes: number;
  readonly pitch: number;
  readonly drill: number;
}

export interface Board {
  readonly id: string;
  readonly title: string;
  readonly kind: RailKind;
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
  /** Places of its beams along it. */
  readonly beams: readonly number[];
  readonly holes: readonly BoardHole[];
  readonly strips: readonly SocketStrip[];
}

/** A board where it stands. */
export interface BoardPlace {
  readonly board: string;
  readonly side: Side;
  /** Its left end, and its beams, along the rail's run. */
  readonly from: number;
  readonly beams: readonly { readonly line: 'column' | 'row'; readonly index: number }[];
}

/** A post of the rail that holds boards' lower edges: its slot along the piece of rail, and how thick the walls are that close it; 0: open. */
export interface Guide {
  readonly from: number;
  readonly to: number;
  readonly walls: readonly [first: number, last: number];
}

export interface BoardsLayout {
  readonly boards: readonly Board[];
  readonly places: readonly BoardPlace[];
  readonly panels: PanelSet;
  /** From a receiver's body along its leg to the socket's ground: what the legs must be long at least; 0 without carriers. */
  readonly legLength: number;
}

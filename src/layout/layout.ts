/** Everything that `parts/` draws and `kit/` places, in numbers. */
import type { Solved, Spec } from '../spec/spec.js';
import type { BayLayout } from './bay/types.js';
import type { BoardsLayout } from './boards/types.js';
import type { CableLayout } from './cable.js';
import type { DeckLayout } from './deck.js';
import type { DeckHold } from './deck-screws.js';
import type { FrameLayout } from './frame.js';
import type { Grid } from './grid.js';
import type { HoodLayout } from './hood.js';
import type { AimInputs } from './light/aim.js';
import type { LineWay } from './light/lines.js';
import type { MountLayout } from './mount.js';
import type { RailRun } from './runs.js';
import type { SocketLayout } from './socket.js';
import type { LeafDemands } from './types.js';

export interface Layout {
  readonly spec: Spec;
  readonly grid: Grid;
  readonly demands: LeafDemands;
  readonly mount: MountLayout;
  readonly socket: SocketLayout;
  readonly frame: FrameLayout;
  readonly runs: readonly RailRun[];
  readonly deck: DeckLayout;
  /** How far each line's light goes, columns first, and what decides its aim. */
  readonly ways: readonly [LineWay, LineWay];
  readonly aim: AimInputs;
  /** Radius of the emitters' windows in the field wall. */
  readonly window: number;
  readonly cable: CableLayout;
  /** Null: none is asked for. */
  readonly bay: BayLayout | null;
  readonly deckHold: DeckHold;
  readonly hood: HoodLayout;
  /** Left out: no boards are asked for. */
  readonly boards?: BoardsLayout;
  /** Free diameter that every beam needs, emitter to aperture, and the beam's own at the receiver, by axis. */
  readonly corridor: number;
  readonly solved: readonly Solved[];
}

/** A layout whose kit has a bay. */
export type LayoutWithBay = Layout & { readonly bay: BayLayout };

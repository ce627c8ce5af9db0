/**
 * What holds the deck down: a countersunk screw near each of its corners, into the sill of the rail below. Undone, the deck
 * lifts out.
 */

import { threads } from '../components/index.js';
import type { Vec2 } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import { DECK_GAP, type DeckLayout } from './deck.js';
import { formedSunk, upTenth } from './fits.js';
import { type FrameLayout, sunkRim } from './frame.js';
import type { Grid } from './grid.js';
import type { RailRun, RailSegment } from './runs.js';
import type { Side } from './sides.js';

export interface DeckScrew {
  readonly side: Side;
  /** Along the rail, from the run's start. */
  readonly at: number;
}

export interface DeckHold {
  /** None where no rail has room between its brackets: the deck then lies loose. */
  readonly screws: readonly DeckScrew[];
  /** Of every one, from the field wall into the field. */
  readonly fromWall: number;
  readonly length: number;
  readonly engaged: number;
  readonly pilotDepth: number;
}

/** Between a screw's head and what it must not cut: the deck's edge, a seam, a bracket. */
const APART = 0.5;
const TIP_ROOM = 1;
/** Deck left under a head's cone: two layers. */
const UNDER_HEAD = 0.4;
/** Plastic left around a pilot in the sill. */
const SILL_WALL = 1.2;

interface HoldOptions {
  readonly grid: Grid;
  readonly frame: FrameLayout;
  readonly runs: readonly RailRun[];
  readonly deck: DeckLayout;
}

/** @returns two screws a rail on opposite rails, the longer pair of those that have room */
export function holdDeck(spec: Spec, { grid, frame, runs, deck }: HoldOptions): DeckHold {
  const thread = threads[spec.screws.fix];
  const { section } = frame;
  const rim = sunkRim(spec);
  const fromWall = Math.max(section.sill / 2, upTenth(DECK_GAP + rim + APART));
  const length = formedSunk(spec, section.deck);
  const engaged = length - section.deck;
  const pilotDepth = engaged + TIP_ROOM;
  const holds =
    length > 0 &&
    section.deck - thread.sunkHeight.value - 0.1 >= UNDER_HEAD - 1e-9 &&
    pilotDepth + SILL_WALL <= section.sillTop &&
    fromWall + thread.pilot.value / 2 + SILL_WALL <= section.sill + 1e-9;
  const pairs: readonly (readonly [Side, Side])[] =
    grid.width >= grid.depth
      ? [
          ['far', 'near'],
          ['left', 'right'],
        ]
      : [
          ['left', 'right'],
          ['far', 'near'],
        ];
  const pair = holds
    ? pairs.map((sides) => sides.map((at) => onRail(at))).find((rails) => rails.every((screws) => screws.length > 0))
    : undefined;
  return { screws: pair?.flat() ?? [], fromWall, length, engaged, pilotDepth };

  /** The places nearest its two corners that clear brackets, bars and the deck's seams; one when they would meet. */
  function onRail(at: Side): DeckScrew[] {
    const run = runs.find((one) => one.side === at)!;
    const backward = at === 'near' || at === 'right';
    const alongX = at === 'far' || at === 'near';
    const cut = new Set(deck.tiles.flatMap((tile) => (alongX ? tile.x : tile.y)));
    const deckSeams = [...cut]
      .filter((edge) => edge > 1 && edge < run.length - 1)
      .map((edge) => (backward ? run.length - edge : edge));
    const taken = [
      ...[0, run.length, ...run.seams].map((joint) => [joint, frame.joint.leg] as const),
      // Beside a seam's strip, so that its screws and plates stay clear.
      ...deckSeams.map((seam) => [seam, deck.strip] as const),
    ].map(([middle, half]): [number, number] => [middle - half - rim - APART, middle + half + rim + APART]);
    const first = nextFree(0, taken);
    const last = -nextFree(
      -run.length,
      taken.map(([from, to]): [number, number] => [-to, -from]),
    );
    if (first > last) return [];
    const places = last - first < 4 * rim ? [first] : [first, last];
    return places.map((place) => ({ side: at, at: Math.round(place * 100) / 100 }));
  }
}

/** Those of the screws that end in a segment, from its start. */
export const deckScrewsIn = ({ screws }: DeckHold, run: RailRun, { from, length }: RailSegment): number[] =>
  screws.filter(({ side, at }) => side === run.side && at > from && at < from + length).map(({ at }) => at - from);

/** A screw's place in the field, in assembly coordinates. */
export function deckScrewAt({ fromWall }: DeckHold, { side, at }: DeckScrew, grid: Grid): Vec2 {
  if (side === 'far') return [at, grid.depth - fromWall];
  if (side === 'near') return [grid.width - at, fromWall];
  return side === 'left' ? [fromWall, at] : [grid.width - fromWall, grid.depth - at];
}

/** The least place from `start` on that no interval covers. */
function nextFree(start: number, taken: readonly (readonly [number, number])[]): number {
  let place = start;
  for (const [from, to] of [...taken].sort((a, b) => a[0] - b[0])) if (place > from && place < to) place = to;
  return place;
}

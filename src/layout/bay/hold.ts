/** What holds trays: screws into the rail, or from each tray into the one before it; and the notches that wires pass. mm. */
import type { Mistake } from '../../errors.js';
import type { Vec2 } from '../../solid/mesh.js';
import type { Spec } from '../../spec/spec.js';
import { upTenth } from '../fits.js';
import type { FrameLayout } from '../frame.js';
import type { RailRun, RailSegment } from '../runs.js';
import { holders } from './holders.js';
import { crosses } from './pack.js';
import type { LooseUnit } from './place.js';
import { fromEnd, fromTie, jointPlaces, KEY, keyHalf, NOTCH, screwHeights, TIE_ROOM } from './sizes.js';
import type { BayLayout, Rect, Unit, WallHole } from './types.js';

export interface Held {
  readonly units: readonly Omit<Unit, 'bosses'>[];
  /** Along the rail. */
  readonly bosses: readonly number[];
  readonly notch: readonly [number, number] | null;
  readonly mistakes: readonly Mistake[];
}

const STEP = 0.5;
/** Beside a screw's boss in the rail. */
const BESIDE = 1;
const NOTCH_LEAST = 8;
const PASS = 12;

interface RailOptions {
  readonly run: RailRun;
  /** Of the row along the rail. */
  readonly start: number;
  readonly frame: FrameLayout;
  readonly wires: number;
  /** Of the walls. */
  readonly top: number;
  readonly spec: Spec;
}

export function holdOnRail(units: readonly LooseUnit[], { run, start, frame, wires, top, spec }: RailOptions): Held {
  const { half, low } = keyRoom(spec, top);
  const end = fromEnd(spec, frame);
  const { boss, joint, section, tab } = frame;
  const clear = boss.width + BESIDE;
  // Its screws and its notch go into the rail, not into the corner posts' tabs.
  const taken: [number, number][] = [
    [-section.width, tab.reach + 0.5],
    [run.length - tab.reach - 0.5, run.length + section.width],
    ...run.seams.map((at): [number, number] => [at - joint.leg, at + joint.leg]),
    ...run.segments.flatMap(({ from, bosses }) =>
      bosses.map((at): [number, number] => [from + at - boss.width / 2, from + at + boss.width / 2]),
    ),
  ];
  const isFree = (at: number) => taken.every(([a, b]) => at + clear / 2 < a || at - clear / 2 > b);
  const mistakes: Mistake[] = [];
  const first = boardsFirst(units);
  const places = units.map((unit, i) => {
    const tied = i === first ? fromTie(spec, frame) : 0;
    const from = start + unit.from + Math.max(end, tied);
    const to = start + unit.from + unit.size[0] - end;
    if (from > to + 1e-9) return [];
    const turns = (at: number) => {
      const x = at - start - unit.from;
      return isFree(at) && !isHeldIn(unit, [x - half, section.wall, x + half, section.wall + KEY.reach], low);
    };
    const [up, down] = [search(from, to, turns), search(to, from, turns)];
    if (up === null || down === null) return [];
    return down - up >= 2 * clear ? [up, down] : [up];
  });
  places.forEach((at, i) => {
    if (at.length === 0)
      mistakes.push({
        code: 'preset/bay-too-small',
        path: 'bay.modules',
        message: `tray ${i + 1} of the bay finds no place for its screws along the ${run.side} rail: each takes ${upTenth(clear)} mm of wall that seams, the cover's screws and what holds boards leave free`,
        hint: 'place: apart, or the other rail of emitters',
      });
  });
  const bosses = places.flat();
  const inside = [
    start + units[first]!.from + section.wall + boss.width + 1,
    start + units[first]!.from + units[first]!.size[0] - section.wall - boss.width - 1,
  ] as const;
  const gaps = freeGaps(inside, [...taken, ...bosses.map((at): [number, number] => [at - clear / 2, at + clear / 2])]);
  const best = gaps.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] + 1e-9 ? b : a), [0, 0] as readonly [number, number]);
  const width = Math.min(wires, Math.floor(10 * (best[1] - best[0])) / 10);
  if (width < NOTCH_LEAST)
    mistakes.push({
      code: 'preset/bay-too-small',
      path: 'bay.modules',
      message: `the bay's tray leaves ${Math.max(0, upTenth(width))} mm for wires to come in from the ${run.side} rail, ${NOTCH_LEAST} mm are the least`,
      hint: 'place: apart, or the other rail of emitters',
    });
  const middle = (best[0] + best[1]) / 2;
  const notch = [middle - width / 2, middle + width / 2] as const;
  return {
    units: units.map((unit, i) => {
      const offset = start + unit.from;
      const way: WallHole[] = i === first ? [notchIn('inner', [notch[0] - offset, notch[1] - offset], top)] : [];
      return {
        ...unit,
        walls: [...unit.walls, ...way, ...passages(units, i, { wall: section.wall, boss: boss.depth, top })],
        held: places[i]!.map((at) => at - offset),
        tie: i === first ? tieRib(section.wall, boss.width) : null,
      };
    }),
    bosses,
    notch,
    mistakes,
  };
}

interface ApartOptions {
  readonly wall: number;
  readonly corner: Vec2;
  readonly wires: number;
  /** Of the walls. */
  readonly top: number;
}

/** A case of its own: each tray screwed to the one before it; the cable comes in beside the first boards. */
export function holdTogether(units: readonly LooseUnit[], { wall, corner, wires, top }: ApartOptions): Held {
  const first = boardsFirst(units);
  return {
    units: units.map((unit, i) => {
      const from = wall + corner[0] + TIE_ROOM[0];
      const width = Math.min(wires, unit.size[0] - from - wall - corner[0]);
      return {
        ...unit,
        walls: [
          ...unit.walls,
          ...(i === first ? [notchIn('inner', [from, from + width], top)] : []),
          ...passages(units, i, { wall, boss: corner[1], top }),
        ],
        held: [],
        tie: i === first ? tieRib(wall, corner[0]) : null,
      };
    }),
    bosses: [],
    notch: null,
    mistakes: [],
  };
}

/** @returns whether nothing that holds a board in a tray stands in the way of the key to its screws into the next tray */
export function jointsFree(
  units: readonly LooseUnit[],
  { wall, spec, height }: { readonly wall: number; readonly spec: Spec; readonly height: number },
): boolean {
  const { half, low } = keyRoom(spec, height);
  return units.slice(0, -1).every((unit) => {
    const face = unit.size[0] - wall;
    return jointPlaces(unit.size, wall).every(
      (at) => !isHeldIn(unit, [face - KEY.reach, at - half, face, at + half], low),
    );
  });
}

/** Half of what the key to a screw in a wall needs across, and where it needs it from. */
function keyRoom(spec: Spec, height: number): { readonly half: number; readonly low: number } {
  const half = keyHalf(spec);
  return { half, low: Math.min(...screwHeights(spec, height)) - half };
}

/** Do posts or bars that hold a board stand on this ground and rise over a height? */
const isHeldIn = ({ modules }: LooseUnit, ground: Rect, low: number): boolean =>
  modules.flatMap(holders).some(({ area, top }) => top > low && crosses(area, ground));

/** The tray that wires come into. */
const boardsFirst = (units: readonly LooseUnit[]): number =>
  Math.max(
    0,
    units.findIndex(({ kind }) => kind === 'boards'),
  );

const notchIn = (wall: WallHole['wall'], [from, to]: readonly [number, number], top: number): WallHole => ({
  wall,
  from,
  to,
  low: top - NOTCH,
  high: top,
  open: true,
});

/** Wires pass from tray to tray beside the inner boss, over the facing end walls. */
function passages(
  units: readonly LooseUnit[],
  i: number,
  { wall, boss, top }: { wall: number; boss: number; top: number },
): WallHole[] {
  const from = wall + boss + 1;
  return [
    ...(i > 0 ? [notchIn('left', [from, from + PASS], top)] : []),
    ...(i < units.length - 1 ? [notchIn('right', [from, from + PASS], top)] : []),
  ];
}

/** Upright, along the inner wall beside the first boss. */
const tieRib = (wall: number, boss: number): Rect => [wall + boss + 2, wall + 3, wall + boss + 14, wall + 6];

function search(from: number, to: number, isFree: (at: number) => boolean): number | null {
  const way = Math.sign(to - from) || 1;
  for (let at = from; way * (to - at) >= 0; at += way * STEP) if (isFree(at)) return upTenth(at);
  return null;
}

function freeGaps(
  [from, to]: readonly [number, number],
  taken: readonly (readonly [number, number])[],
): (readonly [number, number])[] {
  const gaps: (readonly [number, number])[] = [];
  let at = from;
  for (const [a, b] of [...taken].sort((p, q) => p[0] - q[0])) {
    if (a > at) gaps.push([at, Math.min(a, to)]);
    at = Math.max(at, b);
    if (at >= to) return gaps;
  }
  gaps.push([at, to]);
  return gaps;
}

/** @returns what a bay that hangs on this piece of rail asks of it, along the piece; nothing for the others */
export function bayIn(
  bay: BayLayout | null,
  { side }: RailRun,
  { from, length }: RailSegment,
): Pick<RailSegment, 'bay'> {
  if (!bay?.rail || bay.place !== side) return {};
  const { bosses, notch } = bay.rail;
  const own = bosses.filter((at) => at > from && at < from + length).map((at) => at - from);
  const holds = notch[0] > from && notch[1] < from + length;
  if (own.length === 0 && !holds) return {};
  return { bay: { bosses: own, notch: holds ? [notch[0] - from, notch[1] - from] : null } };
}

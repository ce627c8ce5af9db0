/** The electronics bay: where it goes, its trays, and what the rail it hangs on needs. */
import { type Mistake, PresetError } from '../../errors.js';
import { usableBed } from '../../printers/usable-bed.js';
import { multiply, translation } from '../../solid/matrix.js';
import type { Matrix, Vec2 } from '../../solid/mesh.js';
import type { BayPlace, BaySpec } from '../../spec/bay.js';
import type { Solved, Spec } from '../../spec/spec.js';
import { openingFor } from '../cable.js';
import { downTenth, formedSunk, upTenth } from '../fits.js';
import type { FrameLayout } from '../frame.js';
import type { Grid } from '../grid.js';
import type { RailRun } from '../runs.js';
import { drawnHeat, placeVents } from './air.js';
import { type Heights, topNeeded } from './fixing.js';
import { holdTogether, jointsFree } from './hold.js';
import { type OnRail, standOnRail, startsOf } from './on-rail.js';
import { placeModules } from './place.js';
import { noTray, tooHigh, tooLong } from './refused.js';
import { fromEnd, fromTie, JOINT, NOTCH, screwHeights, TIE_ROOM, TRAYS_APART } from './sizes.js';
import { solvedOf } from './solved.js';
import type { BayLayout, Unit } from './types.js';
import { layTrays, type Row, type TrayRoom } from './units.js';

const BOSS_AIR = 0.5;
/** For the key that turns the screws in a tray's walls, and two of them. */
const TRAY_LEAST = 40;
/** Of a case that stands apart, over its floor; and how far it is drawn from the panel. */
const CASE_LEAST = 26;
/** Most bow of a tray off the bed: trays are rather two than long. */
const TRAY_BOW = 0.48;
const DRAWN_APART = 80;

export interface BayOptions {
  readonly grid: Grid;
  readonly frame: FrameLayout;
  readonly runs: readonly RailRun[];
}

/** @throws {PresetError} when the modules don't fit: by how much, and what would take them */
export function layBay(
  spec: Spec,
  options: BayOptions,
): { readonly bay: BayLayout; readonly solved: readonly Solved[] } | null {
  if (spec.bay === undefined) return null;
  const { section } = options.frame;
  const place = placeOf(spec, spec.bay, options);
  const floor = section.floor;
  const needed = Math.max(...spec.bay.modules.map((module) => topNeeded(module, { spec, floor })));
  const height = place === 'apart' ? Math.max(CASE_LEAST, needed) : section.height;
  if (needed > height + 1e-9) fail(spec, tooHigh(spec.bay, { spec, floor, height }));
  const run = options.runs.find(({ side }) => side === place);
  const wires = openingFor(spec, { runs: options.runs, height: NOTCH });
  const rail = run && { spec, run, frame: options.frame, wires, heights: { floor, top: height } };
  const row = rowOf(spec, spec.bay, { place, options, rail, heights: { floor, top: height } });
  const outside = row.length + 2 * section.wall;
  const placed = placeModules(spec, row, {
    wall: section.wall,
    heights: { floor, top: height },
    apart: place === 'apart',
  });
  if (placed.mistakes.length > 0) fail(spec, placed.mistakes);
  const through = run ? section.wall : section.wall + TRAYS_APART;
  const length = formedSunk(spec, through);
  const bossAt = (size: Vec2): Vec2[] => {
    const [x, y] = [section.wall + options.frame.boss.width / 2, section.wall + options.frame.boss.depth / 2];
    return [
      [x, y],
      [size[0] - x, y],
      [x, size[1] - y],
      [size[0] - x, size[1] - y],
    ];
  };
  const { start, held } = rail
    ? standOnRail(row, rail)!
    : {
        start: 0,
        held: holdTogether(placed.units, { wall: section.wall, corner: cornerOf(options.frame), wires, top: height }),
      };
  if (held.mistakes.length > 0) fail(spec, held.mistakes);
  const solid = held.units.map((unit): Unit => ({ ...unit, bosses: bossAt(unit.size) }));
  const air = { spec, wall: section.wall, floor, height, boss: options.frame.boss };
  const aired = placeVents(solid, air);
  const used = row.trays.reduce(
    (sum, { packed }) =>
      sum + packed.spots.reduce((all, { cell }) => all + (cell[2] - cell[0]) * (cell[3] - cell[1]), 0),
    0,
  );
  const all = row.trays.reduce((sum, { length: inside }) => sum + inside * row.depth, 0);
  const bay: BayLayout = {
    place,
    units: aired.units,
    wall: section.wall,
    floor,
    height,
    lid: section.cover,
    matrix: run ? multiply(run.matrix, translation([start, section.width, 0])) : apartMatrix(options),
    cable: run ? 0 : spec.bay.cable,
    start,
    rail: run ? { bosses: held.bosses, notch: held.notch! } : null,
    screw: { length, engaged: length - through, heights: screwHeights(spec, height) },
    heat: drawnHeat(aired, air),
    fill: used / all,
  };
  return { bay, solved: solvedOf(spec.bay, bay, outside) };
}

const fail = (spec: Spec, mistakes: readonly Mistake[]): never => {
  throw new PresetError(spec.name, mistakes);
};

/** From a tray's outer face to the end of the columns that take the screws of the tray before it. */
const jointDepth = (spec: Spec, wall: number): number =>
  formedSunk(spec, wall + TRAYS_APART) - wall - TRAYS_APART + JOINT.behind;

const cornerOf = ({ boss }: FrameLayout): Vec2 => [boss.width + BOSS_AIR, boss.depth + BOSS_AIR];

/** Beside the panel's far side: where exactly is the builder's. */
const apartMatrix = ({ grid, frame: { section } }: BayOptions): Matrix =>
  translation([0, grid.depth + section.width + DRAWN_APART, section.bottom]);

/** Along the longer rail of emitters: on the receivers' rails the alignment hood hangs. */
function placeOf(spec: Spec, bay: BaySpec, { runs }: BayOptions): BayPlace {
  const free = runs.filter(({ kind }) => kind === 'emitter').sort((a, b) => b.length - a.length);
  if (bay.place === undefined) return free[0]!.side;
  if (bay.place === 'apart' || free.some(({ side }) => side === bay.place)) return bay.place;
  return fail(spec, [
    {
      code: 'preset/bay-side',
      path: 'bay.place',
      message: `on the ${bay.place} rail the alignment hood hangs, which leaves no room for a bay`,
      hint: `${free.map(({ side }) => side).join(' or ')}, where the emitters are, or apart`,
    },
  ]);
}

interface RowOptions {
  readonly place: BayPlace;
  readonly options: BayOptions;
  readonly rail: OnRail | undefined;
  readonly heights: Heights;
}

function rowOf(spec: Spec, bay: BaySpec, { place, options: { frame }, rail, heights }: RowOptions): Row {
  const { wall } = frame.section;
  const bed = usableBed(spec.printer.machine);
  // Longer trays lift their ends off the bed.
  const flat = 100 * Math.sqrt(TRAY_BOW / Math.max(0.01, spec.printer.machine.warpPer100.value));
  const room: TrayRoom = {
    most: [Math.min(Math.max(...bed), flat) - 2 * wall, Math.min(...bed, flat) - 2 * wall],
    corner: cornerOf(frame),
    tie: TIE_ROOM,
    least: Math.max(TRAY_LEAST, upTenth(fromTie(spec, frame) + fromEnd(spec, frame) - 2 * wall)),
    between: 2 * wall + TRAYS_APART,
    joint: rail ? null : { wall, depth: jointDepth(spec, wall) - wall, breadth: JOINT.breadth },
  };
  const canBeJoined = (one: Row) =>
    jointsFree(placeModules(spec, one, { wall, heights, apart: true }).units, { wall, spec, height: heights.top });
  const row = layTrays(bay.modules, {
    room,
    takes: (one) => (rail ? standOnRail(one, rail)?.held.mistakes.length === 0 : canBeJoined(one)),
  });
  if (row === null) return fail(spec, noTray(bay, room));
  if (rail === undefined) return row;
  const [least, most] = startsOf(row, rail);
  if (least > most + 1e-9) {
    const [is, has] = [upTenth(row.length + 2 * wall), downTenth(rail.run.length + 2 * frame.section.width)];
    return fail(spec, tooLong(row, { is, has, short: upTenth(least - most), wall, place }));
  }
  return row;
}

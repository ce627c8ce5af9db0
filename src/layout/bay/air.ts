/** How warm the bay gets, and the slots that let air through where it would get too warm. */
import { closedRise, SURFACE, ventArea, ventedHeat } from '../../electrics/heat.js';
import type { Vec2 } from '../../solid/mesh.js';
import type { Spec } from '../../spec/spec.js';
import { holders } from './holders.js';
import { boundsOf } from './join-holes.js';
import { vents } from './openings.js';
import type { BayLayout, Rect, Unit, WallHole } from './types.js';

/** Warmth over the air around that boards and plastic are spared from [K]. Source: common practice. */
export const WARMTH = 10;
const KELVIN = 273;

interface AirOptions {
  readonly spec: Spec;
  readonly wall: number;
  readonly floor: number;
  readonly height: number;
  /** Of the lid's screws. */
  readonly boss: { readonly width: number };
}

export interface Aired {
  readonly units: readonly Unit[];
  /** Free area of inlets, and of outlets [mm²]. */
  readonly opening: number;
}

const wattsOf = (units: readonly Unit[]): number =>
  units.reduce(
    (sum, { modules }) => sum + modules.reduce((all, { module }) => all + module.part.heatMw.value / 1000, 0),
    0,
  );

/** Lid and walls; the floor stands on the table [m²]. */
const areaOf = ({ size: [x, y] }: Unit, height: number): number => (x * y + 2 * (x + y) * height) / 1e6;

export function placeVents(units: readonly Unit[], { spec, wall, floor, height, boss }: AirOptions): Aired {
  let opening = 0;
  const aired = units.map((unit): Unit => {
    const watts = wattsOf([unit]);
    if (watts === 0) return unit;
    const wanted =
      1e6 *
      ventArea({
        watts,
        area: areaOf(unit, height),
        rise: WARMTH,
        around: KELVIN + spec.surroundings.warmest,
        height: (height - floor) / 1000,
      });
    if (wanted === 0) return unit;
    const taken: Rect[] = [
      ...unit.lid.map(boundsOf),
      ...unit.bosses.map(([x, y]): Rect => [x - wall, y - wall, x + wall, y + wall]),
    ];
    const cut = vents(wanted, {
      size: unit.size,
      wall,
      floor,
      height,
      lid: taken,
      walls: [
        ...unit.walls,
        ...unit.bosses.map((at) => behindBoss(at, boss.width)),
        ...unit.modules
          .flatMap(holders)
          .flatMap(({ area }) => (area[3] > unit.size[1] - wall - BY_WALL ? [along(area)] : [])),
      ],
    });
    opening += cut.area;
    return { ...unit, lid: [...unit.lid, ...cut.lid], walls: [...unit.walls, ...cut.walls] };
  });
  return { units: aired, opening };
}

/** A lid's boss rises from the wall at 45°: a slot behind it would leave its foot in the air. */
const behindBoss = ([x]: Vec2, width: number): Pick<WallHole, 'wall' | 'from' | 'to'> => ({
  wall: 'outer',
  from: x - width / 2,
  to: x + width / 2,
});

/** Posts and bars nearer to the wall than this close a slot, which would leave a sliver of them [mm]. */
const BY_WALL = 0.4;
const along = ([from, , to]: Rect): Pick<WallHole, 'wall' | 'from' | 'to'> => ({ wall: 'outer', from, to });

/** @returns the warmest tray's figures, closed and as drawn */
export function drawnHeat({ units, opening }: Aired, { spec, floor, height }: AirOptions): BayLayout['heat'] {
  const watts = wattsOf(units);
  const area = units.reduce((sum, unit) => sum + (wattsOf([unit]) > 0 ? areaOf(unit, height) : 0), 0);
  if (watts === 0) return { closed: 0, drawn: 0, vents: 0, watts };
  const closed = closedRise({ watts, area });
  const around = KELVIN + spec.surroundings.warmest;
  const lost = (rise: number) =>
    SURFACE * area * rise +
    (opening > 0 ? ventedHeat({ rise, around, opening: opening / 1e6, height: (height - floor) / 1000 }) : 0);
  // What leaves grows with the warmth: halve until they agree.
  let [low, high] = [0, closed];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (middle > 0 && lost(middle) > watts) high = middle;
    else low = middle;
  }
  return { closed, drawn: opening > 0 ? high : closed, vents: opening, watts };
}

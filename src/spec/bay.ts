/** The bay's modules with their figures: names of the catalogue, changes to them, or outlines spelled out. */
import { modules, threads } from '../components/index.js';
import type { Cell, Connector, Edge, Module } from '../components/module.js';
import type { ScrewSize } from '../components/types.js';
import type { Datum } from '../data.js';
import { FROM_PRESET } from './catalogue.js';
import type { Preset } from './schema.js';

export type BayPlace = 'far' | 'near' | 'left' | 'right' | 'apart';
export type Turn = 0 | 90 | 180 | 270;

export interface BayModule {
  /** `multiplexer-2`; what placements are named by. */
  readonly id: string;
  /** Id of the bought part: equal outlines share it. */
  readonly name: string;
  readonly part: Module;
  /** Pinned: left and inner edge in its tray [mm], and turn. */
  readonly at: readonly [number, number] | undefined;
  readonly turn: Turn | undefined;
  /** Where the preset says it. */
  readonly path: string;
}

export interface BaySpec {
  readonly place: BayPlace | undefined;
  /** Between panel and case [mm]. */
  readonly cable: number;
  readonly modules: readonly BayModule[];
}

type GivenBay = NonNullable<Preset['bay']>;
export type GivenModule = GivenBay['modules'][number];
export type OwnModule = Exclude<Exclude<GivenModule, string>['part'], string>;

/** From a table's case to the panel's, and down to sit by. */
export const CABLE = 600;
/** What an outline that leaves them out has. */
const PLAIN = { holes: [], connectors: [], heatMw: 0 } as const;

export function bayOf(given: GivenBay): BaySpec {
  const counts = new Map<string, number>();
  const kinds = new Map<string, string>();
  const list = given.modules.flatMap((item, i): BayModule[] => {
    const {
      part,
      count = 1,
      at,
      turn,
    } = typeof item === 'string' ? { part: item } : (item as Exclude<GivenModule, string>);
    const stem = typeof part === 'string' ? part : (part.base ?? 'module');
    const shape = moduleOf(part);
    const name = typeof part === 'string' ? part : ownName(stem, JSON.stringify(shape), kinds);
    return Array.from({ length: count }, () => {
      const number = (counts.get(stem) ?? 0) + 1;
      counts.set(stem, number);
      return { id: `${stem}-${number}`, name, part: shape, at, turn, path: `bay.modules.${i}` };
    });
  });
  return { place: given.place, cable: given.cable ?? CABLE, modules: list };
}

/** Outlines that are spelled out are told apart by a number. */
function ownName(stem: string, shape: string, kinds: Map<string, string>): string {
  const known = kinds.get(shape);
  if (known !== undefined) return known;
  const like = [...kinds.values()].filter((one) => one.startsWith(`${stem}-own`)).length;
  const name = `${stem}-own${like > 0 ? `-${like + 1}` : ''}`;
  kinds.set(shape, name);
  return name;
}

/** @param given - as the schema and the cross-checks accept it */
export function moduleOf(given: GivenModule | OwnModule): Module {
  if (typeof given === 'string') return modules[given];
  if ('part' in given) return moduleOf(given.part);
  const base: Partial<Module> = given.base === undefined ? {} : modules[given.base];
  const or = <T>(value: T | undefined, known: Datum<T> | undefined, plain?: T): Datum<T> =>
    value !== undefined ? { value, source: FROM_PRESET } : (known ?? { value: plain as T, source: 'left out' });
  const maybe = <T>(value: T | undefined, known: Datum<T> | undefined) =>
    value === undefined && known === undefined ? undefined : or(value, known);
  const holeDiameter = maybe(given.hole_diameter, base.holeDiameter);
  const window = maybe(given.window, base.window);
  const lamps = maybe(given.lamps, base.lamps);
  const knobs = maybe(given.knobs, base.knobs);
  const converts = maybe(given.converts, base.converts);
  const cell = given.cell === undefined ? base.cell : cellOf(given.cell);
  return {
    title: given.title ?? (base.title ? `${base.title}, changed` : "module of the preset's own figures"),
    length: or(given.length, base.length),
    width: or(given.width, base.width),
    thickness: or(given.thickness, base.thickness),
    above: or(given.above, base.above),
    below: or(given.below, base.below),
    holes: or<Module['holes']['value']>(given.holes, base.holes, PLAIN.holes),
    connectors: or<Module['connectors']['value']>(given.connectors, base.connectors, PLAIN.connectors),
    massG: or(given.mass_g, base.massG),
    heatMw: or(given.heat_mw, base.heatMw, PLAIN.heatMw),
    ...(holeDiameter && { holeDiameter }),
    ...(window && { window }),
    ...(lamps && { lamps }),
    ...(knobs && { knobs }),
    ...(converts && { converts }),
    ...(cell && { cell }),
  };
}

const cellOf = ({ voltage, capacity_mah, most_ma, lithium }: NonNullable<OwnModule['cell']>): Cell => ({
  voltage: { value: voltage, source: FROM_PRESET },
  capacityMah: { value: capacity_mah, source: FROM_PRESET },
  mostMa: { value: most_ma, source: FROM_PRESET },
  lithium,
});

/** @returns the bay's battery: cells alike stand side by side, their capacities and currents add; null without any */
export function batteryOf(
  bay: BaySpec | undefined,
): { readonly voltage: number; readonly mah: number; readonly mostMa: number; readonly lithium: boolean } | null {
  const cells = (bay?.modules ?? []).flatMap(({ part }) => (part.cell ? [part.cell] : []));
  const [first] = cells;
  if (first === undefined) return null;
  const sum = (of: (cell: Cell) => number) => cells.reduce((total, cell) => total + of(cell), 0);
  return {
    voltage: first.voltage.value,
    mah: sum((cell) => cell.capacityMah.value),
    mostMa: sum((cell) => cell.mostMa.value),
    lithium: cells.some(({ lithium }) => lithium),
  };
}

/** A clip's bar reaches round the board's corners by this, along the sides beside it [mm]. */
export const CHEEK = 3;

/** A clip is this broad, and laps over its board by this [mm]. */
export const CLIP_OVER = { breadth: 9, lap: 1.7 } as const;

/** Least that a plug from outside leaves of those ends; its hole in the wall takes a little more [mm]. */
export const PLUG_CHEEK = 2.2;

const PAIRS: readonly (readonly [Edge, Edge])[] = [
  ['left', 'right'],
  ['front', 'back'],
];

/** @returns the pair of opposite edges at which clips hold a board without holes; null where it has holes, or all have connectors */
export function clipEdges({ holes, connectors }: Module): readonly [Edge, Edge] | null {
  if (holes.value.length > 0) return null;
  return PAIRS.find((edges) => !connectors.value.some(({ side }) => edges.includes(side))) ?? null;
}

/** Length of thread wanted in the plastic, in diameters. Source: common practice. */
export const WANTED = 1.5;

/** @returns the thickest thread that a hole passes; the cross-checks keep holes that pass none away */
export function screwFor(hole: number): ScrewSize {
  const sizes = (Object.keys(threads) as ScrewSize[]).filter((size) => threads[size].clearance.value <= hole + 1e-9);
  return sizes.reduce((a, b) => (threads[b].diameter.value > threads[a].diameter.value ? b : a));
}

/** Between a board that is plugged from outside and the wall [mm]. */
export const TO_WALL = 0.5;

/** @returns the edges beside a connector's own, each with how far the plug reaches past it [mm]; negative: it ends before */
export function pastCorners(
  { length, width }: Pick<Module, 'length' | 'width'>,
  { side, at, width: across }: Connector,
): readonly (readonly [Edge, number])[] {
  const upright = side === 'left' || side === 'right';
  const end = upright ? width.value : length.value;
  const [first, last]: readonly [Edge, Edge] = upright ? ['front', 'back'] : ['left', 'right'];
  return [
    [first, across / 2 - at],
    [last, at + across / 2 - end],
  ];
}

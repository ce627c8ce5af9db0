/** How each module is held, and how high it lies. Tray coordinates, mm. */
import { threads } from '../../components/index.js';
import type { Module } from '../../components/module.js';
import type { ScrewSize } from '../../components/types.js';
import type { Vec2 } from '../../solid/mesh.js';
import { type BayModule, clipEdges, screwFor, type Turn, WANTED } from '../../spec/bay.js';
import type { Spec } from '../../spec/spec.js';
import { downTenth, stocked, upTenth } from '../fits.js';
import { CLIP, turned, wallOf } from './footprint.js';
import type { ClipBar, Fixing, Rect } from './types.js';

/** Boards lie at least this high over the floor: room for solder, and for pilots. */
const STAND = 4;
/** Between a board's lowest part and the floor; between what looks through the lid and the lid. */
const UNDER = 0.6;
const UNDER_LID = 0.4;
/** Around a plug in its hole. */
export const PLUG_AIR = 0.6;
const HOLE_FLOOR = 0.6;
/** Of a pilot, past the thread. */
const TIP = 1;

interface OnFloor {
  readonly spec: Pick<Spec, 'screws'>;
  /** Its thickness. */
  readonly floor: number;
}

/** What stands behind the lid and is seen or touched through it. */
const faced = ({ part }: BayModule): boolean => part.window !== undefined || part.knobs !== undefined;

export interface Heights {
  readonly floor: number;
  /** Of the lid's underside. */
  readonly top: number;
}

interface BoardScrew {
  readonly size: ScrewSize;
  readonly length: number;
  readonly engaged: number;
  /** Of its head's top, over the board's underside. */
  readonly head: number;
  /** Of the end of its pilot, under the board's underside. */
  readonly pilot: number;
}

/** @returns what holds the board: a screw through each hole, or through each clip */
function screwOf({ screws }: OnFloor['spec'], part: Module): BoardScrew {
  const clipped = part.holes.value.length === 0;
  const size = clipped ? screws.fix : screwFor(part.holeDiameter!.value);
  const { capLengths, capHeight, diameter } = threads[size];
  const through = clipped ? CLIP.plate + CLIP.press : part.thickness.value;
  const length = stocked(capLengths.value, through + WANTED * diameter.value)!;
  const engaged = length - through;
  const rise = clipped ? part.thickness.value - CLIP.press : 0;
  const head = part.thickness.value + (clipped ? CLIP.plate : 0) + capHeight.value;
  return { size, length, engaged, head, pilot: engaged + TIP - rise };
}

/** @returns the lowest that the board's underside may lie [mm] */
function lowestOf({ part }: BayModule, { spec, floor }: OnFloor): number {
  if (part.cell) return floor;
  const plugs = part.connectors.value.map(({ access, height, up }) =>
    access === 'outside' ? floor + HOLE_FLOOR + height / 2 + PLUG_AIR - up : floor + UNDER + height / 2 - up,
  );
  // The pilot ends within the floor.
  return Math.max(floor + STAND, floor + part.below.value + UNDER, screwOf(spec, part).pilot + HOLE_FLOOR, ...plugs);
}

/** @returns the room from the board's underside up to the lid [mm] */
function roomOver({ part }: BayModule, spec: OnFloor['spec']): number {
  const top = part.thickness.value + part.above.value + UNDER_LID;
  if (part.cell) return top;
  const plugs = part.connectors.value.map(({ height, up }) => up + height / 2 + PLUG_AIR);
  return Math.max(top, screwOf(spec, part).head + UNDER_LID, ...plugs);
}

/** @returns the least height of a lid's underside that the module fits under [mm] */
export const topNeeded = (module: BayModule, on: OnFloor): number =>
  upTenth(lowestOf(module, on) + roomOver(module, on.spec));

/** @returns where the board's underside lies: low, or close under the lid where it is seen or touched through it */
export function standOf(module: BayModule, { spec, floor, top }: OnFloor & Heights): number {
  const low = upTenth(lowestOf(module, { spec, floor }));
  return faced(module) ? Math.max(low, downTenth(top - roomOver(module, spec))) : low;
}

/** @param outline - of the turned board in the tray */
export function fixingOf(
  spec: Spec,
  { module, turn, outline }: { module: BayModule; turn: Turn; outline: Rect },
): Fixing {
  const { part } = module;
  if (part.cell) return { kind: 'ribs' };
  const place = (point: Vec2): Vec2 => {
    const [x, y] = turned(part, point, turn);
    return [outline[0] + x, outline[1] + y];
  };
  const clips = clipEdges(part);
  const { size, length, engaged } = screwOf(spec, part);
  if (clips === null) return { kind: 'screws', size, length, engaged, at: part.holes.value.map(place) };
  const [l, w] = [part.length.value, part.width.value];
  const ends: Readonly<Record<string, readonly [Vec2, number]>> = {
    left: [[0, w / 2], w],
    right: [[l, w / 2], w],
    front: [[l / 2, 0], l],
    back: [[l / 2, w], l],
  };
  const bars = clips.map((edge): ClipBar => {
    const [middle, edgeLength] = ends[edge]!;
    return { at: place(middle), out: OUT[wallOf(edge, turn)], length: edgeLength };
  });
  return { kind: 'clips', bars, length, engaged };
}

const OUT = { left: [-1, 0], right: [1, 0], inner: [0, -1], outer: [0, 1] } as const;

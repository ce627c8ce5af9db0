/** How each module is held, and how high it lies. Tray coordinates, mm. */
import { threads } from '../../components/index.js';
import type { ScrewSize } from '../../components/types.js';
import type { Vec2 } from '../../solid/mesh.js';
import { type BayModule, clipEdges, type Turn } from '../../spec/bay.js';
import type { Spec } from '../../spec/spec.js';
import { stocked, upTenth } from '../fits.js';
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
/** What stands behind the lid and is seen or touched through it. */
const faced = ({ part }: BayModule): boolean => part.window !== undefined || part.knobs !== undefined;

export interface Heights {
  readonly floor: number;
  /** Of the lid's underside. */
  readonly top: number;
}

/** @returns the lowest that the board's underside may lie [mm] */
function lowestOf({ part }: BayModule, floor: number): number {
  if (part.cell) return floor;
  const plugs = part.connectors.value
    .filter(({ access }) => access === 'outside')
    .map(({ height, up }) => floor + HOLE_FLOOR + height / 2 + PLUG_AIR - up);
  return Math.max(floor + STAND, floor + part.below.value + UNDER, ...plugs);
}

/** @returns the least height of a lid's underside that the module fits under [mm] */
export function topNeeded(module: BayModule, floor: number): number {
  const { part } = module;
  const plugs = part.connectors.value.map(({ height, up }) => up + height / 2 + PLUG_AIR);
  return upTenth(
    lowestOf(module, floor) +
      Math.max(part.thickness.value + part.above.value + UNDER_LID, ...(part.cell ? [] : plugs)),
  );
}

/** @returns where the board's underside lies: low, or close under the lid where it is seen or touched through it */
export function standOf(module: BayModule, { floor, top }: Heights): number {
  const low = lowestOf(module, floor);
  if (!faced(module)) return upTenth(low);
  const { part } = module;
  return Math.max(low, Math.floor(10 * (top - UNDER_LID - part.above.value - part.thickness.value) + 1e-6) / 10);
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
  if (clips === null) {
    const size = screwFor(part.holeDiameter!.value);
    const thread = threads[size];
    const length = stocked(thread.capLengths.value, part.thickness.value + 1.5 * thread.diameter.value)!;
    return { kind: 'screws', size, length, engaged: length - part.thickness.value, at: part.holes.value.map(place) };
  }
  const thread = threads[spec.screws.fix];
  const length = stocked(thread.capLengths.value, CLIP.plate + CLIP.press + 1.5 * thread.diameter.value)!;
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
  return { kind: 'clips', bars, length, engaged: length - CLIP.plate - CLIP.press };
}

const OUT = { left: [-1, 0], right: [1, 0], inner: [0, -1], outer: [0, 1] } as const;

/** The thickest thread that a hole passes; the cross-checks keep holes that pass none away. */
function screwFor(hole: number): ScrewSize {
  const sizes = (Object.keys(threads) as ScrewSize[]).filter((size) => threads[size].clearance.value <= hole + 1e-9);
  return sizes.reduce((a, b) => (threads[b].diameter.value > threads[a].diameter.value ? b : a));
}

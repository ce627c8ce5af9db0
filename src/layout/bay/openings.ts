/** Holes in the trays' walls and lids: for plugs, wires, displays, knobs, lamps and air. Tray coordinates, mm. */

import type { Connector, Module, Patch } from '../../components/module.js';
import type { Vec2 } from '../../solid/mesh.js';
import type { Turn } from '../../spec/bay.js';
import type { Spec } from '../../spec/spec.js';
import { side, upTenth } from '../fits.js';
import { PLUG_AIR } from './fixing.js';
import { turned, wallOf } from './footprint.js';
import type { LidHole, LightPipe, PlacedModule, Rect, WallHole } from './types.js';

/** A plug's hole nearer to the top than this is open to it: no sliver of wall is left. */
const TOP_LEAST = 2.4;
/** Rods for lamps, and how far from its lamp a lid may be without one. Source: common practice. */
export const PIPE = { diameter: 3, over: 0.6, near: 3, air: 0.4 } as const;
const LAMP_RISE = 1;

/** @returns where a connector's middle stands on the outline's edge */
export function connectorAt({ module, turn, outline }: PlacedModule, { side: edge, at }: Connector): Vec2 {
  const { length, width } = module.part;
  const point: Vec2 =
    edge === 'left' ? [0, at] : edge === 'right' ? [length.value, at] : edge === 'front' ? [at, 0] : [at, width.value];
  const [x, y] = turned(module.part, point, turn);
  return [outline[0] + x, outline[1] + y];
}

export function plugHole(
  placed: PlacedModule,
  connector: Connector,
  { top, bridge }: { readonly top: number; readonly bridge: number },
): WallHole {
  const wall = wallOf(connector.side, placed.turn);
  const [x, y] = connectorAt(placed, connector);
  const middle = wall === 'left' || wall === 'right' ? y : x;
  const half = connector.width / 2 + PLUG_AIR;
  const z = placed.z + connector.up;
  // A hole wider than a bridge slopes in at 45° above the plug.
  const high = upTenth(z + connector.height / 2 + PLUG_AIR + roofSlope(2 * half, bridge));
  const open = high > top - TOP_LEAST;
  return {
    wall,
    from: middle - half,
    to: middle + half,
    low: z - connector.height / 2 - PLUG_AIR,
    high: open ? top : high,
    open,
  };
}

/** @returns how far the sides of a hole this wide slope in, so that what is left can be bridged [mm] */
export const roofSlope = (width: number, bridge: number): number => Math.max(0, (width - 0.9 * bridge) / 2);

/** @returns the patch as it lies in the tray */
export function patchRect(
  part: Module,
  { x, y, width, depth }: Patch,
  { turn, outline }: { turn: Turn; outline: Rect },
): Rect {
  const [a, b] = [
    turned(part, [x - width / 2, y - depth / 2], turn),
    turned(part, [x + width / 2, y + depth / 2], turn),
  ];
  return [
    outline[0] + Math.min(a[0], b[0]),
    outline[1] + Math.min(a[1], b[1]),
    outline[0] + Math.max(a[0], b[0]),
    outline[1] + Math.max(a[1], b[1]),
  ];
}

/** @returns what a lid leaves open over a module, and the rods that lead far lamps' light to it */
export function overModule(
  spec: Spec,
  placed: PlacedModule,
  top: number,
): { readonly holes: LidHole[]; readonly pipes: LightPipe[] } {
  const { module, turn, outline, z } = placed;
  const { part } = module;
  const free = side(spec, 'free');
  const holes: LidHole[] = [...(part.window ? [part.window.value] : []), ...(part.knobs?.value ?? [])].map((patch) => {
    const [x0, y0, x1, y1] = patchRect(part, patch, placed);
    return { kind: 'rectangle', rect: [x0 - free, y0 - free, x1 + free, y1 + free] };
  });
  const pipes: LightPipe[] = [];
  for (const lamp of part.lamps?.value ?? []) {
    const [x, y] = turned(part, lamp, turn);
    const at: Vec2 = [outline[0] + x, outline[1] + y];
    const from = z + part.thickness.value + LAMP_RISE + PIPE.air;
    const far = top - from > PIPE.near;
    holes.push({ kind: 'round', at, radius: PIPE.diameter / 2 + (far ? side(spec, 'press') : free) });
    if (far) pipes.push({ module: module.id, at, from });
  }
  return { holes, pipes };
}

/** Slots: breadth, length and distance from one to the next; low in the outer wall they stand upright. */
const SLOT = { breadth: 2.4, long: 16, apart: 4.8, edge: 6 } as const;

export interface Around {
  /** Outside of the tray. */
  readonly size: Vec2;
  readonly wall: number;
  readonly floor: number;
  readonly height: number;
  /** What slots keep clear of: in the lid, and along the outer wall. */
  readonly lid: readonly Rect[];
  readonly walls: readonly Pick<WallHole, 'wall' | 'from' | 'to'>[];
}

/**
 * As many slots as the area wants and room is left for: above in the lid along the outer wall, below in that wall.
 *
 * @returns the slots, and the free area that inlets and outlets both have [mm²]
 */
export function vents(
  wanted: number,
  { size, wall, floor, height, lid, walls }: Around,
): { readonly lid: LidHole[]; readonly walls: WallHole[]; readonly area: number } {
  const tall = Math.min(SLOT.long, height - floor - 8);
  const each = SLOT.breadth * Math.min(tall, SLOT.long);
  const need = Math.ceil(wanted / each - 1e-9);
  const above: LidHole[] = [];
  const below: WallHole[] = [];
  const outer = size[1] - wall - SLOT.edge;
  for (let x = wall + SLOT.edge; x + SLOT.breadth < size[0] - wall - SLOT.edge; x += SLOT.apart) {
    const rect: Rect = [x, outer - SLOT.long, x + SLOT.breadth, outer];
    if (above.length < need && !lid.some((r) => near(r, rect))) above.push({ kind: 'rectangle', rect });
    const inWay = walls.some((hole) => hole.wall === 'outer' && hole.from < x + SLOT.breadth + 2 && hole.to > x - 2);
    if (below.length < need && !inWay)
      below.push({
        wall: 'outer',
        from: x,
        to: x + SLOT.breadth,
        low: floor + 3,
        high: floor + 3 + tall,
        open: false,
        flush: true,
      });
  }
  return { lid: above, walls: below, area: each * Math.min(above.length, below.length) };
}

const near = (a: Rect, b: Rect): boolean => a[0] < b[2] + 2 && b[0] < a[2] + 2 && a[1] < b[3] + 2 && b[1] < a[3] + 2;

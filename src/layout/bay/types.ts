/**
 * The electronics bay in numbers [mm]: trays in a row, each with its lid. Tray coordinates: x along the row from the tray's
 * left outer face, y outward from its inner wall's outer face (against the rail, where it hangs on one), z up from its underside.
 */
import type { ScrewSize } from '../../components/types.js';
import type { Matrix, Vec2 } from '../../solid/mesh.js';
import type { BayModule, BayPlace, Turn } from '../../spec/bay.js';

/** x from, y from, x to, y to. */
export type Rect = readonly [number, number, number, number];
export type Wall = 'left' | 'right' | 'inner' | 'outer';

/** How a module is held. */
export type Fixing =
  | {
      readonly kind: 'screws';
      readonly size: ScrewSize;
      readonly length: number;
      readonly engaged: number;
      readonly at: readonly Vec2[];
    }
  | { readonly kind: 'clips'; readonly bars: readonly ClipBar[]; readonly length: number; readonly engaged: number }
  /** A battery lies between ribs, and the door holds it down. */
  | { readonly kind: 'ribs' };

/** A bar at one edge of a board, with a ledge under it and a cheek round each corner. */
export interface ClipBar {
  /** Middle of the board's edge, and the way outward. */
  readonly at: Vec2;
  readonly out: Vec2;
  /** Of the edge. */
  readonly length: number;
}

export interface PlacedModule {
  readonly module: BayModule;
  readonly turn: Turn;
  readonly outline: Rect;
  /** Of the board's underside. */
  readonly z: number;
  readonly fixing: Fixing;
}

/** A hole in a wall: across from … to along the wall, up from … to; `open` at the top; `flush`: what stands by the wall stays whole. */
export interface WallHole {
  readonly wall: Wall;
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly open: boolean;
  readonly flush?: true;
}

/** A hole through a lid. */
export type LidHole =
  | { readonly kind: 'rectangle'; readonly rect: Rect }
  | { readonly kind: 'round'; readonly at: Vec2; readonly radius: number };

/** A rod that leads a lamp's light to the lid's top. */
export interface LightPipe {
  readonly module: string;
  readonly at: Vec2;
  readonly from: number;
}

export interface Unit {
  readonly kind: 'boards' | 'battery';
  /** Its left outer face along the row. */
  readonly from: number;
  /** Outside. */
  readonly size: Vec2;
  readonly modules: readonly PlacedModule[];
  readonly walls: readonly WallHole[];
  readonly lid: readonly LidHole[];
  readonly pipes: readonly LightPipe[];
  /** Lid screws. */
  readonly bosses: readonly Vec2[];
  /** Where its screws into the rail go through its inner wall, along it; none where it stands apart. */
  readonly held: readonly number[];
  /** Rib to tie a bundle of wires to; null: none. */
  readonly tie: Rect | null;
}

export interface BayLayout {
  readonly place: BayPlace;
  readonly units: readonly Unit[];
  readonly wall: number;
  readonly floor: number;
  /** From underside to the lid's underside; the lid's thickness. */
  readonly height: number;
  readonly lid: number;
  /** From the row's coordinates (those of a tray at 0) to the assembly's. */
  readonly matrix: Matrix;
  /** Between panel and case; 0 where it hangs on a rail. */
  readonly cable: number;
  /** Where the row begins along its rail; 0 apart. */
  readonly start: number;
  /** What the rail it hangs on needs, along it; null apart. */
  readonly rail: { readonly bosses: readonly number[]; readonly notch: readonly [number, number] } | null;
  readonly screw: { readonly length: number; readonly engaged: number; readonly heights: readonly number[] };
  /** Warmth over the air around, closed and as drawn [K]; area of the vents [mm²], 0: none needed. */
  readonly heat: { readonly closed: number; readonly drawn: number; readonly vents: number; readonly watts: number };
  /** Share of the trays' floor that boards with their room take, and share at the very most by area. */
  readonly fill: number;
}

/** Exact work on outlines in the plane: set operations and offsets. Every length mm, every area mm². */
import type { Outlines, Vec2 } from './mesh.js';

export interface OffsetOptions {
  /** How an outward corner is filled; an inward offset rounds or mitres the corners of holes. */
  readonly corners: 'round' | 'miter';
}

export interface Profiles {
  /** Everything that is inside any of them, without overlaps; outer outlines counter-clockwise, holes clockwise. */
  union(all: readonly Outlines[]): Outlines;
  difference(from: Outlines, cut: Outlines): Outlines;
  intersection(a: Outlines, b: Outlines): Outlines;
  /** Grown by `distance`, or shrunk where it is below zero. */
  offset(outlines: Outlines, distance: number, options?: OffsetOptions): Outlines;
  /** The connected pieces, each with its holes. */
  pieces(outlines: Outlines): readonly Outlines[];
  area(outlines: Outlines): number;
  /** @throws {RangeError} when nothing is enclosed */
  bounds(outlines: Outlines): { readonly min: Vec2; readonly max: Vec2 };
}

/**
 * The small interface through which parts are modelled and solids are measured. Part code knows nothing else, so the
 * same code runs on two kernels (`manifold-kernel.ts`, `jscad-kernel.ts`) and the benchmark compares them.
 */
import type { Box, Matrix, Mesh, Outlines, Vec2, Vec3 } from './mesh.js';
import type { Profiles } from './profiles.js';

/** A closed solid, opaque; it belongs to the kernel that made it. */
export interface Solid {
  readonly __solid: true;
}

/** What it takes to draw a part. Every length mm; each call checks its numbers and throws RangeError on NaN or ∞. */
export interface Kernel {
  /** Prism over the outlines, from z = 0 up to height > 0. */
  extrude(outlines: Outlines, height: number): Solid;
  /** Solid of revolution: outlines at x ≥ 0 in the (radius, height) plane, turned about z. */
  revolve(outlines: Outlines, segments: number): Solid;
  move(solid: Solid, matrix: Matrix): Solid;
  union(solids: readonly Solid[]): Solid;
  /** body minus all cutters. Throws when a cutter takes nothing away: an empty cutter is a mistake in the part. */
  subtract(body: Solid, cutters: readonly Solid[]): Solid;
  intersect(a: Solid, b: Solid): Solid;
  mesh(solid: Solid): Mesh;
  /** Frees the memory of every solid made since `fn` began, except those it returns. A kernel whose solids are collected has none. */
  scope?<T>(fn: () => Scoped<T>): T;
}

/** What comes out of a scope. */
export interface Scoped<T> {
  readonly keep: readonly Solid[];
  readonly value: T;
}

/** Places of a section that are narrower than something. */
export interface Narrow {
  /** Area of the whole section [mm²]. */
  readonly area: number;
  readonly walls: readonly NarrowPlace[];
  /** Gaps and holes alike. */
  readonly gaps: readonly NarrowPlace[];
}

export interface NarrowPlace {
  /** Diameter of the largest circle in it: a wall's thickness, a gap's width, to a thousandth [mm]. */
  readonly width: number;
  readonly box: { readonly min: Vec2; readonly max: Vec2 };
  /** A gap that opens nowhere: a hole. */
  readonly closed: boolean;
}

/** Widths below which places count [mm]. */
export interface NarrowLimits {
  readonly wall: number;
  readonly gap: number;
  /** What stands out or goes in no further than this is passed over. */
  readonly shallow: number;
}

/** What checks need besides. */
export interface MeasuringKernel extends Kernel {
  volume(solid: Solid): number;
  box(solid: Solid): Box;
  /** Number of handles: 0 for a ball, 1 for a ring. */
  genus(solid: Solid): number;
  triangleCount(solid: Solid): number;
  /** Volume that both occupy [mm³]; 0 at once where their boxes don't meet. */
  overlap(a: Solid, b: Solid): number;
  /** Least distance [mm], or `search` when there is nothing within `search`. */
  gap(a: Solid, b: Solid, search: number): number;
  hull(solids: readonly Solid[]): Solid;
  /** Is the segment from a to b free of the solid? Returns the first point hit, or null. */
  rayHit(solid: Solid, from: Vec3, to: Vec3): Vec3 | null;
  /** Section at height z as outlines; with a window, what lies within it. */
  section(solid: Solid, z: number, window?: Outlines): Outlines;
  /** What an opening by the wall's width takes from the section at height z, and what a closing by the gap's width adds. */
  narrow(solid: Solid, z: number, limits: NarrowLimits): Narrow;
  /** The plane's operations, on the same instance of the library. */
  readonly plane: Profiles;
  scope<T>(fn: () => Scoped<T>): T;
}

/** Points, matrices and triangle meshes. mm throughout. */
export type Vec2 = readonly [number, number];
export type Vec3 = readonly [number, number, number];

/** Rigid transform, 4 × 4, row major: translation in elements 4, 8 and 12 counted from 1. */
export type Matrix = readonly number[];

/** Axis-aligned box. */
export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Indexed triangles, outward by the right-hand rule. */
export interface Mesh {
  /** x, y, z of each vertex. */
  readonly positions: Float32Array;
  /** Three vertex indices a triangle. */
  readonly triangles: Uint32Array;
}

/** Closed outlines: outer ones counter-clockwise, holes clockwise. */
export type Outlines = readonly (readonly Vec2[])[];

export const IDENTITY: Matrix = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

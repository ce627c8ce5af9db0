import type { Vec2 } from '../../solid/mesh.js';

/** A straight line on the paper. */
export type Segment = readonly [Vec2, Vec2];

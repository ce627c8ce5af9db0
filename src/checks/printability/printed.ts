/** The printed parts, each once, and how a place in one is told. */
import type { Kit, Part } from '../../kit/types.js';
import type { Mesh, Vec3 } from '../../solid/mesh.js';
import type { ShapeContext } from '../context.js';

export const printed = (kit: Kit): readonly Part[] => [...kit.parts.values()].filter(({ kind }) => kind === 'printed');

/** Read from the kernel once. */
export const printedMesh = ({ scene, kernel }: ShapeContext, { id, solid }: Part): Mesh =>
  scene.once(`printed mesh ${id}`, () => kernel.mesh(solid));

/** In the coordinates of the part's print file, to a tenth [mm]. */
export const place = (at: Vec3): string => `at (${at.map((x) => (Math.round(x * 10) / 10 + 0).toFixed(1)).join(', ')})`;

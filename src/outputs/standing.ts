/** Every placement in the shape that it has in the assembled, aligned kit. */
import type { Part } from '../kit/types.js';
import type { Matrix, Mesh, Vec3 } from '../solid/mesh.js';
import { colourOf } from './colours.js';
import type { OutputContext } from './context.js';
import { shapePath } from './shapes.js';

export interface Standing {
  readonly name: string;
  readonly part: Part;
  /** As it is written to the shape's file. */
  readonly mesh: Mesh;
  readonly matrix: Matrix;
  readonly colour: Vec3;
}

export const standing = ({ kit, meshOf }: Pick<OutputContext, 'kit' | 'meshOf'>): readonly Standing[] =>
  kit.placements.map(({ name, part: id, matrix }) => {
    const part = kit.parts.get(id)!;
    return { name, part, matrix, colour: colourOf(part), mesh: meshOf(standingPath(part)) };
  });

/** @returns the file that holds the shape of a part in the assembly */
export const standingPath = (part: Part): string =>
  shapePath(part.kind === 'bought' ? 'bought' : part.posed === null ? 'stl' : 'posed', part);

/** Every placement in the shape that it has in the assembled, aligned kit. */
import type { Matrix, Mesh, Vec3 } from '../solid/mesh.js';
import { colourOf } from './colours.js';
import type { ShownContext, ShownPart } from './context.js';
import { shapePath } from './shapes.js';

export interface Standing {
  readonly name: string;
  readonly part: ShownPart;
  /** As it is written to the shape's file. */
  readonly mesh: Mesh;
  readonly matrix: Matrix;
  readonly colour: Vec3;
}

export const standing = ({ kit, meshOf }: Pick<ShownContext, 'kit' | 'meshOf'>): readonly Standing[] =>
  kit.placements.map(({ name, part: id, matrix }) => {
    const part = kit.parts.get(id)!;
    return { name, part, matrix, colour: colourOf(part), mesh: meshOf(standingPath(part)) };
  });

/** @returns the file that holds the shape of a part in the assembly */
export const standingPath = (part: ShownPart): string =>
  shapePath(part.kind === 'bought' ? 'bought' : part.posed === null ? 'stl' : 'posed', part);

/** Parts that hide the inside. */
const COVER = /^(cover|plug|hood|bay-lid|bay-door|light-pipe)/;
/** What holds them. */
const COVER_SCREW = /-cover-screw|^bay-(lid|door)-\d+-screw/;

export const isCover = ({ id }: Pick<ShownPart, 'id'>): boolean => COVER.test(id);

/** Everything but what lies over the rails, and the screws that hold it. */
export const withoutCovers = (items: readonly Standing[]): readonly Standing[] =>
  items.filter(({ name, part }) => !isCover(part) && !COVER_SCREW.test(name));

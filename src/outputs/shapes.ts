/** Every part's shape as a binary STL: what to print, how it stands when aligned, what to buy. */
import type { Kit, Part } from '../kit/types.js';
import type { MeasuringKernel, Solid } from '../solid/kernel.js';
import type { ShapeFile, ShapeFolder, ShownKit } from './context.js';
import { stlBytes } from './stl.js';

/**
 * One file per distinct shape. A printed part is written as it is printed and, where it stands otherwise once aligned,
 * also as it stands level; a bought part only as it stands.
 *
 * @param kit - its parts, each once
 * @param name - the kit's name, for the files' headers
 * @returns files in the parts' order, `stl/` before `posed/` of the same part
 */
export function shapeFiles(kit: Kit, name: string, kernel: MeasuringKernel): readonly ShapeFile[] {
  const file = (folder: ShapeFolder, part: Part, solid: Solid): ShapeFile => ({
    path: shapePath(folder, part),
    bytes: stlBytes(kernel.mesh(solid), { kit: name, part: part.id }),
    folder,
    part,
    solid,
  });
  return [...kit.parts.values()].flatMap((part) => {
    if (part.kind === 'bought') return [file('bought', part, part.posed?.level ?? part.solid)];
    return part.posed === null
      ? [file('stl', part, part.solid)]
      : [file('stl', part, part.solid), file('posed', part, part.posed.level)];
  });
}

/** @returns the paths of the same files */
export const shapePaths = ({ parts }: Pick<ShownKit, 'parts'>): readonly string[] =>
  [...parts.values()].flatMap((part) => {
    if (part.kind === 'bought') return [shapePath('bought', part)];
    return part.posed === null ? [shapePath('stl', part)] : [shapePath('stl', part), shapePath('posed', part)];
  });

/** @returns the shape file's path inside the kit's folder */
export const shapePath = (folder: ShapeFolder, part: Pick<Part, 'id'>): string => `${folder}/${part.id}.stl`;

/** A mesh as a binary STL. */
import { serializeBinary } from '@jscad/stl-serializer/CSGToStlb.js';
import { geometries } from '../solid/jscad.js';
import type { Mesh } from '../solid/mesh.js';
import { joinBytes } from './bytes.js';
import { onGrid } from './stl-grid.js';
import { withoutSlivers } from './stl-slivers.js';

/** Length of the free text at the head of a binary STL [bytes]. */
export const HEADER_LENGTH = 80;

export interface StlNames {
  readonly kit: string;
  readonly part: string;
}

/**
 * The serializer's own way in, `serialize`, snaps, looks for seams and triangulates: by text keys, most of its time. This mesh
 * is snapped and has neither seams nor polygons, so that it goes straight to the writer.
 * Same mesh, same bytes. Lengths mm, though the format can't say so.
 *
 * @param mesh - closed, outward
 * @param names - go into the header, in ASCII, as far as they fit
 */
export function stlBytes(mesh: Mesh, names: StlNames): Uint8Array {
  const { positions, triangles } = withoutSlivers(onGrid(mesh));
  const at = (corner: number): [number, number, number] => {
    const v = 3 * triangles[corner]!;
    return [positions[v]!, positions[v + 1]!, positions[v + 2]!];
  };
  const polygons = Array.from({ length: triangles.length / 3 }, (_, t) =>
    geometries.poly3.create([at(3 * t), at(3 * t + 1), at(3 * t + 2)]),
  );
  const pieces = serializeBinary([geometries.geom3.create(polygons)], {});
  const bytes = joinBytes(pieces.map((piece) => new Uint8Array(piece)));
  bytes.set(header(names));
  return bytes;
}

/** Never begins with "solid": by that word readers tell a text STL. */
function header({ kit, part }: StlNames): Uint8Array {
  const text = `beamloom ${kit} / ${part}`
    .replace(/[^ -~]/gu, '?')
    .slice(0, HEADER_LENGTH)
    .padEnd(HEADER_LENGTH);
  return Uint8Array.from(text, (c) => c.charCodeAt(0));
}

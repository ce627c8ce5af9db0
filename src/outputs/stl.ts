/** A mesh as a binary STL. */
import serializer from '@jscad/stl-serializer';
import { geometries } from '../solid/jscad.js';
import type { Mesh } from '../solid/mesh.js';
import { corners, triangleCount } from '../solid/mesh-measures.js';
import { withoutSlivers } from './stl-slivers.js';

/** Length of the free text at the head of a binary STL [bytes]. */
export const HEADER_LENGTH = 80;

export interface StlNames {
  readonly kit: string;
  readonly part: string;
}

/**
 * The serializer snaps to a grid of about 1e-5 of the size and drops what collapses, so that the file has no degenerate facet.
 * Same mesh, same bytes. Lengths mm, though the format can't say so.
 *
 * @param mesh - closed, outward
 * @param names - go into the header, in ASCII, as far as they fit
 */
export function stlBytes(mesh: Mesh, names: StlNames): Uint8Array {
  const polygons = Array.from({ length: triangleCount(mesh) }, (_, t) =>
    geometries.poly3.create(corners(mesh, t).map((p): [number, number, number] => [...p])),
  );
  const pieces = serializer.serialize({ binary: true }, geometries.geom3.create(polygons));
  const bytes = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.byteLength, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(new Uint8Array(piece), at);
    at += piece.byteLength;
  }
  bytes.set(header(names));
  return withoutSlivers(bytes);
}

/** Never begins with "solid": by that word readers tell a text STL. */
function header({ kit, part }: StlNames): Uint8Array {
  const text = `beamloom ${kit} / ${part}`
    .replace(/[^ -~]/gu, '?')
    .slice(0, HEADER_LENGTH)
    .padEnd(HEADER_LENGTH);
  return Uint8Array.from(text, (c) => c.charCodeAt(0));
}

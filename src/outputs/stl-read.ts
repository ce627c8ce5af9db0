/** A small reader of binary STL, for the gate: it shares nothing with what wrote the file. */
import type { Mesh } from '../solid/mesh.js';

const HEAD = 84;
const FACET = 50;

export type StlRead =
  | { readonly ok: true; readonly mesh: Mesh }
  /** The length that the triangle count asks for, and the one found [bytes]. */
  | { readonly ok: false; readonly wanted: number; readonly found: number };

/** Corners at exactly the same place become one vertex. The stored normals are not read: the corners' order tells. */
export function readStl(bytes: Uint8Array): StlRead {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEAD) return { ok: false, wanted: HEAD, found: bytes.length };
  const count = view.getUint32(80, true);
  const wanted = HEAD + FACET * count;
  if (bytes.length !== wanted) return { ok: false, wanted, found: bytes.length };
  const positions: number[] = [];
  const triangles = new Uint32Array(3 * count);
  const seen = new Map<string, number>();
  for (let corner = 0; corner < 3 * count; corner++) {
    const at = HEAD + FACET * Math.floor(corner / 3) + 12 + 12 * (corner % 3);
    // Zero is added so that −0 and 0 are one place.
    const [x, y, z] = [0, 4, 8].map((o) => view.getFloat32(at + o, true) + 0) as [number, number, number];
    const key = `${x},${y},${z}`;
    let vertex = seen.get(key);
    if (vertex === undefined) {
      vertex = positions.length / 3;
      seen.set(key, vertex);
      positions.push(x, y, z);
    }
    triangles[corner] = vertex;
  }
  return { ok: true, mesh: { positions: Float32Array.from(positions), triangles } };
}

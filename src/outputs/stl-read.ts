/** A small reader of binary STL, for the gate: it shares nothing with what wrote the file. */
import type { Mesh } from '../solid/mesh.js';

const HEAD = 84;
const FACET = 50;
/** −0 as a float32: the same place as 0. */
const MINUS_ZERO = 0x8000_0000;

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

  // The bits of three coordinates a vertex; vertices are found again by a table of their numbers + 1, probed in line.
  const places = new Uint32Array(9 * count);
  const triangles = new Uint32Array(3 * count);
  const mask = 2 ** Math.ceil(Math.log2(6 * count + 2)) - 1;
  const table = new Uint32Array(mask + 1);
  const bits = (at: number) => {
    const read = view.getUint32(at, true);
    return read === MINUS_ZERO ? 0 : read;
  };
  let vertices = 0;
  for (let corner = 0; corner < 3 * count; corner++) {
    const at = HEAD + FACET * Math.floor(corner / 3) + 12 + 12 * (corner % 3);
    const [x, y, z] = [bits(at), bits(at + 4), bits(at + 8)];
    let slot = scatter(x, y, z) & mask;
    for (; ; slot = (slot + 1) & mask) {
      const v = table[slot]! - 1;
      if (v < 0) {
        places[3 * vertices] = x;
        places[3 * vertices + 1] = y;
        places[3 * vertices + 2] = z;
        triangles[corner] = vertices;
        table[slot] = ++vertices;
        break;
      }
      if (places[3 * v] === x && places[3 * v + 1] === y && places[3 * v + 2] === z) {
        triangles[corner] = v;
        break;
      }
    }
  }
  return { ok: true, mesh: { positions: new Float32Array(places.buffer, 0, 3 * vertices), triangles } };
}

/** Mixes three words so that their low bits depend on all: neighbours on a grid differ in few bits. */
function scatter(x: number, y: number, z: number): number {
  let h = Math.imul(x, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15) ^ y, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13) ^ z, 0xc2b2ae35);
  return h ^ (h >>> 16);
}

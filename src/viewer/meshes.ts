/** Unpacks the page's meshes. */
import { BufferAttribute, BufferGeometry } from 'three';
import type { PartData, SceneData } from './scene-data.js';

export async function unpack({ meshes }: SceneData): Promise<ArrayBuffer> {
  const packed = Uint8Array.from(atob(meshes), (c) => c.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'));
  return new Response(stream).arrayBuffer();
}

/** Every triangle keeps its own corners, so that flat faces stay flat. */
export function geometryOf(
  { at, vertices, triangles, indexBytes, min, step }: PartData,
  block: ArrayBuffer,
): BufferGeometry {
  const steps = new Uint16Array(block, at, 3 * vertices);
  const from = at + 6 * vertices + (indexBytes === 4 ? (4 - ((at + 6 * vertices) % 4)) % 4 : 0);
  const index =
    indexBytes === 2 ? new Uint16Array(block, from, 3 * triangles) : new Uint32Array(block, from, 3 * triangles);
  const positions = new Float32Array(9 * triangles);
  for (let i = 0; i < index.length; i++)
    for (let k = 0; k < 3; k++) positions[3 * i + k] = min[k]! + step * steps[3 * index[i]! + k]!;
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.computeVertexNormals();
  return geometry;
}

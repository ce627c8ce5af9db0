/** Small meshes written by hand, so that tests of the measures lean on no kernel. */
import type { Mesh, Vec3 } from '../../src/solid/mesh.js';

/** A block from one corner to the other, twelve triangles, outward. */
export function blockMesh([x0, y0, z0]: Vec3, [x1, y1, z1]: Vec3): Mesh {
  const at = (i: number) => [i & 1 ? x1 : x0, i & 2 ? y1 : y0, i & 4 ? z1 : z0];
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return {
    positions: Float32Array.from([0, 1, 2, 3, 4, 5, 6, 7].flatMap(at)),
    triangles: Uint32Array.from(quads.flatMap(([a, b, c, d]) => [a!, b!, c!, a!, c!, d!])),
  };
}

/** Right-angled tetrahedron on the origin with legs along the axes. */
export const tetrahedron = (a: number, b: number, c: number): Mesh => ({
  positions: Float32Array.from([0, 0, 0, a, 0, 0, 0, b, 0, 0, 0, c]),
  triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
});

/** Both meshes in one, not joined. */
export const both = (a: Mesh, b: Mesh): Mesh => ({
  positions: Float32Array.from([...a.positions, ...b.positions]),
  triangles: Uint32Array.from([...a.triangles, ...[...b.triangles].map((v) => v + a.positions.length / 3)]),
});

/** The same faces seen from within. */
export const insideOut = (mesh: Mesh): Mesh => ({ ...mesh, triangles: mesh.triangles.toReversed() });

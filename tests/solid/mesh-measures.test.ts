import { expect, test } from 'vitest';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import {
  handleCount,
  meshArea,
  meshBox,
  meshCentroid,
  meshVolume,
  pairEdges,
  shellCount,
} from '../../src/solid/mesh-measures.js';
import { box, cylinder } from '../../src/solid/shapes.js';
import { expectSolid } from './expect-solid.js';
import { blockMesh, both, insideOut, tetrahedron } from './meshes.js';

test('a block by hand: 4 · 6 · 9, far from the origin as near it', () => {
  expectSolid(blockMesh([1, 2, 3], [5, 8, 12]), {
    genus: 0,
    volume: 4 * 6 * 9,
    box: { min: [1, 2, 3], max: [5, 8, 12] },
  });
  expect(meshVolume(blockMesh([1001, 2002, 3003], [1005, 2008, 3012]))).toBeCloseTo(216, 9);
  expect(meshArea(blockMesh([1, 2, 3], [5, 8, 12]))).toBeCloseTo(2 * (24 + 36 + 54), 9);
  expect(meshCentroid(blockMesh([1, 2, 3], [5, 8, 12]))).toEqual([3, 5, 7.5]);
});

test('a tetrahedron by hand: a b c / 6, centroid at a quarter of each leg', () => {
  const mesh = tetrahedron(4, 6, 10);
  expectSolid(mesh, { genus: 0, volume: 40 });
  const [x, y, z] = meshCentroid(mesh);
  expect([x, y, z].map((c) => c.toFixed(9))).toEqual(['1.000000000', '1.500000000', '2.500000000']);
});

test('a mesh inside out has a volume below zero', () => {
  expect(meshVolume(insideOut(blockMesh([0, 0, 0], [2, 3, 4])))).toBeCloseTo(-24, 9);
});

test('a missing triangle leaves three open edges; a repeated one makes three that more than two share', () => {
  const mesh = blockMesh([0, 0, 0], [2, 3, 4]);
  expect(pairEdges(mesh)).toEqual({ open: 0, shared: 0, edges: 18 });
  expect(pairEdges({ ...mesh, triangles: mesh.triangles.slice(3) })).toMatchObject({ open: 3, shared: 0 });
  const repeated = Uint32Array.from([...mesh.triangles, ...mesh.triangles.slice(0, 3)]);
  expect(pairEdges({ ...mesh, triangles: repeated })).toMatchObject({ open: 3, shared: 3 });
});

test('a mesh in which one facet is turned over does not pair', () => {
  const mesh = blockMesh([0, 0, 0], [2, 3, 4]);
  const [a, b, c] = mesh.triangles;
  expect(pairEdges({ ...mesh, triangles: Uint32Array.from([a!, c!, b!, ...mesh.triangles.slice(3)]) }).open).toBe(6);
});

test('two blocks are two shells without handles', () => {
  const pair = both(blockMesh([0, 0, 0], [2, 3, 4]), blockMesh([5, 0, 0], [7, 3, 4]));
  expect([shellCount(pair), handleCount(pair)]).toEqual([2, 0]);
  expectSolid(pair, { shells: 2, genus: 0, volume: 48 });
});

test('through the kernel: a block with three holes has three handles, and the same volume and box', async () => {
  const k = await loadManifoldKernel();
  const drilled = k.subtract(
    box(k, [2, 3, 0], [40, 17, 6]),
    [7, 19, 31].map((x) => cylinder(k, { from: [x, 9, -1], to: [x, 9, 7], radius: 2.3, fit: 'hole' })),
  );
  const mesh = k.mesh(drilled);
  expectSolid(mesh, { genus: 3, box: { min: [2, 3, 0], max: [40, 17, 6] }, volume: k.volume(drilled) });
  expect(k.genus(drilled)).toBe(3);
  expect(k.box(drilled)).toEqual(meshBox(mesh));
  // By hand, the holes' polygons keeping within 0.01 mm outside their circles.
  const ideal = 38 * 14 * 6 - 3 * Math.PI * 2.3 ** 2 * 6;
  expectSolid(mesh, { volume: ideal, volumeWithin: 0.001 });
});

test('a closed empty or boundless mesh is refused where a figure would mean nothing', () => {
  const empty = { positions: new Float32Array(), triangles: new Uint32Array() };
  expect(() => meshBox(empty)).toThrow(RangeError);
  expect(() => meshCentroid(empty)).toThrow(RangeError);
});

import { describe, expect, test } from 'vitest';
import { type FineMesh, onGrid } from '../../src/outputs/stl-grid.js';
import { withoutSlivers } from '../../src/outputs/stl-slivers.js';
import { meshVolume, pairEdges, triangleArea } from '../../src/solid/mesh-measures.js';
import { blockMesh } from '../solid/meshes.js';

const block = blockMesh([0, 0, 0], [11, 7, 3]);
const sizes = (mesh: FineMesh) => ({
  positions: Float32Array.from(mesh.positions),
  triangles: mesh.triangles,
});

/** The block with points put on the side of a facet, in a row, each closed by facets without area as a boolean leaves them. */
function withPointsOnASide(count: number) {
  const triangles = [...block.triangles];
  const positions = [...block.positions];
  const [from, to, apex] = triangles.splice(0, 3) as [number, number, number];
  const point = (v: number) => positions.slice(3 * v, 3 * v + 3);
  let last = from;
  for (let i = 1; i <= count; i++) {
    const share = i / (count + 1);
    positions.push(...point(from).map((c, j) => c + (point(to)[j]! - c) * share));
    const here = positions.length / 3 - 1;
    triangles.push(last, here, apex, last, to, here);
    last = here;
  }
  triangles.push(last, to, apex);
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

describe('facets without area are turned over', () => {
  test.for([1, 2, 5])('%d points on one side: closed, the same volume, as many facets', (count) => {
    const mesh = withPointsOnASide(count);
    const found = withoutSlivers(mesh);
    const least = (one: FineMesh) =>
      Math.min(...Array.from({ length: one.triangles.length / 3 }, (_, t) => triangleArea(sizes(one), t)));
    expect(least(mesh)).toBeLessThan(1e-9);
    expect(least(found)).toBeGreaterThan(0.1);
    expect(pairEdges(sizes(found))).toMatchObject({ open: 0, shared: 0 });
    // By hand: 11 · 7 · 3.
    expect(meshVolume(sizes(found))).toBeCloseTo(231, 9);
    expect(found.triangles).toHaveLength(mesh.triangles.length);
  });
  test('a mesh without any comes back as it is', () => {
    const mesh = { positions: Float64Array.from(block.positions), triangles: block.triangles };
    expect(withoutSlivers(mesh)).toBe(mesh);
  });
});

describe('onto the grid of 1e-5 of the mean edge, here 7e-5', () => {
  test('two points closer than that become one, with the facets between them gone', () => {
    const corner = block.positions.length / 3;
    const v = block.triangles[0]!;
    // The corner v is split: one facet keeps the old point, and two thin ones join the new point to its neighbours.
    const at = block.triangles.findIndex((one, i) => i > 0 && one === v && i >= 3);
    const t = at - (at % 3);
    const [p, q] = [block.triangles[t + ((at + 1 - t) % 3)]!, block.triangles[t + ((at + 2 - t) % 3)]!];
    const triangles = [...block.triangles.with(at, corner), v, p, corner, v, corner, q];
    const positions = [...block.positions, ...block.positions.slice(3 * v, 3 * v + 3).map((c) => c + 2e-5)];
    const mesh = { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
    expect(pairEdges(mesh)).toMatchObject({ open: 0, shared: 0 });
    const found = onGrid(mesh);
    expect(found.triangles).toEqual(block.triangles);
    expect(meshVolume(sizes(found))).toBeCloseTo(231, 2);
  });
  test('no point moves by more than half a step', () => {
    const odd = blockMesh([0.123456, -2.345678, 0], [11.3456789, 7.000013, 3.2718281]);
    const found = onGrid(odd).positions;
    odd.positions.forEach((c, i) => {
      expect(Math.abs(found[i]! - c)).toBeLessThanOrEqual(4.0e-5);
    });
  });
  test('a fin thinner than a step goes: two facets back to back leave nothing', () => {
    // On the edge from corner 0 to corner 1 a fin stands out, its two sides apart by less than the grid can tell.
    const [tip, other] = [block.positions.length / 3, block.positions.length / 3 + 1];
    const at = block.triangles.findIndex((_, i) => isSide(block.triangles, i, 0, 1));
    const t = at - (at % 3);
    const apex = block.triangles.subarray(t, t + 3).find((v) => v > 1)!;
    const rest = [...block.triangles.subarray(0, t), ...block.triangles.subarray(t + 3)];
    const [a, b] = [block.triangles[at]!, block.triangles[at % 3 === 2 ? at - 2 : at + 1]!];
    const fin = [a, tip, b, b, tip, other, b, other, a, a, other, tip];
    const mesh = {
      positions: Float32Array.from([...block.positions, 5, -3, 0, 5, -3, 1e-5]),
      triangles: Uint32Array.from([...rest, a, b, apex, ...fin]),
    };
    const found = onGrid(mesh);
    expect(pairEdges(sizes(found))).toMatchObject({ open: 0, shared: 0 });
    expect(found.triangles).toHaveLength(block.triangles.length);
    expect(meshVolume(sizes(found))).toBeCloseTo(231, 3);
  });
});

const isSide = (triangles: Uint32Array, i: number, v: number, w: number) => {
  const next = triangles[i % 3 === 2 ? i - 2 : i + 1]!;
  return (triangles[i] === v && next === w) || (triangles[i] === w && next === v);
};

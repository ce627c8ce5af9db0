import { describe, expect, test } from 'vitest';
import { gateFile } from '../../src/outputs/gate.js';
import type { Mesh } from '../../src/solid/mesh.js';
import { blockMesh, both, insideOut } from '../solid/meshes.js';

/** A binary STL by hand, corner by corner. */
function fileOf({ positions, triangles }: Mesh): Uint8Array {
  const bytes = new Uint8Array(84 + (50 * triangles.length) / 3);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, triangles.length / 3, true);
  triangles.forEach((vertex, i) => {
    const at = 84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3);
    for (let c = 0; c < 3; c++) view.setFloat32(at + 4 * c, positions[3 * vertex + c]!, true);
  });
  return bytes;
}

const block = blockMesh([0, 0, 0], [11, 7, 3]);
const gate = (mesh: Mesh, { volume = 231, onBed = true } = {}) =>
  gateFile({ path: 'stl/block.stl', bytes: fileOf(mesh), volume, onBed });
const codes = (...args: Parameters<typeof gate>) => gate(...args).map(({ code }) => code);

/** The block with vertex `index` drawn elsewhere for triangle `triangle` only. */
const withCorner = (mesh: Mesh, corner: number, to: readonly [number, number, number]): Mesh => ({
  positions: Float32Array.from([...mesh.positions, ...to]),
  triangles: mesh.triangles.with(corner, mesh.positions.length / 3),
});

describe('each failure for its own reason', () => {
  test('a sound file passes', () => {
    expect(gate(block)).toEqual([]);
  });
  test('one triangle left out: its three edges stand open', () => {
    const findings = gate({ ...block, triangles: block.triangles.slice(0, -3) });
    expect(findings.map(({ code }) => code)).toContain('file/open-edge');
    expect(findings.find(({ code }) => code === 'file/open-edge')).toMatchObject({
      severity: 'error',
      measured: 3,
      limit: 0,
    });
  });
  test('a corner moved by a hair opens a crack, while the volume stays', () => {
    expect(codes(withCorner(block, 35, [11, 0, 3.0001]))).toEqual(['file/open-edge']);
  });
  test('two blocks along one edge: four faces meet there', () => {
    const findings = gate(both(block, blockMesh([11, 7, 0], [13, 9, 3])), { volume: 231 + 12 });
    expect(findings).toMatchObject([{ code: 'file/shared-edge', measured: 1 }]);
  });
  test('a facet squeezed to a line', () => {
    // A point on the edge 0–1 of the lower face, with the flat triangle that closes the seam.
    const n = block.positions.length / 3;
    const triangles = [...block.triangles];
    const first = triangles.findIndex(
      (v, i) =>
        i % 3 === 0 &&
        new Set([v, triangles[i + 1], triangles[i + 2]]).has(0) &&
        new Set([v, triangles[i + 1], triangles[i + 2]]).has(1),
    );
    const face = triangles.slice(first, first + 3);
    while (!(face[0] === 0 && face[1] === 1) && !(face[0] === 1 && face[1] === 0)) face.push(face.shift()!);
    const [from, to, apex] = face as [number, number, number];
    triangles.splice(first, 3, from, n, apex, n, to, apex, from, to, n);
    const mesh = {
      positions: Float32Array.from([...block.positions, 5, 0, 0]),
      triangles: Uint32Array.from(triangles),
    };
    expect(gate(mesh)).toMatchObject([{ code: 'file/degenerate-facet', measured: 1 }]);
  });
  test('a part above or below the bed', () => {
    expect(codes(blockMesh([0, 0, 0.01], [11, 7, 3.01]))).toEqual(['file/off-bed']);
    expect(codes(blockMesh([0, 0, -0.01], [11, 7, 2.99]))).toEqual(['file/off-bed']);
    expect(codes(blockMesh([0, 0, 4], [11, 7, 7]), { onBed: false })).toEqual([]);
  });
  test('a volume off by more than 5e-4, and one by less', () => {
    expect(codes(block, { volume: 231 * 1.0006 })).toEqual(['file/volume']);
    expect(codes(block, { volume: 231 * 0.9994 })).toEqual(['file/volume']);
    expect(codes(block, { volume: 231 * 1.0004 })).toEqual([]);
  });
  test('a mesh inside out', () => {
    expect(codes(insideOut(block))).toEqual(['file/volume']);
  });
  test('a file cut short, one too long, one shorter than its head', () => {
    const bytes = fileOf(block);
    const read = (b: Uint8Array) => gateFile({ path: 'stl/block.stl', bytes: b, volume: 231, onBed: true });
    expect(read(bytes.slice(0, -1))).toMatchObject([{ code: 'file/length', measured: 683, limit: 684 }]);
    expect(read(Uint8Array.from([...bytes, 0]))).toMatchObject([{ code: 'file/length', measured: 685, limit: 684 }]);
    expect(read(bytes.slice(0, 40))).toMatchObject([{ code: 'file/length', measured: 40, limit: 84 }]);
  });
  test('no triangle, or a coordinate that is no number', () => {
    expect(codes({ positions: new Float32Array(), triangles: new Uint32Array() })).toEqual(['file/empty']);
    expect(codes({ ...block, positions: block.positions.with(4, Number.NaN) })).toEqual(['file/not-finite']);
  });
});

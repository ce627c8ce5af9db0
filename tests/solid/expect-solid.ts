import { expect } from 'vitest';
import type { Box, Mesh } from '../../src/solid/mesh.js';
import { handleCount, meshBox, meshVolume, pairEdges, shellCount } from '../../src/solid/mesh-measures.js';

export interface ExpectedSolid {
  /** Handles: 0 for a ball, 1 for a ring. */
  readonly genus?: number;
  /** Separate shells; 1 unless said. */
  readonly shells?: number;
  readonly box?: Box;
  /** [mm³], within `volumeWithin` of itself, 1e-5 unless said: what float32 coordinates allow. */
  readonly volume?: number;
  readonly volumeWithin?: number;
}

/** A printable solid: finite, closed, outward, and of the form stated. */
export function expectSolid(
  mesh: Mesh,
  { genus, shells = 1, box, volume, volumeWithin = 1e-5 }: ExpectedSolid = {},
): void {
  expect(mesh.triangles.length, 'it has triangles').toBeGreaterThan(0);
  expect(mesh.positions.every(Number.isFinite), 'its coordinates are finite').toBe(true);
  expect(Math.max(...new Set(mesh.triangles)), 'its vertices exist').toBeLessThan(mesh.positions.length / 3);
  expect(pairEdges(mesh), 'every edge has its twin').toMatchObject({ open: 0, shared: 0 });
  expect(meshVolume(mesh), 'it is the right way out').toBeGreaterThan(0);
  expect(shellCount(mesh), 'separate shells').toBe(shells);
  if (genus !== undefined) expect(handleCount(mesh), 'handles').toBe(genus);
  if (box !== undefined) {
    const found = meshBox(mesh);
    for (const side of ['min', 'max'] as const)
      for (let i = 0; i < 3; i++) expect(found[side][i], `box ${side} ${'xyz'[i]}`).toBeCloseTo(box[side][i]!, 4);
  }
  if (volume !== undefined) {
    expect(meshVolume(mesh), 'volume').toBeGreaterThan(volume * (1 - volumeWithin));
    expect(meshVolume(mesh), 'volume').toBeLessThan(volume * (1 + volumeWithin));
  }
}

/** Reads every written STL back: what counts is the mesh in the file. */
import type { Finding } from '../findings.js';
import type { MeasuringKernel } from '../solid/kernel.js';
import type { Mesh } from '../solid/mesh.js';
import { meshBox, meshVolume, pairEdges } from '../solid/mesh-measures.js';
import type { ShapeFile } from './context.js';
import { readStl, type StlRead } from './stl-read.js';

/** Largest relative difference between the file's volume and the solid's. */
export const VOLUME_TOLERANCE = 5e-4;
/** How far the lowest point of a part to print may be off the bed [mm]. */
export const BED_TOLERANCE = 1e-4;
/** A facet less high than this over its longest side is a line [mm]. */
const LEAST_HEIGHT = 1e-7;

export interface GatedFile {
  readonly path: string;
  readonly bytes: Uint8Array;
  /** The solid's volume [mm³]. */
  readonly volume: number;
  /** To print: its lowest point is at z = 0. */
  readonly onBed: boolean;
}

/**
 * @param readOf - the reading of a file's bytes; what is made from the mesh later reads the same one
 * @returns what is wrong with the files, in their order
 */
export const gate = (
  shapes: readonly ShapeFile[],
  kernel: MeasuringKernel,
  readOf: (path: string) => StlRead,
): readonly Finding[] =>
  shapes.flatMap(({ path, folder, solid }) =>
    gateRead(readOf(path), { path, volume: kernel.volume(solid), onBed: folder === 'stl' }),
  );

/** @returns an error for each way in which the file fails; none for a sound file */
export const gateFile = ({ bytes, ...file }: GatedFile): readonly Finding[] => gateRead(readStl(bytes), file);

function gateRead(read: StlRead, { path, volume, onBed }: Omit<GatedFile, 'bytes'>): readonly Finding[] {
  if (!read.ok) {
    const message = `${path} is ${read.found} bytes long, its triangle count asks for ${read.wanted}.`;
    return [error(path, { code: 'file/length', measured: read.found, limit: read.wanted, unit: 'bytes', message })];
  }
  const { mesh } = read;
  if (mesh.triangles.length === 0) {
    const message = `${path} holds no triangle.`;
    return [error(path, { code: 'file/empty', measured: 0, limit: null, unit: '', message })];
  }
  const strange = mesh.positions.filter((c) => !Number.isFinite(c)).length;
  if (strange > 0) {
    const message = `${path} has ${strange} coordinates that are not finite numbers.`;
    return [error(path, { code: 'file/not-finite', measured: strange, limit: 0, unit: '', message })];
  }

  const findings: Finding[] = [];
  const none = (code: string, measured: number, what: string) => {
    if (measured > 0)
      findings.push(error(path, { code, measured, limit: 0, unit: '', message: `${path} has ${measured} ${what}.` }));
  };
  const { open, shared } = pairEdges(mesh);
  none('file/open-edge', open, 'open edges; a closed surface has none');
  none('file/shared-edge', shared, 'edges where more than two faces meet');
  none('file/degenerate-facet', degenerateCount(mesh), 'facets without area');

  const lowest = meshBox(mesh).min[2];
  if (onBed && !(Math.abs(lowest) <= BED_TOLERANCE)) {
    const message = `The lowest point of ${path} is at z = ${lowest.toFixed(4)} mm; it must lie on the bed, at 0.`;
    findings.push(error(path, { code: 'file/off-bed', measured: lowest, limit: 0, unit: 'mm', message }));
  }
  const found = meshVolume(mesh);
  if (!(Math.abs(found - volume) <= VOLUME_TOLERANCE * volume)) {
    const message = `${path} encloses ${found.toFixed(2)} mm³, the solid ${volume.toFixed(2)} mm³.`;
    findings.push(error(path, { code: 'file/volume', measured: found, limit: volume, unit: 'mm³', message }));
  }
  return findings;
}

function degenerateCount({ positions: p, triangles }: Mesh): number {
  let count = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i]!, 3 * triangles[i + 1]!, 3 * triangles[i + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    const [wx, wy, wz] = [vx - ux, vy - uy, vz - uz];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    // Twice the area is the height times the longest side.
    const longest = Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz, wx * wx + wy * wy + wz * wz);
    if (!(nx * nx + ny * ny + nz * nz > LEAST_HEIGHT * LEAST_HEIGHT * longest)) count++;
  }
  return count;
}

type Failure = Pick<Finding, 'code' | 'measured' | 'limit' | 'unit' | 'message'>;
const error = (subject: string, failure: Failure): Finding => ({
  ...failure,
  severity: 'error',
  subject,
  remedies: [],
});

/** Stress and strain at a leaf's surfaces, read from the elements' own forces. */
import { CHORD, M1, M2, PULL, T1, T2 } from './element.js';
import { bendBar, type Scratch } from './frame.js';
import type { LeafMesh, Station } from './leaf-mesh.js';

/** Surface stress at one place, fillets left out: to the left and right of travel along the path [MPa]; tension is positive. */
export interface StationStress {
  /** Length from the leaf's root [mm]. */
  readonly s: number;
  readonly left: number;
  readonly right: number;
}

/** Largest figures over all stations. */
export interface LeafPeaks {
  /** Largest surface strain, as a fraction, and stress [MPa]; a turn's inner face counts as a curved bar's, fillets are left out. */
  readonly maxStrain: number;
  readonly maxStress: number;
  /** Largest stress with the fillets' factor at both roots [MPa]. */
  readonly peakStress: number;
}

/** @param rootFactor - stress concentration at the fillets, 1 or more */
export function leafPeaks(mesh: LeafMesh, q: Float64Array, scratch: Scratch, rootFactor: number): LeafPeaks {
  let maxStrain = 0;
  let maxStress = 0;
  let peakStress = 0;
  walk(mesh, q, scratch, (station, bending, pull) => {
    const [left, right] = faces(station, mesh, bending, pull);
    const stress = Math.max(Math.abs(left), Math.abs(right));
    const axial = pull / (mesh.section.width * station.thickness);
    // Plate action raises the stress of a given curvature, not its strain.
    const strain = (Math.abs(axial) + (stress - Math.abs(axial)) / mesh.section.plate) / mesh.section.modulus;
    maxStrain = Math.max(maxStrain, strain);
    maxStress = Math.max(maxStress, stress);
    peakStress = Math.max(peakStress, station.root ? stress * rootFactor : stress);
  });
  return { maxStrain, maxStress, peakStress };
}

/** @returns the surface stress at every station, root first */
export function stressAlong(mesh: LeafMesh, q: Float64Array, scratch: Scratch): readonly StationStress[] {
  const out: StationStress[] = [];
  walk(mesh, q, scratch, (station, bending, pull) => {
    const [left, right] = faces(station, mesh, bending, pull);
    out.push({ s: station.s, left, right });
  });
  return out;
}

/** Bending moment, counter-clockwise on the part behind [N·mm], and axial force [N] at each station. */
function walk(
  mesh: LeafMesh,
  q: Float64Array,
  scratch: Scratch,
  visit: (station: Station, moment: number, pull: number) => void,
): void {
  const a = scratch.answer;
  let bent = -1;
  for (const station of mesh.stations) {
    const { bar, share, off, cos, sin } = station;
    if (bar !== bent) bendBar(mesh.frame, bar, q, scratch);
    bent = bar;
    const [m1, m2, pull] = [a[M1]!, a[M2]!, a[PULL]!];
    // Off the chord: at rest, and as the two turns bend the element (Hermite's cubic).
    const sag = a[CHORD]! * share * (1 - share) * ((1 - share) * a[T1]! - share * a[T2]!);
    const moment = -m1 + share * (m1 + m2) + pull * (off + sag);
    visit(station, moment, pull * cos - ((m1 + m2) / a[CHORD]!) * sin);
  }
}

/**
 * Stress on the two faces. A moment counter-clockwise stretches the right face; on a curved piece as in a curved bar,
 * σ = N/A + M (e + y) / (A e (R + y)), y outward.
 */
function faces(station: Station, mesh: LeafMesh, moment: number, pull: number): readonly [number, number] {
  const { thickness: t, curvature, shift } = station;
  const area = mesh.section.width * t;
  const even = pull / area;
  if (curvature === 0) {
    const bending = (6 * moment) / (area * t);
    return [even - bending, even + bending];
  }
  const radius = Math.abs(1 / curvature);
  const outward = moment * Math.sign(curvature);
  const at = (y: number) => even + (outward * (shift + y)) / (area * shift * (radius + y));
  return curvature > 0 ? [at(-t / 2), at(t / 2)] : [at(t / 2), at(-t / 2)];
}

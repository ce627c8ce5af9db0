/** Stress and strain at a leaf's surfaces, read from the elements' own forces. */
import { CHORD, M1, M2, PULL, T1, T2 } from './element.js';
import { bendBar, type Scratch } from './frame.js';
import type { LeafMesh } from './leaf-mesh.js';
import type { Station } from './stations.js';

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
  /** Largest stress with the factors of fillets and turns [MPa]. */
  readonly peakStress: number;
}

/** Stress over what beam theory gives: at the fillets of both roots, and on the path's arcs in turn (beyond the list: 1). */
export interface PeakFactors {
  readonly root: number;
  readonly turns: readonly number[];
}

/** Largest figures along the leaf, between the stations too. */
export function leafPeaks(mesh: LeafMesh, q: Float64Array, scratch: Scratch, factors: PeakFactors): LeafPeaks {
  const { stations, section } = mesh;
  let maxStrain = 0;
  let maxStress = 0;
  let peakStress = 0;
  // Stress on both faces at a piece's start, middle and end.
  const left = new Float64Array(3);
  const right = new Float64Array(3);
  let axial = 0;
  const take = (stress: number, factor: number) => {
    // Plate action raises the stress of a given curvature, not its strain.
    const strain = (axial + (stress - axial) / section.plate) / section.modulus;
    maxStrain = Math.max(maxStrain, strain);
    maxStress = Math.max(maxStress, stress);
    peakStress = Math.max(peakStress, stress * factor);
  };
  walk(mesh, q, scratch, (i, bending, pull) => {
    const station = stations[i]!;
    const third = i % 3;
    axial = Math.abs(pull) / (section.width * station.thickness);
    left[third] = faceStress(station, section.width, bending, pull, 1);
    right[third] = faceStress(station, section.width, bending, pull, -1);
    const turn = factors.turns[station.turn] ?? 1;
    const factor = station.root ? factors.root : turn;
    take(Math.abs(left[third]), factor);
    take(Math.abs(right[third]), factor);
    if (third < 2) return;
    take(between(left, station), turn);
    take(between(right, station), turn);
  });
  return { maxStrain, maxStress, peakStress };
}

/**
 * Largest size of a stress between a piece's ends, 0 where it is largest at one of them. On an arc moment and axial force are
 * exactly A + B cos ψ + C sin ψ of the angle ψ from its middle; elsewhere a parabola is near enough.
 */
function between([start, middle, end]: Float64Array, { curvature, cos }: Station): number {
  const odd = (end! - start!) / 2;
  const even = (start! + end!) / 2 - middle!;
  if (curvature === 0) {
    const at = -odd / (2 * even);
    return Math.abs(at) < 1 ? Math.abs(middle! + (odd * at) / 2) : 0;
  }
  const sin = Math.sqrt(1 - cos * cos);
  const b = even / (cos - 1);
  const c = odd / sin;
  const reach = Math.hypot(b, c);
  const size = Math.sign(middle!);
  // The extreme of the middle's own sign, if it lies on the arc.
  return (size * b) / reach > cos ? Math.abs(middle! - b + size * reach) : 0;
}

/** @returns the surface stress at every station, root first */
export function stressAlong(mesh: LeafMesh, q: Float64Array, scratch: Scratch): readonly StationStress[] {
  const out: StationStress[] = [];
  const { width } = mesh.section;
  walk(mesh, q, scratch, (i, bending, pull) => {
    const station = mesh.stations[i]!;
    const left = faceStress(station, width, bending, pull, 1);
    out.push({ s: station.s, left, right: faceStress(station, width, bending, pull, -1) });
  });
  return out;
}

/** Bending moment, counter-clockwise on the part behind [N·mm], and axial force [N] at each station. */
function walk(
  { frame, stations }: LeafMesh,
  q: Float64Array,
  scratch: Scratch,
  visit: (station: number, moment: number, pull: number) => void,
): void {
  const a = scratch.answer;
  let bent = -1;
  for (let i = 0; i < stations.length; i++) {
    const { bar, share, off, cos, sin } = stations[i]!;
    if (bar !== bent) bendBar(frame, bar, q, scratch);
    bent = bar;
    const m1 = a[M1]!;
    const sum = m1 + a[M2]!;
    const pull = a[PULL]!;
    const t1 = a[T1]!;
    const t2 = a[T2]!;
    // Off the chord and against it: at rest, and as the two turns bend the element (Hermite's cubic).
    const sag = a[CHORD]! * share * (1 - share) * ((1 - share) * t1 - share * t2);
    const slope = (1 - share) * (1 - 3 * share) * t1 - share * (2 - 3 * share) * t2;
    const moment = -m1 + share * sum + pull * (off + sag);
    visit(i, moment, pull * (cos - slope * sin) - (sum / a[CHORD]!) * (sin + slope * cos));
  }
}

/**
 * Stress on the left (side 1) or right (−1) face. A moment counter-clockwise stretches the right one; on a curved piece as in a
 * curved bar, σ = N/A + M (e + y) / (A e (R + y)), y outward.
 */
function faceStress(station: Station, width: number, moment: number, pull: number, side: 1 | -1): number {
  const { thickness: t, curvature, shift } = station;
  const area = width * t;
  if (curvature === 0) return pull / area - (side * 6 * moment) / (area * t);
  const y = (curvature > 0 ? -side : side) * (t / 2);
  const outward = curvature > 0 ? moment : -moment;
  return pull / area + (outward * (shift + y)) / (area * shift * (Math.abs(1 / curvature) + y));
}

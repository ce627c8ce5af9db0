/** A leaf's centreline cut into elements, with the stations at which its stress is read. */
import { type EndCorrection, UNCORRECTED } from '../end-correction.js';
import { along, type Point, type Stretch } from '../path.js';
import { requirePositive } from '../positive.js';
import { shearModulus } from '../section.js';
import { type Bar, type Frame, newFrame } from './frame.js';
import { type LeafSection, neutralShift, pieceStiffness, straightStiffness } from './natural-stiffness.js';

/** What bends: the leaf, built in where its path starts, the moving arm at its end. */
export interface LeafBeam {
  /** Centreline at rest, joined end to end. */
  readonly path: readonly Stretch[];
  /** t [mm], even or by the length s from the path's start. */
  readonly thickness: number | ((s: number) => number);
  /** b [mm]. */
  readonly width: number;
  /** E [MPa], ν [1]; G = E / (2 (1 + ν)). */
  readonly modulus: number;
  readonly poisson: number;
  /** A_s / A; default 5/6 (rectangle). Infinity: no shear deformation. */
  readonly shearFactor?: number;
  /** For one straight stretch only: m on E I, dl on its length, half of it at either end. Default: none. */
  readonly correction?: EndCorrection;
  /** Elastic arm from the leaf's end to the screw; default: rigid. */
  readonly arm?: { readonly path: readonly Stretch[]; readonly thickness: number };
  /** Elements per straight stretch and per half circle; default `MESH`. */
  readonly mesh?: Mesh;
}

export interface Mesh {
  readonly straight: number;
  readonly halfCircle: number;
}

/** A place along the leaf where stress is read. */
export interface Station {
  readonly bar: number;
  /** Along the chord as a share of it; off the chord at rest [mm]; heading against the chord at rest. */
  readonly share: number;
  readonly off: number;
  readonly cos: number;
  readonly sin: number;
  readonly thickness: number;
  /** Counter-clockwise positive [1/mm], 0 when straight. */
  readonly curvature: number;
  /** Shift of a curved piece's neutral axis [mm]. */
  readonly shift: number;
  /** Length from the path's start [mm]. */
  readonly s: number;
  /** At the fillets of post and arm. */
  readonly root: boolean;
}

export interface LeafMesh {
  readonly frame: Frame;
  /** Nodes: the leaf's end, and the arm's end, at the screw; the same when the arm is rigid. */
  readonly end: number;
  readonly tip: number;
  readonly stations: readonly Station[];
  readonly section: LeafSection;
}

/** The fewest elements that hold .1 % in angle, force and strain (`tests/benchmark/leaf-solve.mjs`). */
export const MESH: Mesh = { straight: 2, halfCircle: 2 };

/** Where the arm does not start at the leaf's end, a link this many times as stiff as the arm joins them. */
const LINK = 100;

/**
 * @throws {RangeError} on figures that are not finite and > 0, on an empty path, on a bend tighter than t/2, on a corrected leaf
 * that is not one straight stretch, or when the correction leaves no length
 */
export function meshLeaf(beam: LeafBeam): LeafMesh {
  const { width, modulus, poisson, shearFactor = 5 / 6, correction = UNCORRECTED, arm, mesh = MESH } = beam;
  requirePositive('leaf', { width, modulus, straight: mesh.straight, halfCircle: mesh.halfCircle });
  if (beam.path.length === 0) throw new RangeError('leaf: the path is empty');
  const thickness = typeof beam.thickness === 'number' ? () => beam.thickness as number : beam.thickness;
  const even = typeof beam.thickness === 'number';
  const extra = correction.length / 2;
  const corrected = extra !== 0 || correction.plate !== 1;
  if (corrected && !(beam.path.length === 1 && beam.path[0]!.curvature === 0 && even))
    throw new RangeError('leaf: end corrections hold for one straight stretch of even thickness');
  const path = corrected ? [lengthen(beam.path[0]!, extra)] : beam.path;
  const section: LeafSection = {
    width,
    modulus,
    shearModulus: shearModulus(modulus, poisson),
    shearFactor,
    plate: correction.plate,
  };

  const nodes: Point[] = [path[0]!.start];
  const bars: Bar[] = [];
  const stations: Station[] = [];
  const join = (to: Point, stiffness: Bar['stiffness']) => {
    nodes.push(to);
    bars.push({ from: nodes.length - 2, to: nodes.length - 1, stiffness });
  };
  let before = -extra;
  for (const stretch of path) {
    const count = elementsOf(stretch, mesh);
    const length = stretch.length / count;
    const straight = even && stretch.curvature === 0 ? evenStiffness(section, thickness(0), length) : undefined;
    for (let i = 0; i < count; i++) {
      const piece = pieceOf(stretch, i * length, length);
      const from = before + i * length;
      const at = (s: number) => thickness(from + s);
      readStations({ piece, bar: bars.length, from, at, stations });
      join(along(piece, length), straight ?? pieceStiffness(piece, section, at));
    }
    before += stretch.length;
  }
  markRoots(stations, extra);

  const end = nodes.length - 1;
  if (arm) {
    requirePositive('arm', { thickness: arm.thickness });
    const stout = { ...section, plate: 1 };
    const [x, y] = nodes[end]!;
    const start = arm.path[0]!.start;
    const gap = Math.hypot(start[0] - x, start[1] - y);
    if (gap > 1e-9) {
      const link = evenStiffness(stout, arm.thickness, gap);
      join(start, link.map((k) => k * LINK) as unknown as Bar['stiffness']);
    }
    for (const stretch of arm.path)
      join(
        along(stretch, stretch.length),
        pieceStiffness(stretch, stout, () => arm.thickness),
      );
  }
  const frame = newFrame({ nodes, bars, supports: [{ node: 0, holds: ['x', 'y', 'turn'] }] });
  return { frame, end, tip: nodes.length - 1, stations, section };
}

function elementsOf({ curvature, length }: Stretch, { straight, halfCircle }: Mesh): number {
  if (curvature === 0) return straight;
  return Math.max(1, Math.ceil((halfCircle * Math.abs(curvature) * length) / Math.PI - 1e-9));
}

function evenStiffness(section: LeafSection, t: number, length: number): Bar['stiffness'] {
  const { width, modulus, shearFactor, plate } = section;
  requirePositive('leaf', { thickness: t });
  const area = width * t;
  return straightStiffness(length, {
    axial: modulus * area,
    bending: (plate * modulus * area * t * t) / 12,
    shear: section.shearModulus * shearFactor * area,
  });
}

const pieceOf = (stretch: Stretch, s: number, length: number): Stretch => ({
  start: along(stretch, s),
  heading: stretch.heading + stretch.curvature * s,
  curvature: stretch.curvature,
  length,
});

function lengthen(stretch: Stretch, extra: number): Stretch {
  const length = stretch.length + 2 * extra;
  requirePositive('leaf', { correctedLength: length });
  return { ...stretch, start: along(stretch, -extra), length };
}

interface Reading {
  readonly piece: Stretch;
  readonly bar: number;
  readonly from: number;
  readonly at: (s: number) => number;
  readonly stations: Station[];
}

/** Both ends and the middle of a piece: the moment is linear along a straight one and largest at the apex of a turn. */
function readStations({ piece, bar, from, at, stations }: Reading): void {
  const [x0, y0] = piece.start;
  const [x1, y1] = along(piece, piece.length);
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const [c, z] = [(x1 - x0) / chord, (y1 - y0) / chord];
  for (const s of [0, piece.length / 2, piece.length]) {
    const [x, y] = along(piece, s);
    const heading = piece.heading + piece.curvature * s;
    stations.push({
      bar,
      share: ((x - x0) * c + (y - y0) * z) / chord,
      off: (y - y0) * c - (x - x0) * z,
      cos: Math.cos(heading) * c + Math.sin(heading) * z,
      sin: Math.sin(heading) * c - Math.cos(heading) * z,
      thickness: at(s),
      curvature: piece.curvature,
      shift: piece.curvature === 0 ? 0 : neutralShift(Math.abs(1 / piece.curvature), at(s)),
      s: from + s,
      root: false,
    });
  }
}

/** The outermost stations become the roots; on a lengthened leaf they move to where post and arm really begin. */
function markRoots(stations: Station[], extra: number): void {
  const last = stations.length - 1;
  const first = stations[0]!;
  const final = stations[last]!;
  const share = extra / (stations[2]!.s - first.s);
  stations[0] = { ...first, share: first.share + share, s: first.s + extra, root: true };
  stations[last] = { ...final, share: final.share - share, s: final.s - extra, root: true };
}

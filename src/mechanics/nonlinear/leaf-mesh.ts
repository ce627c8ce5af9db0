/** A leaf's centreline cut into elements, with the stations at which its stress is read. */

import { requirePositive } from '../../positive.js';
import { type EndCorrection, UNCORRECTED } from '../end-correction.js';
import { along, type Point, pathLength, type Stretch } from '../path.js';
import { shearModulus } from '../section.js';
import { type Bar, type Frame, newFrame } from './frame.js';
import { type LeafSection, pieceStiffness, straightStiffness } from './natural-stiffness.js';
import { readStations, type Station } from './stations.js';

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
  /** m on E I all along; dl on the length, half of it at either end, where the path must be straight. Default: none. */
  readonly correction?: EndCorrection;
  /** Elastic arm from the leaf's end to the screw; default: rigid. */
  readonly arm?: Arm;
  /** Elements per straight stretch and per half circle; default `MESH`, or `TAPERED` where the thickness changes. */
  readonly mesh?: Mesh;
}

/** As wide as the leaf and of the same material. */
export interface Arm {
  readonly path: readonly Stretch[];
  readonly thickness: number;
}

export interface Mesh {
  readonly straight: number;
  readonly halfCircle: number;
}

export interface LeafMesh {
  readonly frame: Frame;
  /** Nodes: the leaf's end, and the arm's end, at the screw; the same when the arm is rigid. */
  readonly end: number;
  readonly tip: number;
  readonly stations: readonly Station[];
  readonly section: LeafSection;
}

/** The fewest elements: angle, force and strain within .02 % up to 8° (`tests/benchmark/leaf-solve.mjs`). */
export const MESH: Mesh = { straight: 1, halfCircle: 1 };
/** For a notch: its thinnest place is a node, and the thickness changes little enough within an element. */
export const TAPERED: Mesh = { straight: 16, halfCircle: 4 };

/** Where the arm does not start at the leaf's end, a link this many times as stiff as the arm joins them. */
const LINK = 100;

/**
 * @throws {RangeError} on figures that are not finite and > 0, on an empty path, on a bend tighter than t/2, on a corrected leaf
 * of uneven thickness or with a bend at an end, or when the correction leaves no length there
 */
export function meshLeaf(beam: LeafBeam): LeafMesh {
  const { width, modulus, poisson, shearFactor = 5 / 6, correction = UNCORRECTED, arm } = beam;
  const mesh = beam.mesh ?? (typeof beam.thickness === 'number' ? MESH : TAPERED);
  requirePositive('leaf', { width, modulus });
  for (const [name, count] of Object.entries(mesh))
    if (!(Number.isInteger(count) && count > 0)) throw new RangeError(`leaf: ${name} must be 1, 2 …, got ${count}`);
  if (beam.path.length === 0) throw new RangeError('leaf: the path is empty');
  const thickness = typeof beam.thickness === 'number' ? () => beam.thickness as number : beam.thickness;
  const even = typeof beam.thickness === 'number';
  const extra = correction.length / 2;
  const corrected = extra !== 0 || correction.plate !== 1;
  if (corrected && !(beam.path[0]!.curvature === 0 && beam.path.at(-1)!.curvature === 0 && even))
    throw new RangeError('leaf: end corrections hold for straight ends of even thickness');
  const path = beam.path.map((stretch, i) =>
    lengthen(stretch, { before: i === 0 ? extra : 0, after: i === beam.path.length - 1 ? extra : 0 }),
  );
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
  const join: Join = (to, stiffness) => {
    nodes.push(to);
    bars.push({ from: nodes.length - 2, to: nodes.length - 1, stiffness });
  };
  const whole = pathLength(beam.path);
  let before = -extra;
  let arcs = 0;
  for (const stretch of path) {
    const turn = stretch.curvature === 0 ? -1 : arcs++;
    const count = elementsOf(stretch, mesh);
    const length = stretch.length / count;
    const straight = even && stretch.curvature === 0 ? evenStiffness(section, thickness(0), length) : undefined;
    for (let i = 0; i < count; i++) {
      const piece = pieceOf(stretch, i * length, length);
      const from = before + i * length;
      const at = (s: number) => thickness(from + s);
      const last = stretch === path[path.length - 1] && i === count - 1;
      readStations({ piece, bar: bars.length, from, at, stations, turn, whole, last });
      join(along(piece, length), straight ?? pieceStiffness(piece, section, at));
    }
    before += stretch.length;
  }

  const end = nodes.length - 1;
  if (arm) addArm(arm, section, { end: nodes[end]!, join });
  const frame = newFrame({ nodes, bars, supports: [{ node: 0, holds: ['x', 'y', 'turn'] }] });
  return { frame, end, tip: nodes.length - 1, stations, section };
}

type Join = (to: Point, stiffness: Bar['stiffness']) => void;

function addArm(arm: Arm, leaf: LeafSection, { end, join }: { readonly end: Point; readonly join: Join }): void {
  requirePositive('arm', { thickness: arm.thickness, stretches: arm.path.length });
  const section = { ...leaf, plate: 1 };
  const start = arm.path[0]!.start;
  const gap = Math.hypot(start[0] - end[0], start[1] - end[1]);
  if (gap > 1e-9) {
    const [k00, k01, k02, k11, k12, k22] = evenStiffness(section, arm.thickness, gap);
    join(start, [LINK * k00, LINK * k01, LINK * k02, LINK * k11, LINK * k12, LINK * k22]);
  }
  for (const stretch of arm.path)
    join(
      along(stretch, stretch.length),
      pieceStiffness(stretch, section, () => arm.thickness),
    );
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

function lengthen(stretch: Stretch, { before, after }: { readonly before: number; readonly after: number }): Stretch {
  if (before === 0 && after === 0) return stretch;
  const length = stretch.length + before + after;
  requirePositive('leaf', { correctedLength: length });
  return { ...stretch, start: along(stretch, -before), length };
}

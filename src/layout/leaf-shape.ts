/**
 * The leaf's centreline in the mount's profile plane, at rest and flexed. Coordinates (u, w) [mm]: u along the beam, positive
 * toward the field, w up; the leaf leaves the post's rear face at (0, 0). A flex is the angle by which the moving end has
 * turned in the sense that lowers the beam: clockwise with u to the right and w up.
 *
 * At rest a leaf is made of straight legs and half circles. Flexed, its curvature changes along the path as the bending
 * moment of a vertical force at the screw does, scaled so that the end turns by exactly the flex; its length is kept.
 */
import { foldPath } from '../mechanics/fold.js';
import { along, pathCentroid, pathLength, pathOf, type Stretch } from '../mechanics/path.js';
import type { Vec2 } from '../solid/mesh.js';
import type { Rad } from '../units.js';
import type { LeafDesign } from './types.js';

/** Where the moving arm begins. */
export interface LeafEnd {
  readonly at: Vec2;
  /** Absolute heading of travel along the leaf, counter-clockwise from +u. */
  readonly direction: Rad;
  /** Change of heading since rest, counter-clockwise: minus the flex. */
  readonly turn: Rad;
}

/** Rigid motion of the profile plane: p ↦ R(angle) p + (du, dw), angle counter-clockwise about (0, 0). */
export interface PlaneMotion {
  readonly angle: Rad;
  readonly du: number;
  readonly dw: number;
}

/** What of a leaf decides its shape. */
export type LeafForm = Pick<LeafDesign, 'layout' | 'legs' | 'length' | 'thickness' | 'legPitch' | 'lever'>;

/** One point of the path at rest. */
export interface PathPoint {
  readonly at: Vec2;
  readonly heading: number;
  /** Thickness there [mm]: constant, but for the notch. */
  readonly thickness: number;
}

/** How far a chord may stand off the centreline or the strip's faces [mm]. */
const CHORD = 0.004;
/** Longest step along a straight leg [mm]: at the sharpest bend a leaf survives (κ = .1 / mm) the chord error is .003. */
const STEP = 0.45;
/** How far the strip reaches into post and arm, so that unions overlap [mm]. */
const BURIED = 0.05;

/** @returns the leaf's length along its centreline [mm] @throws {RangeError} on a form that can't be drawn */
export const leafLength = (form: LeafForm): number => pathLength(leafPath(form));

/**
 * The point about which the moving end turns under a pure moment, for small flex: the centroid of the centreline, as every
 * element of length turns the end by the same angle about itself.
 *
 * @returns the point on the rest shape [mm] @throws {RangeError} on a form that can't be drawn
 * Source: Castigliano's theorem with an even moment; for the straight leaf Howell, Compliant Mechanisms (2001), small-length pivot (from memory).
 */
export const centreOfRotation = (form: Omit<LeafForm, 'lever'>): Vec2 => pathCentroid(leafPath(form));

/**
 * The centreline with the moving end turned by `flex`.
 *
 * The change of curvature is proportional to (u − u_screw) / h³ on the rest shape, h the local thickness, u_screw = centre
 * of rotation − lever. Linear beam theory for the distribution, exact geometry for the shape: at 10° the moment's arm has
 * changed by a few per cent, which moves the end by some hundredths of a millimetre.
 *
 * @param flex - turn in the sense that lowers the beam [rad]
 * @returns points from post to arm, chords within .005 mm, and the end's pose
 * @throws {RangeError} on a form that can't be drawn
 * Source: Euler–Bernoulli bending, Δκ = M / (E I).
 */
export function leafAtFlex(form: LeafForm, flex: Rad): { readonly points: readonly Vec2[]; readonly end: LeafEnd } {
  const path = bend(form, flex);
  const last = path[path.length - 1]!;
  const tail = leafPath(form).at(-1)!;
  const rest = tail.heading + tail.curvature * tail.length;
  const turn = -flex as Rad;
  return { points: path.map(({ at }) => at), end: { at: last.at, direction: (rest + turn) as Rad, turn } };
}

/** @returns the motion of the moving arm from one flex to another */
export function armMotion(form: LeafForm, from: Rad, to: Rad): PlaneMotion {
  const [u, w] = endAt(form, from);
  const [u2, w2] = endAt(form, to);
  const angle = (from - to) as Rad;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { angle, du: u2 - (c * u - s * w), dw: w2 - (s * u + c * w) };
}

/** Ends already computed: a mount asks a score of times for the same few poses of its leaf. */
const ends = new WeakMap<LeafForm, Map<Rad, Vec2>>();

function endAt(form: LeafForm, flex: Rad): Vec2 {
  const known = ends.get(form) ?? new Map<Rad, Vec2>();
  ends.set(form, known);
  const at = known.get(flex) ?? leafAtFlex(form, flex).end.at;
  known.set(flex, at);
  return at;
}

/**
 * The strip of material along the flexed centreline, square at both ends and .05 mm into post and arm.
 *
 * @returns one closed outline, counter-clockwise, last point not repeated
 * @throws {RangeError} on a form that can't be drawn
 */
export function leafStrip(form: LeafForm, flex: Rad): readonly Vec2[] {
  const path = bend(form, flex);
  const first = path[0]!;
  const last = path[path.length - 1]!;
  const whole = [ahead(first, -BURIED), ...path, ahead(last, BURIED)];
  const left = whole.map((p) => aside(p, p.thickness / 2));
  const right = whole.map((p) => aside(p, -p.thickness / 2));
  return [...right, ...left.reverse()];
}

/** Half of the slice along the leaf, and past both its faces [mm]: less than the air between legs. */
const SLICE = { along: 0.3, past: 0.15 } as const;

/** @returns a quadrilateral that cuts the leaf through in its middle, at that flex */
export function leafSlice(form: LeafForm, flex: Rad): readonly Vec2[] {
  const path = bend(form, flex);
  const middle = path[Math.floor(path.length / 2)]!;
  const [before, behind] = [ahead(middle, -SLICE.along), ahead(middle, SLICE.along)];
  const reach = middle.thickness / 2 + SLICE.past;
  return [aside(before, -reach), aside(behind, -reach), aside(behind, reach), aside(before, reach)];
}

interface Compliances {
  readonly parts: readonly { readonly stretch: Stretch; readonly nodes: readonly number[] }[];
  /** Of each step: the sum at its start, middle and end; in all. */
  readonly sums: readonly (readonly (readonly [number, number, number])[])[];
  readonly sum: number;
}

/** The same at every flex. */
const compliances = new WeakMap<LeafForm, Compliances>();

function sumUp(form: LeafForm): Compliances {
  const screw = centreOfRotation(form)[0] - form.lever;
  const parts = leafPath(form).map((stretch) => ({ stretch, nodes: nodesOf(form, stretch) }));
  const compliance = (stretch: Stretch, s: number) => (along(stretch, s)[0] - screw) / thicknessAt(form, s) ** 3;
  // Simpson's rule on every half step: the sum at each step's start, middle and end.
  let sum = 0;
  const sums = parts.map(({ stretch, nodes }) =>
    nodes.slice(1).map((to, i) => {
      const from = nodes[i]!;
      const f = [0, 0.25, 0.5, 0.75, 1].map((part) => compliance(stretch, from + part * (to - from)));
      const start = sum;
      const middle = start + ((f[0]! + 4 * f[1]! + f[2]!) * (to - from)) / 12;
      sum = middle + ((f[2]! + 4 * f[3]! + f[4]!) * (to - from)) / 12;
      return [start, middle, sum] as const;
    }),
  );
  const found = { parts, sums, sum };
  compliances.set(form, found);
  return found;
}

/** The flexed path, point by point, each with its heading. */
function bend(form: LeafForm, flex: Rad): PathPoint[] {
  if (!(form.lever > 0 && form.lever < Infinity)) throw new RangeError(`leaf: lever must be > 0, got ${form.lever}`);
  if (!Number.isFinite(flex)) throw new RangeError(`leaf: flex must be finite, got ${flex}`);
  const { parts, sums, sum } = compliances.get(form) ?? sumUp(form);
  const path: PathPoint[] = [];
  let [u, w] = [0, 0];
  parts.forEach(({ stretch, nodes }, k) => {
    const heading = (s: number, done: number) => stretch.heading + stretch.curvature * s - (flex * done) / sum;
    sums[k]!.forEach(([start, middle, end], i) => {
      const from = nodes[i]!;
      const to = nodes[i + 1]!;
      const angles = [heading(from, start), heading((from + to) / 2, middle), heading(to, end)] as const;
      if (path.length === 0) path.push({ at: [u, w], heading: angles[0], thickness: thicknessAt(form, 0) });
      // The chord of an arc that turns as much: exact where the curvature is even, which Simpson's rule is not.
      const half = (angles[2] - angles[0]) / 2;
      const chord = half === 0 ? to - from : ((to - from) * Math.sin(half)) / half;
      const mean = (angles[0] + 4 * angles[1] + angles[2]) / 6;
      u += chord * Math.cos(mean);
      w += chord * Math.sin(mean);
      path.push({ at: [u, w], heading: angles[2], thickness: thicknessAt(form, to) });
    });
  });
  return path;
}

/**
 * The rest shape's stretches, from post to arm: straight legs and half circles.
 *
 * @throws {RangeError} on a form that can't be drawn
 */
export function leafPath(form: Omit<LeafForm, 'lever'>): readonly Stretch[] {
  const { layout, legs, length, thickness, legPitch } = form;
  for (const [name, value] of Object.entries({ length, thickness })) {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`leaf: ${name} must be > 0, got ${value}`);
  }
  if (!(Number.isInteger(legs) && legs >= 1)) throw new RangeError(`leaf: legs must be 1 or more, got ${legs}`);
  if (legs > 1 && layout !== 'folded') throw new RangeError(`leaf: layout ${layout} has one leg, got ${legs}`);
  if (legs > 1 && !(legPitch > thickness && legPitch < Infinity))
    throw new RangeError(`leaf: legPitch must exceed the thickness ${thickness}, got ${legPitch}`);
  if (legs > 1) return foldPath({ legs, length, pitch: legPitch });
  const straight = layout === 'notch' ? 2 * length : length;
  return pathOf([0, 0], layout === 'upright' ? Math.PI / 2 : Math.PI, [{ curvature: 0, length: straight }]);
}

/** Lengths at which a stretch is sampled, 0 to its end. */
function nodesOf({ layout, length, thickness }: LeafForm, stretch: Stretch): readonly number[] {
  if (layout === 'notch') return notchNodes(length);
  const steps =
    stretch.curvature === 0
      ? Math.max(12, Math.ceil(stretch.length / STEP))
      : Math.ceil(Math.PI / (2 * Math.acos(1 - CHORD / (1 / Math.abs(stretch.curvature) + thickness / 2))));
  return even(stretch.length, steps);
}

const even = (length: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => (i * length) / steps);

/** A notch's faces are half circles of radius R: sampled at equal angles. */
function notchNodes(radius: number): number[] {
  const steps = Math.max(64, 2 * Math.ceil(Math.PI / (4 * Math.acos(1 - CHORD / radius))));
  return Array.from({ length: steps + 1 }, (_, i) => radius * (1 - Math.cos((Math.PI * i) / steps)));
}

/** Thickness after the length s of a stretch; the notch is t at its middle and opens with two half circles of radius R. */
function thicknessAt({ layout, length, thickness }: LeafForm, s: number): number {
  if (layout !== 'notch') return thickness;
  return thickness + 2 * (length - Math.sqrt(Math.max(0, length ** 2 - (s - length) ** 2)));
}

const ahead = (p: PathPoint, distance: number): PathPoint => ({
  ...p,
  at: [p.at[0] + distance * Math.cos(p.heading), p.at[1] + distance * Math.sin(p.heading)],
});

/** The point to the left of travel. */
const aside = ({ at, heading }: PathPoint, distance: number): Vec2 => [
  at[0] - distance * Math.sin(heading),
  at[1] + distance * Math.cos(heading),
];

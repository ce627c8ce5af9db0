/** A plane path of straight stretches and arcs: the centreline of a leaf. Coordinates (x, y) [mm]. */

export type Point = readonly [number, number];

/** Heading counter-clockwise from +x [rad]; curvature [1/mm], counter-clockwise positive, 0 when straight. */
export interface Stretch {
  readonly start: Point;
  readonly heading: number;
  readonly curvature: number;
  readonly length: number;
}

/** What a stretch adds to a path. */
export type Turn = Pick<Stretch, 'curvature' | 'length'>;

/** @returns the stretches joined end to end, without kinks unless a turn says so */
export function pathOf(
  start: Point,
  heading: number,
  turns: readonly (Turn & { readonly kink?: number })[],
): readonly Stretch[] {
  const out: Stretch[] = [];
  let at = start;
  let direction = heading;
  for (const { curvature, length, kink } of turns) {
    const stretch = { start: at, heading: direction + (kink ?? 0), curvature, length };
    out.push(stretch);
    at = along(stretch, length);
    direction = stretch.heading + curvature * length;
  }
  return out;
}

/** @returns the point of a stretch after the length s [mm] */
export function along({ start, heading, curvature }: Stretch, s: number): Point {
  if (curvature === 0) return [start[0] + s * Math.cos(heading), start[1] + s * Math.sin(heading)];
  const end = heading + curvature * s;
  return [
    start[0] + (Math.sin(end) - Math.sin(heading)) / curvature,
    start[1] + (Math.cos(heading) - Math.cos(end)) / curvature,
  ];
}

/** @returns where the path ends */
export function pathEnd(path: readonly Stretch[]): Point {
  const last = path[path.length - 1]!;
  return along(last, last.length);
}

/** @returns length along the path [mm] */
export const pathLength = (path: readonly Stretch[]): number => path.reduce((sum, { length }) => sum + length, 0);

/**
 * Centroid of a path, every element of length weighing the same. An arc's lies on its bisector, r sin(α)/α from its centre
 * with α half the opening angle.
 *
 * @returns the point [mm]
 * Source: Pappus; any handbook's table of centroids.
 */
export function pathCentroid(path: readonly Stretch[]): Point {
  const whole = pathLength(path);
  const sum = (axis: 0 | 1) => path.reduce((total, s) => total + s.length * centroid(s)[axis], 0);
  return [sum(0) / whole, sum(1) / whole];
}

function centroid(stretch: Stretch): Point {
  const { start, heading, curvature, length } = stretch;
  if (curvature === 0) return along(stretch, length / 2);
  const half = (curvature * length) / 2;
  const reach = Math.sin(half) / half / curvature;
  return [
    start[0] - Math.sin(heading) / curvature + reach * Math.sin(heading + half),
    start[1] + Math.cos(heading) / curvature - reach * Math.cos(heading + half),
  ];
}

/** Gauss–Legendre, 8 points on [−1, 1]. Source: Abramowitz & Stegun, Table 25.4. */
const NODES = [
  [0.18343464249565, 0.362683783378362],
  [0.525532409916329, 0.313706645877887],
  [0.796666477413627, 0.222381034453374],
  [0.960289856497536, 0.10122853629037],
] as const;

/**
 * Integral of f(point, heading) along the path: exact to rounding on straight stretches for polynomials up to degree 15, to
 * a part in 1e10 on half circles.
 */
export function integrate(path: readonly Stretch[], f: (at: Point, heading: number) => number): number {
  let sum = 0;
  for (const stretch of path) {
    const half = stretch.length / 2;
    const value = (s: number) => f(along(stretch, s), stretch.heading + stretch.curvature * s);
    for (const [node, weight] of NODES) sum += weight * half * (value(half * (1 - node)) + value(half * (1 + node)));
  }
  return sum;
}

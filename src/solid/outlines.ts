/**
 * Plane figures from which parts are drawn, and ways to move them. All mm; outer outlines come out counter-clockwise,
 * holes clockwise.
 *
 * Round figures are polygons within 0.01 mm of the circle. A hole is drawn around its circle (a pin of that radius
 * passes), a pin within it, so that a clearance between the two is never less than stated. A hole's polygon touches its
 * circle on both axes: its extents are the stated ones.
 */
import type { Outlines, Vec2 } from './mesh.js';
import { requireFinite, requireOutlines, requirePositive } from './numbers.js';

export type RoundFit = 'hole' | 'pin';
export interface RoundOptions {
  readonly fit: RoundFit;
}

/** Largest distance between a circle and its polygon [mm]. */
const SAGITTA = 0.01;

/**
 * Corners of the polygon that stands for a circle: n = 4 ⌈π / acos(1 − 0.01 / r) / 4⌉, at least 8.
 * @param radius - [mm], > 0
 * @returns a multiple of 4 [1]
 */
export function roundSegments(radius: number): number {
  requirePositive('circle: the radius', radius);
  return radius <= 2 * SAGITTA ? 8 : Math.max(8, 4 * Math.ceil(Math.PI / Math.acos(1 - SAGITTA / radius) / 4));
}

/** Rectangle between two corners, given in any order. */
export function rectangle(x0: number, y0: number, x1: number, y1: number): Outlines {
  requireFinite('rectangle: a coordinate', [x0, y0, x1, y1]);
  if (x0 === x1 || y0 === y1) throw new RangeError(`rectangle: no area between (${x0}, ${y0}) and (${x1}, ${y1})`);
  const [l, r, b, t] = [Math.min(x0, x1), Math.max(x0, x1), Math.min(y0, y1), Math.max(y0, y1)];
  return [
    [
      [l, b],
      [r, b],
      [r, t],
      [l, t],
    ],
  ];
}

/** A simple polygon, turned counter-clockwise where it is not. */
export function polygon(points: readonly Vec2[]): Outlines {
  requireOutlines('polygon', [points]);
  const area = signedArea(points);
  if (area === 0) throw new RangeError('polygon: it encloses no area');
  return [area > 0 ? points : points.toReversed()];
}

export function circle(center: Vec2, radius: number, { fit }: RoundOptions): Outlines {
  const n = roundSegments(radius);
  return [arc(center, radius, { fit, from: 0, steps: n, n }).slice(0, n)];
}

/** Ring: a pin outside, a hole inside. */
export function ring(center: Vec2, outer: number, inner: number): Outlines {
  if (!(outer > inner)) throw new RangeError(`ring: the outer radius ${outer} is not above the inner one ${inner}`);
  return [...circle(center, outer, { fit: 'pin' }), ...asHoles(circle(center, inner, { fit: 'hole' }))];
}

/** Rectangle whose corners are quarter circles of `radius`, at most half the shorter side. */
export function roundedRectangle(
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  radius: number,
  { fit }: RoundOptions = { fit: 'pin' },
): Outlines {
  const [[p, , q]] = rectangle(x0, y0, x1, y1) as [[Vec2, Vec2, Vec2]];
  if (!(radius <= Math.min(q[0] - p[0], q[1] - p[1]) / 2))
    throw new RangeError(`roundedRectangle: the radius ${radius} is above half the shorter side`);
  const n = roundSegments(radius);
  const corner = (x: number, y: number, quarter: number) =>
    arc([x, y], radius, { fit, from: (quarter * Math.PI) / 2, steps: n / 4, n });
  return [
    withoutRepeats([
      ...corner(q[0] - radius, q[1] - radius, 0),
      ...corner(p[0] + radius, q[1] - radius, 1),
      ...corner(p[0] + radius, p[1] + radius, 2),
      ...corner(q[0] - radius, p[1] + radius, 3),
    ]),
  ];
}

/** Regular hexagon. @param flats - distance across flats @param along - the axis along which that distance is measured */
export function hexagon(center: Vec2, flats: number, { along }: { readonly along: 'x' | 'y' }): Outlines {
  requirePositive('hexagon: the distance across flats', flats);
  requireFinite('hexagon: a coordinate', center);
  const h = flats / 2;
  const corner = flats / Math.sqrt(3);
  const points: readonly Vec2[] = [
    [corner, 0],
    [corner / 2, h],
    [-corner / 2, h],
    [-corner, 0],
    [-corner / 2, -h],
    [corner / 2, -h],
  ];
  const turned = along === 'y' ? points : points.map(([x, y]): Vec2 => [-y, x]);
  return [turned.map(([x, y]): Vec2 => [x + center[0], y + center[1]])];
}

export type RoofSide = '+x' | '-x' | '+y' | '-y';

/**
 * Hole that prints lying down: a circle whose upper quarter is a roof of two 45° flats tangent to it.
 * @param roof - the side that is up when it prints
 * @param top - where the roof is cut flat, from the centre, at least the radius; without it, it runs to its ridge at r √2
 */
export function teardrop(
  center: Vec2,
  radius: number,
  { roof, top }: { readonly roof: RoofSide; readonly top?: number },
): Outlines {
  requireFinite('teardrop: a coordinate', center);
  const n = 8 * Math.ceil(roundSegments(radius) / 8);
  const ridge = radius * Math.SQRT2;
  const flat = top ?? ridge;
  if (!(flat >= radius)) throw new RangeError(`teardrop: its flat top ${flat} is below the radius ${radius}`);
  // Drawn with the roof up (+y): three quarters of the circle from 135° round to 45°, then the roof.
  const round = arc([0, 0], radius, { fit: 'hole', from: (3 * Math.PI) / 4, steps: (3 * n) / 4, n });
  const over: readonly Vec2[] =
    flat >= ridge
      ? [[0, ridge]]
      : [
          [ridge - flat, flat],
          [flat - ridge, flat],
        ];
  const turns: Record<RoofSide, (p: Vec2) => Vec2> = {
    '+y': ([x, y]) => [x, y],
    '-y': ([x, y]) => [-x, -y],
    '+x': ([x, y]) => [y, -x],
    '-x': ([x, y]) => [-y, x],
  };
  return shift([[...round, ...over].map(turns[roof])], center);
}

/** @returns the points counter-clockwise, whichever way round they were written */
export const counterClockwise = (points: readonly Vec2[]): readonly Vec2[] =>
  signedArea(points) < 0 ? points.toReversed() : points;

/** What a circle covers that is pushed from one point to another. */
export function slot(from: Vec2, to: Vec2, radius: number, { fit }: RoundOptions = { fit: 'hole' }): Outlines {
  requireFinite('slot: a coordinate', [...from, ...to]);
  const along = Math.atan2(to[1] - from[1], to[0] - from[0]);
  if (from[0] === to[0] && from[1] === to[1]) throw new RangeError('slot: it has no length');
  const n = roundSegments(radius);
  const half = (center: Vec2, start: number) => arc(center, radius, { fit, from: start, steps: n / 2, n });
  return [withoutRepeats([...half(to, along - Math.PI / 2), ...half(from, along + Math.PI / 2)])];
}

/** The same outlines as holes: clockwise where they ran counter-clockwise, and the other way about. */
export const asHoles = (outlines: Outlines): Outlines => outlines.map((outline) => outline.toReversed());

/** Figures that do not overlap, as one. */
export const together = (...figures: readonly Outlines[]): Outlines => figures.flat();

export const shift = (outlines: Outlines, [dx, dy]: Vec2): Outlines =>
  outlines.map((outline) => outline.map(([x, y]): Vec2 => [x + dx, y + dy]));

/** Turned about the origin, counter-clockwise [rad]; quarter turns are exact. */
export function turn(outlines: Outlines, angle: number): Outlines {
  const [c, s] = [exact(Math.cos(angle)), exact(Math.sin(angle))];
  return outlines.map((outline) => outline.map(([x, y]): Vec2 => [c * x - s * y, s * x + c * y]));
}

/** Mirrored in the line `x = at` or `y = at`. */
export const mirror = (outlines: Outlines, axis: 'x' | 'y', at = 0): Outlines =>
  outlines.map((outline) =>
    outline.toReversed().map(([x, y]): Vec2 => (axis === 'x' ? [2 * at - x, y] : [x, 2 * at - y])),
  );

/** Area by the shoelace formula, above zero when counter-clockwise [mm²]. */
export function signedArea(points: readonly Vec2[]): number {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length]!;
    twice += x * v - u * y;
  });
  return twice / 2;
}

/**
 * Corners along an arc, counter-clockwise. A pin's lie on the circle, both ends included (steps + 1 of them); a hole's lie
 * outside, half a step off, on the tangents at both ends (steps of them).
 */
export function arc(
  center: Vec2,
  radius: number,
  { fit, from, steps, n }: RoundOptions & { readonly from: number; readonly steps: number; readonly n: number },
): readonly Vec2[] {
  requireFinite('arc: a coordinate', center);
  requirePositive('arc: the radius', radius);
  const r = fit === 'hole' ? radius / Math.cos(Math.PI / n) : radius;
  const count = fit === 'hole' ? steps : steps + 1;
  return Array.from({ length: count }, (_, i): Vec2 => {
    const angle = from + ((i + (fit === 'hole' ? 0.5 : 0)) * 2 * Math.PI) / n;
    return [center[0] + r * exact(Math.cos(angle)), center[1] + r * exact(Math.sin(angle))];
  });
}

function withoutRepeats(points: readonly Vec2[]): readonly Vec2[] {
  return points.filter((p, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    return Math.hypot(p[0] - before[0], p[1] - before[1]) > 1e-9;
  });
}

const exact = (value: number) => (Math.abs(value - Math.round(value)) < 1e-15 ? Math.round(value) : value);

/** Scaled about the origin by a factor above zero. */
export const scaled = (outlines: Outlines, factor: number): Outlines => {
  requirePositive('scaled: the factor', factor);
  return outlines.map((outline) => outline.map(([x, y]): Vec2 => [x * factor, y * factor]));
};

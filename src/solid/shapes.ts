/** Everyday solids on any kernel, drawn where they belong. All mm. */
import type { Kernel, Solid } from './kernel.js';
import { frame, translation } from './matrix.js';
import type { Outlines, Vec3 } from './mesh.js';
import { requireFinite, requirePositive, toGrid } from './numbers.js';
import { circle, type RoundFit, rectangle, roundSegments } from './outlines.js';

export type Axis = 'x' | 'y' | 'z';

/** Box between two corners, given in any order. */
export const box = (k: Kernel, min: Vec3, max: Vec3): Solid =>
  prism(k, rectangle(min[0], min[1], max[0], max[1]), { axis: 'z', from: min[2], to: max[2] });

/** The same solid at several places: cheaper than drawing it for each. */
export const atPlaces = (k: Kernel, solid: Solid, places: readonly Vec3[]): Solid[] =>
  places.map((at) => k.move(solid, translation(at)));

export interface PrismOptions {
  /** The outlines lie across it: given in (y, z) for x, (x, z) for y, (x, y) for z. */
  readonly axis: Axis;
  readonly from: number;
  readonly to: number;
}

/** Outlines extruded along an axis between two places on it. */
export function prism(k: Kernel, outlines: Outlines, { axis, from, to }: PrismOptions): Solid {
  requireFinite('prism: an end', [from, to]);
  const [low, high] = [toGrid(Math.min(from, to)), toGrid(Math.max(from, to))];
  const solid = k.extrude(outlines, high - low);
  if (axis === 'x') return k.move(solid, frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [low, 0, 0]));
  // x and z give a right-handed frame with −y: extruded backwards from the far end.
  if (axis === 'y') return k.move(solid, frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, high, 0]));
  return low === 0 ? solid : k.move(solid, frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, low]));
}

export interface CylinderOptions {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
  /** Around the true cylinder, or within it. */
  readonly fit: RoundFit;
}

/** Cylinder between the middles of its ends; exact along the axes, in any direction otherwise. */
export function cylinder(k: Kernel, { from, to, radius, fit }: CylinderOptions): Solid {
  const axis = axisBetween(from, to);
  if (axis === 'x') return prism(k, circle([from[1], from[2]], radius, { fit }), { axis, from: from[0], to: to[0] });
  if (axis === 'y') return prism(k, circle([from[0], from[2]], radius, { fit }), { axis, from: from[1], to: to[1] });
  if (axis === 'z') return prism(k, circle([from[0], from[1]], radius, { fit }), { axis, from: from[2], to: to[2] });
  const along = difference(to, from);
  return k.move(k.extrude(circle([0, 0], radius, { fit }), Math.hypot(...along)), frameAlong(from, along));
}

export interface ConeOptions {
  readonly from: Vec3;
  readonly to: Vec3;
  /** Radius at `from` and at `to`; one of them may be 0. */
  readonly radii: readonly [number, number];
  readonly fit: RoundFit;
}

/** Cone or frustum between the middles of its ends. */
export function cone(k: Kernel, { from, to, radii, fit }: ConeOptions): Solid {
  const along = difference(to, from);
  const length = Math.hypot(...along);
  requirePositive('cone: the length', length);
  requireFinite('cone: a radius', radii);
  if (Math.min(...radii) < 0) throw new RangeError(`cone: a radius is below 0 (${radii})`);
  const n = roundSegments(Math.max(...radii));
  const grow = fit === 'hole' ? 1 / Math.cos(Math.PI / n) : 1;
  const [a, b] = [radii[0] * grow, radii[1] * grow];
  const profile: [number, number][] = [
    [0, 0],
    [a, 0],
    [b, length],
    [0, length],
  ];
  return turnedAlong(
    k,
    profile.filter(([x], i) => x > 0 || i === 0 || i === 3),
    { from, along, n, fit },
  );
}

/** Solid of revolution about the line from `from` towards `to`: a profile of (radius, distance along), radii as drawn. */
export function turned(
  k: Kernel,
  profile: readonly (readonly [number, number])[],
  { from, to, fit = 'pin' }: { readonly from: Vec3; readonly to: Vec3; readonly fit?: RoundFit },
): Solid {
  const n = roundSegments(Math.max(...profile.map(([r]) => r)));
  const grow = fit === 'hole' ? 1 / Math.cos(Math.PI / n) : 1;
  return turnedAlong(
    k,
    profile.map(([r, h]): [number, number] => [r * grow, h]),
    { from, along: difference(to, from), n, fit },
  );
}

function turnedAlong(
  k: Kernel,
  profile: readonly (readonly [number, number])[],
  { from, along, n, fit }: { readonly from: Vec3; readonly along: Vec3; readonly n: number; readonly fit: RoundFit },
): Solid {
  // A hole's polygon touches its circle on the axes: half a step round from where the kernel starts.
  const half = fit === 'hole' ? Math.PI / n : 0;
  const m = frameAlong(from, along);
  const [c, s] = [Math.cos(half), Math.sin(half)];
  const column = (i: number): Vec3 => [m[i]!, m[4 + i]!, m[8 + i]!];
  const [x, y, z] = [column(0), column(1), column(2)];
  const u: Vec3 = [c * x[0] + s * y[0], c * x[1] + s * y[1], c * x[2] + s * y[2]];
  const v: Vec3 = [c * y[0] - s * x[0], c * y[1] - s * x[1], c * y[2] - s * x[2]];
  return k.move(k.revolve([profile], n), half === 0 ? m : frame(u, v, z, from));
}

/** Right-handed frame at a point whose z runs along a direction; along a coordinate axis it is made of the axes. */
function frameAlong(origin: Vec3, along: Vec3) {
  const length = Math.hypot(...along);
  requirePositive('the length of a direction', length);
  const z: Vec3 = [along[0] / length, along[1] / length, along[2] / length];
  // The coordinate axis least along z gives the frame's first direction; its part across z, its second.
  const i = [0, 1, 2].reduce((best, j) => (Math.abs(z[j]!) < Math.abs(z[best]!) ? j : best), 0);
  const pick: Vec3 = [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0];
  const y = unit(cross(z, pick));
  return frame(cross(y, z), y, z, origin);
}

function axisBetween(a: Vec3, b: Vec3): Axis | null {
  requireFinite('a coordinate', [...a, ...b]);
  const atPlaces = [0, 1, 2].filter((i) => a[i] !== b[i]);
  if (atPlaces.length === 0) throw new RangeError(`no length between (${a}) and (${b})`);
  return atPlaces.length === 1 ? (['x', 'y', 'z'] as const)[atPlaces[0]!]! : null;
}

const difference = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec3): Vec3 => {
  const l = Math.hypot(...a);
  return [a[0] / l, a[1] / l, a[2] / l];
};

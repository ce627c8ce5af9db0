/** Holes for screws, as cutters. Lying holes carry a 45° roof on the side that is up in print. */
import { threads } from '../components/index.js';
import { grown } from '../layout/fits.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';
import { teardrop } from '../solid/outlines.js';
import { cone, cylinder, prism, turned } from '../solid/shapes.js';
import type { Spec } from '../spec/spec.js';

export type Way = '+x' | '-x' | '+y' | '-y' | '+z' | '-z';

export interface HoleOptions {
  /** Middle of the hole on the face it starts from. */
  readonly at: Vec3;
  /** The way the screw goes in. */
  readonly way: Way;
  readonly depth: number;
  /** For a lying hole: which way is up in print. */
  readonly up?: '+z' | '-z';
}

const OVER = 1;
/** How far a sunk head lies below the face [mm]: tolerance of head and cone. */
const SUNK_BELOW = 0.1;

/** Clearance hole with a 90° countersink for the fixing screw's head (ISO 10642). */
export function sunkHole(k: Kernel, spec: Spec, options: HoleOptions): Solid {
  const thread = threads[spec.screws.fix];
  // The head's cone, sharp: its actual rim is narrower, its height counts from the sharp rim.
  const rim = thread.diameter.value / 2 + thread.sunkHeight.value + SUNK_BELOW;
  if (options.way[1] === 'z') {
    // Standing, head and shank are one turned figure.
    const shank = grown(spec, thread.clearance.value) / 2;
    const profile = [
      [0, 0],
      [rim + OVER, 0],
      [shank, OVER + rim - shank],
      [shank, OVER + options.depth],
      [0, OVER + options.depth],
    ] as const;
    return turned(k, profile, { from: along(options, -OVER), to: along(options, options.depth), fit: 'hole' });
  }
  const head = cone(k, {
    from: along(options, -OVER),
    to: along(options, rim),
    radii: [rim + OVER, 0],
    fit: 'hole',
  });
  return k.union([head, plainHole(k, spec, { ...options, diameter: thread.clearance.value })]);
}

/** Hole in which the fixing screw forms its own thread. */
export const pilotHole = (k: Kernel, spec: Spec, options: HoleOptions): Solid =>
  plainHole(k, spec, { ...options, diameter: threads[spec.screws.fix].pilot.value });

/** Round hole of a printed diameter: standing holes are drawn larger by what the printer closes them. */
export function plainHole(k: Kernel, spec: Spec, options: HoleOptions & { readonly diameter: number }): Solid {
  const { way, up, depth, diameter } = options;
  const start = along(options, -OVER);
  const end = along(options, depth);
  if (way[1] === 'z') return cylinder(k, { from: start, to: end, radius: grown(spec, diameter) / 2, fit: 'hole' });
  const roof = up === '-z' ? '-y' : '+y';
  const [x, y, z] = options.at;
  if (way[1] === 'x')
    return prism(k, teardrop([y, z], diameter / 2, { roof }), { axis: 'x', from: start[0], to: end[0] });
  return prism(k, teardrop([x, z], diameter / 2, { roof }), { axis: 'y', from: start[1], to: end[1] });
}

/** The point at a distance into the hole. */
function along({ at, way }: HoleOptions, distance: number): Vec3 {
  const step = way[0] === '+' ? distance : -distance;
  const axis = 'xyz'.indexOf(way[1]!);
  return [at[0] + (axis === 0 ? step : 0), at[1] + (axis === 1 ? step : 0), at[2] + (axis === 2 ? step : 0)];
}

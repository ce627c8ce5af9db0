/**
 * Sleeve around an emitter that is too short for a seat, has a flange or is to lean in it, one piece with the collar that rolls it.
 * File: z along the seat's axis, the collar's rear face on z = 0, on which it prints standing; a bore leans toward +x.
 */
import type { SleeveLayout } from '../layout/carrier.js';
import type { MountLayout } from '../layout/mount.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';
import { circle } from '../solid/outlines.js';
import { cylinder, prism, turned } from '../solid/shapes.js';
import { drawWheel } from './collar.js';

/** Past both faces that the bore goes through; how far tube and wheel reach into each other [mm]. */
const OVER = 1;

export function drawSleeve(
  k: Kernel,
  { barrel, collar, sleeve }: MountLayout & { readonly sleeve: SleeveLayout },
): Solid {
  const { bore, rearBore, coneFrom, lean, setBack } = sleeve;
  const exit: Vec3 = [0, 0, barrel.length - setBack];
  /** On the bore's axis, so far ahead of the emitter's front. */
  const on = (ahead: number): Vec3 => [ahead * Math.sin(lean), 0, exit[2] + ahead * Math.cos(lean)];
  const tube = prism(k, circle([0, 0], barrel.radius, { fit: 'pin' }), { axis: 'z', from: 0, to: barrel.length });
  const cone =
    coneFrom === null
      ? []
      : ([
          [rearBore, exit[2] - coneFrom],
          [bore, exit[2] - coneFrom + (rearBore - bore)],
        ] as const);
  // A leaning bore leaves both faces a little later on one side.
  const over = OVER + rearBore * Math.tan(lean);
  const profile = [[0, -over], [rearBore, -over], ...cone, [bore, exit[2] + over], [0, exit[2] + over]] as const;
  const hollow = turned(k, profile, { from: on(-exit[2]), to: on(0), fit: 'hole' });
  const body = k.union([drawWheel(k, collar, { marked: lean > 0 }), tube]);
  if (lean === 0) return k.subtract(body, [hollow]);
  const ahead = cylinder(k, { from: exit, to: on(2 * setBack + OVER), radius: barrel.radius + OVER, fit: 'pin' });
  return k.subtract(body, [hollow, ahead]);
}

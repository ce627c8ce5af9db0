/**
 * Sleeve around an emitter that is too short for a seat or has a flange, one piece with the collar that rolls it. File: z along the
 * beam, the collar's rear face on z = 0, on which it prints standing.
 */
import type { SleeveLayout } from '../layout/carrier.js';
import type { MountLayout } from '../layout/mount.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { circle } from '../solid/outlines.js';
import { prism, turned } from '../solid/shapes.js';
import { drawWheel } from './collar.js';

/** Past both faces that the bore goes through; how far tube and wheel reach into each other [mm]. */
const OVER = 1;

export function drawSleeve(
  k: Kernel,
  { barrel, collar, sleeve }: MountLayout & { readonly sleeve: SleeveLayout },
): Solid {
  const { bore, rearBore, coneFrom } = sleeve;
  const tube = prism(k, circle([0, 0], barrel.radius, { fit: 'pin' }), { axis: 'z', from: 0, to: barrel.length });
  const cone =
    coneFrom === null
      ? []
      : ([
          [rearBore, barrel.length - coneFrom],
          [bore, barrel.length - coneFrom + (rearBore - bore)],
        ] as const);
  const profile = [
    [0, -OVER],
    [rearBore, -OVER],
    ...cone,
    [bore, barrel.length + OVER],
    [0, barrel.length + OVER],
  ] as const;
  const hollow = turned(k, profile, { from: [0, 0, 0], to: [0, 0, 1], fit: 'hole' });
  return k.subtract(k.union([drawWheel(k, collar), tube]), [hollow]);
}

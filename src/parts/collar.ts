/** Collar on the barrel's rear: a notched wheel, turned with a key through the cover's slot. Prints flat. */
import { side } from '../layout/fits.js';
import type { MountLayout } from '../layout/mount.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { rectangle, ring, turn } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';
import type { Spec } from '../spec/spec.js';

export function drawCollar(k: Kernel, spec: Spec, { collar, barrel }: MountLayout): Solid {
  const wheel = prism(k, ring([0, 0], collar.outer, barrel.radius + side(spec, 'press')), {
    axis: 'z',
    from: 0,
    to: collar.length,
  });
  const notch = rectangle(
    collar.outer - collar.notchDepth,
    -collar.notchWidth / 2,
    collar.outer + 1,
    collar.notchWidth / 2,
  );
  const notches = Array.from({ length: collar.notches }, (_, i) =>
    prism(k, turn(notch, (2 * Math.PI * (i + 0.5)) / collar.notches), { axis: 'z', from: -1, to: collar.length + 1 }),
  );
  return k.subtract(wheel, notches);
}

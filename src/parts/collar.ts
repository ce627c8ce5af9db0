/** Collar on the barrel's rear: a notched wheel, turned with a key through the cover's slot. Prints flat. */
import { side } from '../layout/fits.js';
import type { MountLayout } from '../layout/mount.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { asHoles, circle, rectangle, turn } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';
import type { Spec } from '../spec/spec.js';

export const drawCollar = (k: Kernel, spec: Spec, { collar, barrel }: MountLayout): Solid =>
  drawWheel(k, collar, barrel.radius + side(spec, 'press'));

/** The wheel alone, on z = 0; `bore` is its hole's radius, left out: none. */
export function drawWheel(k: Kernel, collar: MountLayout['collar'], bore?: number): Solid {
  const rim = circle([0, 0], collar.outer, { fit: 'pin' });
  const hole = bore === undefined ? [] : asHoles(circle([0, 0], bore, { fit: 'hole' }));
  const wheel = prism(k, [...rim, ...hole], { axis: 'z', from: 0, to: collar.length });
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

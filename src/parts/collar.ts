/** Collar on the barrel's rear: a notched wheel, turned with a key through the cover's slot. Prints flat. */
import { side } from '../layout/fits.js';
import type { MountLayout } from '../layout/mount.js';
import { COLLAR } from '../layout/mount-sizes.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { asHoles, circle, rectangle, turn } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';
import type { Spec } from '../spec/spec.js';

export const drawCollar = (k: Kernel, spec: Spec, { collar, barrel }: MountLayout): Solid =>
  drawWheel(k, collar, { bore: barrel.radius + side(spec, 'press') });

export interface WheelOptions {
  /** Radius of its hole; left out: none. */
  readonly bore?: number;
  /** A flat on the rim toward +x, from one notch to the next: seen and felt through the cover's slot. */
  readonly marked?: boolean;
}

/** The wheel alone, on z = 0. */
export function drawWheel(
  k: Kernel,
  collar: MountLayout['collar'],
  { bore, marked = false }: WheelOptions = {},
): Solid {
  const rim = circle([0, 0], collar.outer, { fit: 'pin' });
  const hole = bore === undefined ? [] : asHoles(circle([0, 0], bore, { fit: 'hole' }));
  const wheel = prism(k, [...rim, ...hole], { axis: 'z', from: 0, to: collar.length });
  const notch = rectangle(
    collar.outer - collar.notchDepth,
    -collar.notchWidth / 2,
    collar.outer + 1,
    collar.notchWidth / 2,
  );
  const through = { axis: 'z', from: -1, to: collar.length + 1 } as const;
  const notches = Array.from({ length: collar.notches }, (_, i) =>
    prism(k, turn(notch, (2 * Math.PI * (i + 0.5)) / collar.notches), through),
  );
  if (!marked) return k.subtract(wheel, notches);
  // Ends in the middle of both notches.
  const half = collar.outer * Math.sin(Math.PI / collar.notches);
  const flat = rectangle(collar.outer - COLLAR.mark, -half, collar.outer + 1, half);
  return k.subtract(wheel, [...notches, prism(k, flat, through)]);
}

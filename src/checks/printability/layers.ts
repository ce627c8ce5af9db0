/** A solid's layers, as sections at their middles, and those among them in which something hangs. */
import type { MeasuringKernel, Solid } from '../../solid/kernel.js';
import type { Box, Mesh, Outlines, Vec2 } from '../../solid/mesh.js';
import { rectangle } from '../../solid/outlines.js';
import { type PrintLimits, RELIEF, RELIEF_REACH } from './limits.js';
import { type Within, within } from './outline-index.js';
import { type Underside, undersides } from './steep.js';
import { type Unsupported, unsupported } from './unsupported.js';

/** Sections are taken a little above a layer's middle: faces often lie at whole parts of layers [layers]. */
const ABOVE = 1e-3;

export interface Hanging {
  readonly layer: number;
  readonly pieces: readonly Unsupported[];
}

/**
 * Only layers into which an underside beyond the limit reaches are cut: elsewhere none adds more than the limit allows.
 * A pocket's ceiling that is narrower than half a bridge is held all around and is passed over.
 */
export function hangings(
  kernel: MeasuringKernel,
  solid: Solid,
  { limits, mesh }: { readonly limits: PrintLimits; readonly mesh: Mesh },
): readonly Hanging[] {
  const h = limits.layer;
  const top = kernel.box(solid).max[2];
  const middle = (i: number) => (i + 0.5 + ABOVE) * h;
  /** The first layer whose middle is above z. */
  const firstAbove = (z: number) => Math.floor(z / h - 0.5 - ABOVE) + 1;
  const windows = new Map<number, Outlines[]>();
  for (const one of undersides(mesh, { overhang: limits.overhang, above: middle(0) })) {
    const looked = lookedAt(kernel, one, limits);
    if (looked.length === 0) continue;
    for (let i = Math.max(1, firstAbove(one.box.min[2])); i <= firstAbove(one.box.max[2]); i++)
      if (middle(i) < top) windows.set(i, [...(windows.get(i) ?? []), ...looked]);
  }
  const { plane } = kernel;
  /** Is there something within relief below z? Cut when it is first asked for. */
  const floor = (z: number): Within => {
    const grounds = [0.5, 0.75, 1].map((share) => {
      const at = z - share * RELIEF;
      let ground: Within | null = null;
      return (point: Vec2) => {
        ground ??= at <= 0 ? () => true : within(kernel.section(solid, at));
        return ground(point);
      };
    });
    return (point) => grounds.some((ground) => ground(point));
  };
  return [...windows]
    .sort(([a], [b]) => a - b)
    .map(([layer, some]) => {
      const window = plane.union(some);
      const wider = plane.offset(window, AROUND, { corners: 'miter' });
      const around = kernel.section(solid, middle(layer), wider);
      return {
        layer,
        pieces: unsupported(
          plane,
          {
            layer: plane.intersection(around, window),
            around,
            beneath: kernel.section(solid, middle(layer - 1), wider),
            z: layer * h,
            floor: floor(layer * h),
          },
          limits,
        ),
      };
    });
}

/** Within a window a layer is seen so much further [mm]. */
const AROUND = 2;

/**
 * Where an underside has to be looked at. What is narrower than half a bridge (a lattice of lines is as wide as its lines) is
 * held wherever it is not near a free edge; without one, a pocket's ceiling, it is not looked at. Nor is a groove in the face on
 * the bed, where what it hangs by is near and the bed too.
 */
function lookedAt({ plane }: MeasuringKernel, one: Underside, { bridge }: PrintLimits): readonly Outlines[] {
  const { free, box } = one;
  const sides = [box.max[0] - box.min[0], box.max[1] - box.min[1]];
  const narrow = (width: number) => {
    if (Math.min(...sides) <= width) return true;
    const outlines = one.rim();
    return outlines !== null && plane.offset(outlines, -width / 2, { corners: 'miter' }).length === 0;
  };
  const whole = [around(box, bridge)];
  if (free.length === 0) return narrow(bridge / 2) ? [] : whole;
  if (Math.max(...sides) <= 4 * bridge) return whole;
  if (box.max[2] <= RELIEF && narrow(2 * RELIEF_REACH)) {
    const open = free.reduce((sum, { min, max }) => sum + Math.hypot(max[0] - min[0], max[1] - min[1]), 0);
    if (open <= FEW * one.around()) return [];
  }
  return narrow(bridge / 2) ? free.map((edge) => around(edge, bridge)) : whole;
}

/** A groove with so little of its rim open is held by the rest. */
const FEW = 0.1;

const around = ({ min, max }: Box, by: number): Outlines =>
  rectangle(min[0] - by, min[1] - by, max[0] + by, max[1] + by);

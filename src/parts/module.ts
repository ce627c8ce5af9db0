/**
 * Boards and batteries as simple solids, and what else is bought for the bay. A module's file holds board coordinates: x along its
 * length, y along its width, z up from its underside.
 */
import type { Connector, Module } from '../components/module.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { asHoles, circle, rectangle, together } from '../solid/outlines.js';
import { box, cylinder, prism } from '../solid/shapes.js';
import { JACK, jackOf } from '../spec/board-edge.js';

const INTO = 0.05;
/** Parts stand this far from the board's edges, beside clips; and from a hole's middle: screws' heads and posts are there. */
const INSET = 2.4;
const FROM_HOLE = 4;
const LAMP = { size: 1.6, rise: 1 } as const;
/** Half of the rod that leads a lamp's light, and air around it. */
const ROD = 1.8;
/** A knob is smaller than the hole it is worked through. */
const KNOB_LESS = 0.5;
const smaller = (size: number): number => size - Math.min(KNOB_LESS, size / 2);

/** @param reach - of knobs, above the board's underside */
export function drawModule(k: Kernel, part: Module, { reach }: { readonly reach: number }): Solid {
  const [l, w, t] = [part.length.value, part.width.value, part.thickness.value];
  if (part.cell) return box(k, [0, 0, 0], [l, w, t]);
  const holes = part.holes.value.map((at) => asHoles(circle(at, part.holeDiameter!.value / 2, { fit: 'hole' })));
  const [ix, iy] = insets(part);
  const block = (low: number, high: number) =>
    l > 2 * ix + 1 && w > 2 * iy + 1 && high - low > INTO + 0.01 ? [box(k, [ix, iy, low], [l - ix, w - iy, high])] : [];
  const top = t + part.above.value;
  const { window } = part;
  const glass = window
    ? [
        box(
          k,
          [window.value.x - window.value.width / 2, window.value.y - window.value.depth / 2, t - INTO],
          [window.value.x + window.value.width / 2, window.value.y + window.value.depth / 2, top],
        ),
      ]
    : [];
  const knobs = (part.knobs?.value ?? []).map(({ x, y, width, depth }) => {
    // It travels along the longer of the two.
    const half = Math.min(depth, smaller(width)) / 2;
    return box(k, [x - half, y - smaller(depth) / 2, t - INTO], [x + half, y + smaller(depth) / 2, reach]);
  });
  const lamps = (part.lamps?.value ?? []).map(([x, y]) =>
    box(k, [x - LAMP.size / 2, y - LAMP.size / 2, t - INTO], [x + LAMP.size / 2, y + LAMP.size / 2, t + LAMP.rise]),
  );
  // Lamps shine up: nothing stands over them, nor where their rods pass.
  const above = (part.lamps?.value ?? []).some(
    ([x, y]) => x > ix - ROD && x < l - ix + ROD && y > iy - ROD && y < w - iy + ROD,
  );
  return k.union([
    prism(k, together(rectangle(0, 0, l, w), ...holes), { axis: 'z', from: 0, to: t }),
    ...(above ? [] : block(t - INTO, glass.length > 0 ? t + Math.min(1, part.above.value) : top)),
    ...block(-part.below.value, INTO),
    ...glass,
    ...knobs,
    ...lamps,
    ...part.connectors.value.filter(({ access }) => access === 'outside').map((connector) => shell(k, part, connector)),
  ]);
}

/** Along which axis a hole is nearer to the edge, parts keep clear of it along that one. */
function insets({ holes, length, width }: Module): readonly [number, number] {
  const away = holes.value.map(([x, y]) => [Math.min(x, length.value - x), Math.min(y, width.value - y)] as const);
  const along = (own: 0 | 1) =>
    Math.max(INSET, ...away.filter((d) => (own === 0 ? d[0] <= d[1] : d[1] < d[0])).map((d) => d[own] + FROM_HOLE));
  return [along(0), along(1)];
}

/** What a plug goes into, as high as it needs to be for the plug. */
function shell(k: Kernel, part: Module, connector: Connector): Solid {
  const [x0, y0, x1, y1] = jackOf(part, connector);
  const top = connector.up + Math.max(1, connector.height - JACK.less) / 2;
  return box(k, [x0, y0, part.thickness.value - INTO], [x1, y1, Math.max(part.thickness.value + 1, top)]);
}

/** Rod that leads light, from 0 up. */
export const drawLightPipe = (k: Kernel, { diameter, length }: { diameter: number; length: number }): Solid =>
  cylinder(k, { from: [0, 0, 0], to: [0, 0, length], radius: diameter / 2, fit: 'pin' });

/** Self-adhesive foot, hanging from 0. */
export const FOOT = { diameter: 10, height: 3 } as const;
export const drawFoot = (k: Kernel): Solid =>
  cylinder(k, { from: [0, 0, 0], to: [0, 0, -FOOT.height], radius: FOOT.diameter / 2, fit: 'pin' });

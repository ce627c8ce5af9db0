/**
 * Receiver socket: foot with slot, aperture tube, pocket open above, stop behind. File coordinates: x = u (front at 0, rear
 * negative), y across (middle at 0), z up from its underside; it prints as it stands.
 */
import { threads } from '../components/index.js';
import { grown } from '../layout/fits.js';
import { type SocketLayout, TUBE_ROOF } from '../layout/socket.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { polygon, ring, slot, teardrop } from '../solid/outlines.js';
import { box, prism } from '../solid/shapes.js';
import type { Spec } from '../spec/spec.js';

const OVER = 1;
/** Target on the face: depths of rings and cross (two, as grounds in one plane would leave slivers where they meet), line width, its rings' distances from the tube, and what is left beside them [mm]. */
const TARGET = { ring: 0.3, cross: 0.4, line: 0.6, rings: [1.1, 2.6], beside: 0.9 } as const;

export function drawReceiverSocket(k: Kernel, spec: Spec, s: SocketLayout): Solid {
  const half = s.width / 2;
  const z = (w: number) => w - s.bottom;
  const screwHole = grown(spec, threads[spec.screws.fix].clearance.value) / 2;
  const pocketHalf = s.pocket.width / 2;
  const channelHalf = s.pocket.channel / 2;
  const body = k.union([
    box(k, [-s.length, -half, 0], [0, half, z(s.foot.top)]),
    box(k, [-s.length, -half, 0], [s.face, half, z(s.top)]),
  ]);
  return k.subtract(body, [
    prism(k, slot([s.foot.screwAt, -s.slide], [s.foot.screwAt, s.slide], screwHole), {
      axis: 'z',
      from: -OVER,
      to: z(s.foot.top) + OVER,
    }),
    prism(k, teardrop([0, z(s.axis)], s.tube.radius, { roof: '+y', top: s.tube.radius * TUBE_ROOF }), {
      axis: 'x',
      from: s.tube.end - 0.1,
      to: s.face + OVER,
    }),
    box(k, [s.pocket.rear, -pocketHalf, z(s.pocket.floor)], [s.tube.end, pocketHalf, z(s.top) + OVER]),
    // Over the stop the legs leave to the rear between the cheeks.
    box(k, [-s.length - OVER, -channelHalf, z(s.stop.top)], [s.pocket.rear + 0.1, channelHalf, z(s.top) + OVER]),
    ...(channelHalf > pocketHalf
      ? [box(k, [s.pocket.rear, -channelHalf, z(s.pocket.channelFrom)], [s.tube.end, channelHalf, z(s.top) + OVER])]
      : []),
    box(
      k,
      [s.groove.at - s.groove.width / 2, -half - OVER, -OVER],
      [s.groove.at + s.groove.width / 2, half + OVER, s.groove.depth],
    ),
    ...target(s).map(({ outlines, depth }) =>
      prism(k, outlines, { axis: 'x', from: s.face - depth, to: s.face + OVER }),
    ),
  ]);
}

/** Rings and a cross around the aperture, in (y, z): where the beam lands before it is aligned. */
function target(s: SocketLayout) {
  const [cy, cz] = [0, s.axis - s.bottom];
  const line = TARGET.line / 2;
  // A ring that reaches the side would leave slivers there.
  const most = s.width / 2 - TARGET.beside - line;
  const radii = TARGET.rings.map((off) => s.tube.radius + off).filter((r) => r <= most);
  const rings = radii.map((r) => ({ outlines: ring([cy, cz], r + line, r - line), depth: TARGET.ring }));
  const reach = s.width / 2 + OVER;
  const start = s.tube.radius + 0.7;
  const bar = (a: number, b: number) => ({
    outlines: polygon([
      [a, cz - line],
      [b, cz - line],
      [b, cz + line],
      [a, cz + line],
    ]),
    depth: TARGET.cross,
  });
  return [...rings, bar(-reach, -start), bar(start, reach)];
}

/** Lid of the pocket: a plate with a plug that holds the legs down. Prints on its plate; the plug's length is along x. */
export function drawSocketLid(k: Kernel, spec: Spec, s: SocketLayout): Solid {
  const press = spec.printer.machine.press.value;
  const snug = spec.printer.machine.snug.value;
  const half = s.width / 2;
  const plugHalf = (s.pocket.channel - press) / 2;
  const depth = s.top - s.lid.plugBottom;
  const rear = -s.length;
  return k.union([
    box(k, [rear, -half, 0], [s.face, half, s.lid.thickness]),
    box(k, [rear + 0.2, -plugHalf, s.lid.thickness - 0.2], [s.tube.end - snug, plugHalf, s.lid.thickness + depth]),
  ]);
}

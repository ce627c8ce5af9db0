/**
 * Bought parts as simple solids, threads at their nominal diameter. Screws: the head's outer face at the origin, the tip toward
 * −z. Nuts: on z = 0. Pins and barrels: along z. They take part in every check and are never printed.
 */
import { threads } from '../components/index.js';
import type { Receiver, ScrewSize } from '../components/types.js';
import type { MountLayout } from '../layout/mount.js';
import type { SocketLayout } from '../layout/socket.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';
import { asHoles, circle, hexagon, together } from '../solid/outlines.js';
import { box, cylinder, prism, turned } from '../solid/shapes.js';

export interface ScrewShape {
  readonly size: ScrewSize;
  readonly length: number;
}

const INTO = 0.05;

/** Socket head cap screw, ISO 4762: length under the head. */
export function drawCapScrew(k: Kernel, { size, length }: ScrewShape): Solid {
  const t = threads[size];
  const head = t.capHeight.value;
  return downward(k, [
    [t.capHead.value / 2, 0],
    [t.capHead.value / 2, head],
    [t.diameter.value / 2, head],
    [t.diameter.value / 2, head + length],
  ]);
}

/** Countersunk socket screw, ISO 10642: length over all; the head's rim is narrower than the cone's sharp edge. */
export function drawSunkScrew(k: Kernel, { size, length }: ScrewShape): Solid {
  const t = threads[size];
  const shank = t.diameter.value / 2;
  const rim = t.sunkHead.value / 2;
  const land = Math.max(0.05, t.sunkHeight.value - (rim - shank));
  return downward(k, [
    [rim, 0],
    [rim, land],
    [shank, t.sunkHeight.value],
    [shank, length],
  ]);
}

/** One turned figure about z, from the origin toward −z: radius and depth along its outside. Pieces put together leave slivers. */
const downward = (k: Kernel, outside: readonly (readonly [radius: number, depth: number])[]): Solid =>
  turned(k, [[0, 0], ...outside, [0, outside.at(-1)![1]]], { from: [0, 0, 0], to: [0, 0, -1] });

/** Set screw with flat point, ISO 4026. */
export const drawSetScrew = (k: Kernel, { size, length }: ScrewShape): Solid =>
  rod(k, threads[size].diameter.value / 2, -length, 0);

/** Hexagon nut, ISO 4032; flats across y. */
export function drawNut(k: Kernel, size: ScrewSize): Solid {
  const t = threads[size];
  const outline = together(
    hexagon([0, 0], t.nutFlats.value, { along: 'x' }),
    asHoles(circle([0, 0], t.diameter.value / 2, { fit: 'hole' })),
  );
  return prism(k, outline, { axis: 'z', from: 0, to: t.nutHeight.value });
}

export const drawPin = (k: Kernel, { radius, length }: { radius: number; length: number }): Solid =>
  rod(k, radius, 0, length);

/** Emitter: front face at the origin, body toward −z, with the flange at its rear where it has one. */
export function drawBarrel(k: Kernel, { barrel, sleeve }: MountLayout): Solid {
  if (!sleeve) return rod(k, barrel.radius, -barrel.length, 0);
  const { body, flange } = sleeve;
  if (!flange) return rod(k, body.radius, -body.length, 0);
  const shoulder = body.length - flange.length;
  return downward(k, [
    [body.radius, 0],
    [body.radius, shoulder],
    [flange.radius, shoulder],
    [flange.radius, body.length],
  ]);
}

/** The pair of wires along its path; the mount's file coordinates. */
export function drawWires(k: Kernel, { wire, width }: MountLayout): Solid {
  const points = wire.path.map(([u, v, w]): Vec3 => [u, w, width / 2 + v]);
  const pieces = points.slice(1).map((to, i) => {
    const from = points[i]!;
    // Equal cylinders that meet leave slivers: every other piece is a little thinner.
    const radius = (wire.diameter / 2) * (i % 2 === 0 ? 1 : 0.97);
    // Each piece runs on by its radius, so that bends are filled.
    const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
    const on = (p: Vec3, by: number): Vec3 => [
      p[0] + ((to[0] - from[0]) * by) / length,
      p[1] + ((to[1] - from[1]) * by) / length,
      p[2] + ((to[2] - from[2]) * by) / length,
    ];
    return cylinder(k, {
      from: i === 0 ? from : on(from, -radius * 0.4),
      to: i === points.length - 2 ? to : on(to, radius * 0.4),
      radius,
      fit: 'pin',
    });
  });
  return k.union(pieces);
}

/** Receiver: x = u with its front at 0, y across, z up with the sensitive spot at 0; legs up and bent back over the stop. */
export function drawReceiver(k: Kernel, receiver: Receiver, s: SocketLayout): Solid {
  const depth = receiver.depth.value;
  const half = receiver.width.value / 2;
  const bottom = -receiver.sensorFromTop.value;
  const top = bottom + receiver.height.value;
  const leg = receiver.legWidth.value;
  const legTop = s.legs.top - s.axis;
  const middle = -depth / 2;
  const rear = s.legs.out - s.tube.end;
  const pieces = [box(k, [-depth, -half, bottom], [0, half, top])];
  const spread = ((receiver.legs.value - 1) * receiver.legPitch.value + leg) / 2;
  // Formed legs leave the body closer together and are bent outward right above it.
  if (spread > half)
    pieces.push(box(k, [middle - leg / 2, -spread, top - INTO], [middle + leg / 2, spread, top + leg]));
  for (let i = 0; i < receiver.legs.value; i++) {
    const y = (i - (receiver.legs.value - 1) / 2) * receiver.legPitch.value;
    pieces.push(box(k, [middle - leg / 2, y - leg / 2, top - INTO], [middle + leg / 2, y + leg / 2, legTop]));
    pieces.push(box(k, [rear, y - leg / 2, legTop - leg], [middle + leg / 2, y + leg / 2, legTop]));
  }
  return k.union(pieces);
}

const rod = (k: Kernel, radius: number, from: number, to: number): Solid =>
  cylinder(k, { from: [0, 0, from], to: [0, 0, to], radius, fit: 'pin' });

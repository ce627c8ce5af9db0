/** Receiver rail: a window per beam as wide as the slide needs, a plinth for the sockets, a ridge that keeps them square. Prints on its floor. */
import { upTenth } from '../layout/fits.js';
import type { Layout } from '../layout/layout.js';
import type { RailSegment } from '../layout/runs.js';
import { SOCKET_RIDGE } from '../layout/socket.js';
import type { Printer } from '../printers/printer.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { polygon } from '../solid/outlines.js';
import { atPlaces, box, prism } from '../solid/shapes.js';
import { boardGuides } from './board-guides.js';
import { pilotHole } from './holes.js';
import { railBody } from './rail.js';

const INTO = 0.2;
const WINDOW_PLAY = 0.5;
/** Half of the plinth under the sockets' rear, along y. */
const PLINTH_HALF = 3;

export function drawReceiverRail(k: Kernel, layout: Layout, segment: RailSegment): Solid {
  const { section } = layout.frame;
  const { socket, spec } = layout;
  const beamZ = spec.beam.height - section.bottom;
  const half = layout.corridor / 2 + WINDOW_PLAY;
  const windows = segment.beams.map((x) => roofed([x, beamZ], [half + socket.slide, half], spec.printer.machine));
  const { add, cut } = railBody(k, layout, { segment, windows });
  const top = section.floor + socket.bottom;
  const front = section.socketFront;
  const ridge = front - socket.groove.at;
  add.push(
    box(k, [0, front + 0.2, section.floor - INTO], [segment.length, front + socket.foot.length - 0.2, top]),
    ridged(k, { at: ridge, from: section.floor - INTO, top, length: segment.length }),
    ...boardGuides(k, layout, segment),
  );
  const pilot = pilotHole(k, spec, {
    at: [0, front - socket.foot.screwAt, top],
    way: '-z',
    depth: socket.engaged + 1,
  });
  cut.push(
    ...atPlaces(
      k,
      pilot,
      segment.beams.map((x) => [x, 0, 0]),
    ),
  );
  return k.subtract(k.union(add), cut);
}

/** Plinth with the ridge on it, as one figure: two boxes flush at the rail's ends would leave slivers there. */
function ridged(
  k: Kernel,
  {
    at,
    from,
    top,
    length,
  }: { readonly at: number; readonly from: number; readonly top: number; readonly length: number },
): Solid {
  const half = SOCKET_RIDGE.width / 2;
  const high = top + SOCKET_RIDGE.depth;
  const outline = polygon([
    [at - PLINTH_HALF, from],
    [at + PLINTH_HALF, from],
    [at + PLINTH_HALF, top],
    [at + half, top],
    [at + half, high],
    [at - half, high],
    [at - half, top],
    [at - PLINTH_HALF, top],
  ]);
  return prism(k, outline, { axis: 'x', from: 0, to: length });
}

/**
 * Window whose top slopes in at 45°, cut flat one millimetre up. A window too wide to bridge slopes in from lower down: the beam
 * is round, and its way stays clear of the corners.
 */
function roofed([x, z]: [number, number], [halfWidth, halfHeight]: [number, number], { bridge, layer }: Printer) {
  const top = z + halfHeight + 1;
  // The layer beneath the flat is wider by one layer on each side.
  const slope = Math.max(1, upTenth(halfWidth - bridge.value / 2 + layer.value));
  return polygon([
    [x - halfWidth, z - halfHeight],
    [x + halfWidth, z - halfHeight],
    [x + halfWidth, top - slope],
    [x + halfWidth - slope, top],
    [x - halfWidth + slope, top],
    [x - halfWidth, top - slope],
  ]);
}

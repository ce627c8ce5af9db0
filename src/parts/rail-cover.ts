/**
 * Cover of a rail segment: a plate with holes over every screw that is turned in alignment, and over the collar. Rail
 * coordinates, z = 0 at its top, which is down in print: the file holds it turned over (x, −y, −z).
 */

import { keys, threads } from '../components/index.js';
import type { Layout } from '../layout/layout.js';
import { poseMotion } from '../layout/mount.js';
import { moved } from '../layout/plane.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Outlines, Vec2 } from '../solid/mesh.js';
import { rectangle, slot } from '../solid/outlines.js';
import { box, prism } from '../solid/shapes.js';
import { sunkHole } from './holes.js';
import { bossMiddle } from './rail.js';

const OVER = 1;
/** Around a key, each side. */
const KEY_PLAY = 0.7;
/** Turn of the key from one notch to the next, each side of upright. */
const SWING_PLAY = 3;

export interface Opening {
  readonly name: 'clamp' | 'roll' | 'adjust' | 'slide';
  /** Outline with x along the rail from the beam, y outward from the mount's or socket's front. */
  readonly outline: Outlines;
}

export function drawRailCover(k: Kernel, layout: Layout, segment: RailSegment): Solid {
  const { section } = layout.frame;
  const [from, to] = segment.cover;
  const front = segment.kind === 'emitter' ? section.mountFront : section.socketFront;
  const openings = segment.kind === 'emitter' ? mountOpenings(layout) : socketOpenings(layout);
  const plate = box(k, [from, 0, 0], [to, section.width, section.cover]);
  const cuts = [
    ...segment.beams.flatMap((x) =>
      openings.map(({ outline }) =>
        prism(
          k,
          outline.map((points) => points.map(([px, py]): Vec2 => [px + x, py + front])),
          { axis: 'z', from: -OVER, to: section.cover + OVER },
        ),
      ),
    ),
    ...segment.bosses.map((x) =>
      sunkHole(k, layout.spec, {
        at: [x, bossMiddle(layout), section.cover],
        way: '-z',
        depth: section.cover + OVER,
      }),
    ),
  ];
  return k.move(k.subtract(plate, cuts), frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, section.cover]));
}

/** Slots over a mount, as long as the tilt moves what is below them. */
export function mountOpenings(layout: Layout): Opening[] {
  const { mount, spec, frame: f } = layout;
  const clampKey = key(threads[spec.screws.clamp].setKey.value) / 2 + KEY_PLAY;
  const adjustKey = key(threads[spec.screws.adjust].capKey.value) / 2 + KEY_PLAY;
  const top = f.section.coverBottom + f.section.cover - f.section.bottom - f.section.floor;
  // Where the axis of a screw of the arm leaves the cover at both ends of the travel.
  const reach = (u: number, w: number): [number, number] => {
    const at = (['lowest', 'level', 'highest'] as const).map((pose) => {
      const motion = poseMotion(mount.leaf, pose);
      const [pu, pw] = moved(motion, [u, w], mount.origin);
      return -(pu - Math.tan(motion.angle) * (top - pw));
    });
    return [Math.min(...at), Math.max(...at)];
  };
  const swing = Math.PI / mount.collar.notches + (SWING_PLAY * Math.PI) / 180;
  const rollHalf = Math.tan(swing) * (top - mount.axis) + clampKey;
  const middle = mount.collar.front - mount.collar.length / 2;
  const [c0, c1] = reach(mount.clamp.at, mount.seat.top);
  const [a0, a1] = reach(mount.adjust.at, mount.arm.neckTop);
  const [r0, r1] = reach(middle, mount.axis);
  return [
    { name: 'clamp', outline: slot([0, c0], [0, c1], clampKey) },
    { name: 'roll', outline: rectangle(-rollHalf, r0 - clampKey, rollHalf, r1 + clampKey) },
    { name: 'adjust', outline: slot([0, a0], [0, a1], adjustKey) },
  ];
}

/** Slot over a socket's screw, as long as the slide. */
export function socketOpenings({ spec, socket }: Layout): Opening[] {
  const radius = key(threads[spec.screws.fix].capKey.value) / 2 + KEY_PLAY;
  return [
    {
      name: 'slide',
      outline: slot([-socket.slide, -socket.foot.screwAt], [socket.slide, -socket.foot.screwAt], radius),
    },
  ];
}

/** Across corners of the key for a socket of this size. */
export function key(flats: number): number {
  const found = Object.values(keys).find((k) => Math.abs(k.flats.value - flats) < 1e-9);
  if (!found) throw new RangeError(`no hexagon key of ${flats} mm is known`);
  return found.corners.value;
}

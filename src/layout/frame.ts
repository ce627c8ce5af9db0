/**
 * The four rails and what joins them. Rail coordinates [mm]: x along the rail, y outward from the field (0 at the field
 * wall's field face), z up from the rail's underside. All four rails share one cross-section, so that one corner post and
 * one corner bracket serve every corner.
 */

import { threads } from '../components/index.js';
import { frame as frameMatrix } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import { type BoardPlane, type BoardRoom, boardRoom } from './boards/room.js';
import { COVER_AIR } from './boards/sizes.js';
import { corridorMost } from './corridor.js';
import { formedSunk, side, upTenth } from './fits.js';
import type { Grid } from './grid.js';
import type { MountLayout } from './mount.js';
import { RAIL_FLOOR } from './mount-sizes.js';
import type { Side } from './sides.js';
import type { SocketLayout } from './socket.js';
import { emitterWindow } from './window.js';

export interface SectionLayout {
  readonly wall: number;
  readonly floor: number;
  /** Across the rail, outside to outside. */
  readonly width: number;
  /** From the rail's underside to the cover's. */
  readonly height: number;
  /** Rail's underside and cover's underside in assembly coordinates. */
  readonly bottom: number;
  readonly coverBottom: number;
  readonly cover: number;
  readonly deck: number;
  /** Sill on the field side that carries the deck: how far it stands out, and what is left of it behind a bracket. */
  readonly sill: number;
  readonly sillBehind: number;
  /** Top of the sill above the rail's underside. */
  readonly sillTop: number;
  /** y of a mount's front and of a socket's front. */
  readonly mountFront: number;
  readonly socketFront: number;
}

/** Brackets, splice plates and tabs: legs, screws along them. */
export interface JointLayout {
  readonly leg: number;
  readonly thickness: number;
  /** What is left of the sill behind it. */
  readonly behind: number;
  /** Screws along a leg from the corner or seam. */
  readonly screws: readonly [number, number];
  readonly screwLength: number;
  readonly engaged: number;
}

export interface TabLayout {
  /** How far tab or wall plate reaches along the rail's outer wall, its thickness, and gap to that wall. */
  readonly reach: number;
  readonly thickness: number;
  readonly gap: number;
  /** Screw heights above the rail's underside. */
  readonly heights: readonly [number, number];
  readonly screwLength: number;
  readonly engaged: number;
  /** Top of a wall splice plate above the rail's underside: wires pass over it. */
  readonly plateTop: number;
}

export interface BossLayout {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  readonly screwLength: number;
  readonly engaged: number;
  readonly pilotDepth: number;
}

export interface FrameLayout {
  readonly section: SectionLayout;
  readonly joint: JointLayout;
  readonly tab: TabLayout;
  readonly boss: BossLayout;
  /** Where boards stand; left out: none are asked for. */
  readonly board?: BoardPlane;
}

export const WALL = 3;
const FLOOR = RAIL_FLOOR;
const DECK = 3;
const COVER = 2.4;
const BRACKET = 5;
/** Wall left past a tip in sill and wall. */
const TIP_FREE = 0.3;
const SILL_BEHIND = 3;
/** Bundle of wires behind the mounts, at least. */
const CHAMBER = 10;
/** Wall over an emitter's window. */
const LINTEL = 1.2;
/** Between what moves and what stands. */
const MOVING_GAP = 0.4;
const SOCKET_GAP = 1;
export const TAB = 10;
/** How far a tab runs on beyond the rail's end, where it joins the post's wall. */
export const TAB_ROOT = 8;
const TAB_THICK = 6;
/** Boss under the cover's screws, along the rail. */
export const BOSS_LEAST = 6.4;

export function layFrame(
  spec: Spec,
  { mount, socket }: { readonly mount: MountLayout; readonly socket: SocketLayout },
): FrameLayout {
  const wall = spec.frame.wall ?? WALL;
  const deck = spec.frame.deck ?? DECK;
  const floorTop = spec.beam.height - mount.axis;
  const bottom = floorTop - FLOOR;
  const mountFront = wall + upTenth(mount.sweep.forward + MOVING_GAP);
  // Windows in the field wall, roofed at 45°, leave a lintel under the cover; the widest corridor bounds them.
  const window = emitterWindow(spec, { mount, section: { mountFront }, corridor: corridorMost(spec) });
  const lintel = mount.axis + window.radius * Math.SQRT2 + LINTEL - MOVING_GAP;
  const above = Math.max(mount.sweep.top, socket.top + socket.lid.thickness, lintel);
  const socketFront = wall + SOCKET_GAP;
  const joint = layJoint(spec, wall);
  const gap = side(spec, 'snug');
  const tabScrew = formedSunk(spec, wall + gap);
  const tabEngaged = tabScrew - wall - gap;
  const tabThickness = Math.max(TAB_THICK, upTenth(tabEngaged));
  // The wires behind a mount swing with its arm, past the plate inside the outer wall.
  const swing = Math.sin(mount.leaf.tilt) * (mount.axis - mount.origin[1]);
  const wires = Math.max(...mount.wire.path.map(([u]) => -u)) + mount.wire.diameter / 2 + swing - mount.length;
  const behind = Math.max(wires, -socket.legs.out - socket.length);
  const chamber = Math.max(CHAMBER, upTenth(behind + MOVING_GAP + tabThickness + gap));
  const room = boardRoom(spec, {
    socket,
    floor: FLOOR,
    sockets: socketFront + socket.length,
    wires: mountFront + mount.length + wires,
    onWall: tabThickness + gap,
  });
  const height = Math.max(upTenth(FLOOR + above + MOVING_GAP), room?.cover ?? 0);
  const inner = Math.max(Math.max(mountFront + mount.length, socketFront + socket.length) + chamber, room?.wall ?? 0);
  const bossScrew = formedSunk(spec, COVER);
  return {
    section: {
      wall,
      floor: FLOOR,
      width: upTenth(inner + wall),
      height,
      bottom,
      coverBottom: bottom + height,
      cover: COVER,
      deck,
      sill: joint.behind + joint.thickness,
      sillBehind: joint.behind,
      sillTop: -deck - bottom,
      mountFront,
      socketFront,
    },
    joint,
    tab: {
      reach: TAB,
      thickness: tabThickness,
      gap,
      heights: [FLOOR + 5, height - 14],
      screwLength: tabScrew,
      engaged: tabEngaged,
      plateTop: height - 8,
    },
    boss: {
      width: Math.max(BOSS_LEAST, 2 * sunkRim(spec)),
      depth: 6,
      height: 10,
      screwLength: bossScrew,
      engaged: bossScrew - COVER,
      pilotDepth: bossScrew - COVER + 1,
    },
    ...(room && { board: boardPlane(room, height) }),
  };
}

function boardPlane({ cover, wall, ...plane }: BoardRoom, height: number): BoardPlane {
  return { ...plane, top: height - COVER_AIR };
}

/** Radius of a countersink at its face [mm]: the head's sharp cone, a tenth below. */
export function sunkRim(spec: Spec): number {
  const thread = threads[spec.screws.fix];
  return thread.diameter.value / 2 + thread.sunkHeight.value + 0.1;
}

/**
 * Bracket in a corner's sill, or bar across a seam: thick enough that a stocked screw forms its thread in sill and wall and
 * ends inside them, long enough for two heads side by side clear of the corner.
 */
export function layJoint(spec: Spec, wall: number): JointLayout {
  const thread = threads[spec.screws.fix];
  const formed = 1.5 * thread.diameter.value;
  const behind = Math.max(SILL_BEHIND, upTenth(formed + TIP_FREE - wall));
  const fits = (thickness: number) =>
    thread.sunkLengths.value.find(
      (l) => l - thickness >= formed - 1e-9 && l - thickness <= behind + wall - TIP_FREE + 1e-9,
    );
  let thickness = BRACKET;
  while (fits(thickness) === undefined && thickness < 2 * BRACKET) thickness = upTenth(thickness + 0.1);
  const screwLength = fits(thickness) ?? 0;
  const rim = sunkRim(spec);
  const first = upTenth(behind + thickness + rim + 0.3);
  const second = upTenth(first + 2 * rim + 0.6);
  return {
    leg: upTenth(second + rim + 0.5),
    thickness,
    behind,
    screws: [first, second],
    screwLength,
    engaged: screwLength - thickness,
  };
}

/** From rail coordinates to the assembly's. */
export function railMatrix(
  at: Side,
  { grid, section }: { readonly grid: Grid; readonly section: SectionLayout },
): Matrix {
  const z = section.bottom;
  if (at === 'far') return frameMatrix([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, grid.depth, z]);
  if (at === 'near') return frameMatrix([-1, 0, 0], [0, -1, 0], [0, 0, 1], [grid.width, 0, z]);
  if (at === 'left') return frameMatrix([0, 1, 0], [-1, 0, 0], [0, 0, 1], [0, 0, z]);
  return frameMatrix([0, -1, 0], [1, 0, 0], [0, 0, 1], [grid.width, grid.depth, z]);
}

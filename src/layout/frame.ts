/**
 * The four rails and what joins them. Rail coordinates [mm]: x along the rail, y outward from the field (0 at the field
 * wall's field face), z up from the rail's underside. All four rails share one cross-section, so that one corner post and
 * one corner bracket serve every corner.
 */
import { threads } from '../components/index.js';
import { frame as frameMatrix } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import { side, stocked, upTenth } from './fits.js';
import { type Grid, LEAST_FIELD } from './grid.js';
import type { MountLayout } from './mount.js';
import { RAIL_FLOOR } from './mount-room.js';
import type { SocketLayout } from './socket.js';

export type Side = 'far' | 'near' | 'left' | 'right';
export const SIDES: readonly Side[] = ['far', 'near', 'left', 'right'];

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
}

const WALL = 3;
const FLOOR = RAIL_FLOOR;
const DECK = 3;
const COVER = 2.4;
const SILL = 8;
const SILL_BEHIND = 3;
/** Bundle of wires behind the mounts. */
const CHAMBER = 10;
/** Between what moves and what stands. */
const MOVING_GAP = 0.4;
const SOCKET_GAP = 1;
const LEG = 24;
const TAB = 10;
const TAB_THICK = 6;
/** Boss under the cover's screws, along the rail. */
export const BOSS_WIDTH = 6.4;

export function layFrame(
  spec: Spec,
  { grid, mount, socket }: { readonly grid: Grid; readonly mount: MountLayout; readonly socket: SocketLayout },
): FrameLayout {
  const wall = spec.frame.wall ?? WALL;
  const deck = spec.frame.deck ?? DECK;
  const screw = threads[spec.screws.fix];
  const formed = 1.5 * screw.diameter.value;
  const floorTop = spec.beam.height - mount.axis;
  const bottom = floorTop - FLOOR;
  const above = Math.max(mount.sweep.top, socket.top + socket.lid.thickness);
  const height = upTenth(FLOOR + above + MOVING_GAP);
  const mountFront = wall + upTenth(mount.sweep.forward + MOVING_GAP);
  const socketFront = wall + SOCKET_GAP;
  const inner = Math.max(mountFront + mount.length, socketFront + socket.length) + CHAMBER;
  const leg = Math.min(LEG, Math.min(grid.width, grid.depth) / 2 - (LEAST_FIELD / 2 - 22.5));
  const bracketScrew = stocked(screw.sunkLengths.value, SILL - SILL_BEHIND + formed) ?? 0;
  const tabScrew = stocked(screw.sunkLengths.value, wall + formed) ?? 0;
  const bossScrew = stocked(screw.sunkLengths.value, COVER + formed) ?? 0;
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
      sill: SILL,
      sillBehind: SILL_BEHIND,
      sillTop: -deck - bottom,
      mountFront,
      socketFront,
    },
    joint: {
      leg,
      thickness: SILL - SILL_BEHIND,
      screws: [leg / 2, leg - 4],
      screwLength: bracketScrew,
      engaged: bracketScrew - (SILL - SILL_BEHIND),
    },
    tab: {
      reach: TAB,
      thickness: TAB_THICK,
      gap: side(spec, 'snug'),
      heights: [FLOOR + 5, height - 14],
      screwLength: tabScrew,
      engaged: tabScrew - wall - side(spec, 'snug'),
      plateTop: height - 8,
    },
    boss: {
      width: BOSS_WIDTH,
      depth: 6,
      height: 10,
      screwLength: bossScrew,
      engaged: bossScrew - COVER,
      pilotDepth: bossScrew - COVER + 1,
    },
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

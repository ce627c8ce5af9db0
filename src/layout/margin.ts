/**
 * From the outermost beams to the field's walls: the greatest of what fingers, mounts, sockets, cover openings, brackets and the
 * cover's inner screws each need there. mm.
 */
import type { Spec } from '../spec/spec.js';
import { placeHalf } from './boards/holes.js';
import { upTenth } from './fits.js';
import { BOSS_LEAST, type FrameLayout, layJoint, sunkRim, TAB, WALL } from './frame.js';
import { leastPitchOf, type Margins, spanOf } from './grid.js';
import type { MountLayout } from './mount.js';
import { collarRadius, wireAside } from './mount-room.js';
import { plugHalf } from './openings.js';
import { BOSS_AIR, COVER_GAP } from './runs.js';
import type { SocketLayout } from './socket.js';

/** Between what is lowered into a rail, or reached through its cover, and the corner post beside it. */
const APART = 0.4;
/** A finger's radius and some play, as the bezel is a wall beside the finger. */
const FINGER = 18;
/** Beyond the outermost cell, so that its boundary is seen; and so that it lies on the deck at all. */
const BORDER = 2;
const BORDER_LEAST = 1;
/** With narrower cells the cover's inner screws stand beside the outermost mounts. */
const ROOMY = 19.95;
const MARGIN_NARROW = 25.2;

export interface MarginNeed {
  /** What needs it: `room for …`. */
  readonly what: string;
  readonly least: number;
  /** Without it the kit does not go together; else it is only better with it. */
  readonly must: boolean;
}

/** What stands at a beam, as far as it is known yet. */
export interface AtBeam {
  readonly mount: MountLayout;
  readonly socket: SocketLayout;
  readonly frame: FrameLayout;
}

/** What each thing beside the outermost beams of an axis needs. */
export function marginNeeds(spec: Spec, cells: readonly number[], at?: AtBeam): readonly MarginNeed[] {
  const { leg } = layJoint(spec, spec.frame.wall ?? WALL);
  const outermost = Math.max(cells[0]!, cells.at(-1)!) / 2;
  const must = (what: string, least: number): MarginNeed => ({ what, least: upTenth(least), must: true });
  return [
    must('two corner brackets on each side', (2 * leg + 1 - spanOf(cells)) / 2),
    must('the outermost cell, whose boundary is engraved in the deck', outermost + BORDER_LEAST),
    ...(at ? besideBeams(spec, at).map(({ what, half }) => must(what, TAB + APART + half)) : []),
    { what: 'a finger beside the wall', least: FINGER, must: false },
    {
      what: `the outermost cell and ${BORDER} mm beyond it`,
      least: outermost + BORDER,
      must: false,
    },
    ...innerScrews(spec, cells, at),
  ];
}

/** Half of what is lowered beside a corner post, or stays open in the cover beside it. */
function besideBeams(spec: Spec, { mount, socket, frame }: AtBeam) {
  const { section } = frame;
  const wires = wireAside(spec) + mount.wire.diameter / 2;
  return [
    {
      what: "the cover's openings over the last mount or socket, clear of the corner post",
      half: plugHalf({ spec, mount, socket, section, pitch: leastPitchOf(spec) }),
    },
    { what: 'the last mount, lowered beside the corner post', half: Math.max(mount.width / 2, wires) },
    {
      what: `the collar on the last barrel, ${2 * mount.collar.outer} mm wide, beside the corner post`,
      half: collarRadius(spec),
    },
    { what: 'the last receiver socket, lowered beside the corner post', half: socket.width / 2 },
    ...boardsBeside(spec, socket),
  ];
}

/** Boards end beside the corner post: the holes of their last beam must not lie beyond that. */
function boardsBeside(spec: Spec, { slide }: SocketLayout) {
  const ends = (['receiver', 'emitter'] as const).filter((kind) => spec.boards?.[`${kind}s`]);
  return ends.map((kind) => ({
    what: `the holes of the last ${kind} on its board, which ends at the corner post`,
    half: placeHalf(spec, kind, slide),
  }));
}

/** Where the cells are too narrow for the cover's screws between them, those stand beside the outermost mount. */
function innerScrews(spec: Spec, cells: readonly number[], at?: AtBeam): readonly MarginNeed[] {
  const need = Math.max(BOSS_LEAST, 2 * sunkRim(spec)) + 2 * BOSS_AIR;
  const wide = at?.mount.width ?? 0;
  const roomy = cells.length > 2 && Math.min(...cells) >= Math.max(ROOMY, wide + need);
  if (roomy) return [];
  const least = Math.max(MARGIN_NARROW, upTenth(TAB + COVER_GAP + need + wide / 2));
  return [{ what: "the cover's inner screws, which have no room between the cells", least, must: false }];
}

/** The need that decides: the greatest of those that count. */
export const decisive = (needs: readonly MarginNeed[]): MarginNeed =>
  needs.reduce((most, need) => (need.least > most.least + 1e-9 ? need : most));

/** Margins that meet every need, or as the preset pins them. */
export function marginsOf(spec: Spec, at?: AtBeam): Margins {
  const solve = (cells: readonly number[]) => spec.frame.margin ?? decisive(marginNeeds(spec, cells, at)).least;
  return { x: solve(spec.grid.columns), y: solve(spec.grid.rows) };
}

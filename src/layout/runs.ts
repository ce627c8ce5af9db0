/** Each rail along its side: beams, seams, segments, ribs and bosses, in rail coordinates. */

import type { Matrix } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import type { Guide } from './boards/types.js';
import { type FrameLayout, railMatrix } from './frame.js';
import type { Grid } from './grid.js';
import { type RailKind, SIDES, type Side } from './sides.js';
import { split } from './split.js';

export interface RailBeam {
  readonly line: 'column' | 'row';
  readonly index: number;
  /** Along the rail. */
  readonly at: number;
}

/** A piece of rail with its own coordinates: x from 0. */
export interface RailSegment {
  readonly kind: RailKind;
  readonly from: number;
  readonly length: number;
  /** What its ends meet. */
  readonly ends: readonly ['corner' | 'seam', 'corner' | 'seam'];
  /** Rails along y leave the sill's corner to those along x. */
  readonly yields: boolean;
  readonly beams: readonly number[];
  /** Where the cover is screwed down: along the outer wall, and along the field wall between beams. */
  readonly bosses: readonly number[];
  readonly fieldBosses: readonly number[];
  /** Where a screw from the deck ends in its sill. */
  readonly deckScrews: readonly number[];
  /** Posts that hold boards; left out: none. */
  readonly guides?: readonly Guide[];
  /** Where its cover begins and ends. */
  readonly cover: readonly [number, number];
  /** What a bay that hangs on it needs: bosses behind its screws, and a notch for wires in the outer wall's top. */
  readonly bay?: { readonly bosses: readonly number[]; readonly notch: readonly [number, number] | null };
}

export interface RailRun {
  readonly side: Side;
  readonly kind: RailKind;
  readonly length: number;
  readonly beams: readonly RailBeam[];
  readonly seams: readonly number[];
  readonly segments: readonly RailSegment[];
  readonly matrix: Matrix;
}

/** Between a cover and what it ends at. */
export const COVER_GAP = 0.15;
const BOSS_EVERY = 110;
/** Between a boss and what stands beside it. */
export const BOSS_AIR = 0.5;
/** Free wall between a corner's tab or a seam's plate and the nearest boss. */
const BOSS_APART = 3;
const BOSS_SHORTEST = 30;
/** Between a boss and the plate of a seam beside it. */
const BOSS_BESIDE = 0.5;

export interface RunOptions {
  readonly grid: Grid;
  readonly frame: FrameLayout;
  /** What stands at each beam along a rail, its cover's plug included. */
  readonly taken: Readonly<Record<RailKind, number>>;
  /** Longest piece that the bed takes along a rail. */
  readonly longest: number;
}

/** @returns the runs, or null when a rail can't be cut to fit the bed */
export function layRuns(spec: Spec, options: RunOptions): readonly RailRun[] | null {
  const runs = SIDES.map((at) => layRun(spec, at, options));
  return runs.every((run) => run !== null) ? (runs as RailRun[]) : null;
}

function layRun(spec: Spec, at: Side, { grid, frame, longest, taken }: RunOptions): RailRun | null {
  const alongX = at === 'far' || at === 'near';
  const length = alongX ? grid.width : grid.depth;
  const emits = at === spec.emitters.columnsFrom || at === spec.emitters.rowsFrom;
  const backward = at === 'near' || at === 'right';
  const places = alongX ? grid.columns : grid.rows;
  const beams = places
    .map(
      (place, index): RailBeam => ({ line: alongX ? 'column' : 'row', index, at: backward ? length - place : place }),
    )
    .sort((a, b) => a.at - b.at);
  const middles = beams.slice(1).map((beam, i) => (beam.at + beams[i]!.at) / 2);
  const seams = split({
    length,
    at: middles,
    longest,
    shortest: 2 * frame.joint.leg + 1,
    // The plates of both seams reach in, and a screw of the cover stands between them.
    shortestBetween: 2 * (frame.joint.leg + BOSS_BESIDE) + frame.boss.width,
  });
  if (!seams) return null;
  const ends = [0, ...seams, length];
  const segments = ends.slice(1).map((to, i): RailSegment => {
    const from = ends[i]!;
    const first = from === 0;
    const last = to === length;
    const { reach } = frame.tab;
    return {
      kind: emits ? 'emitter' : 'receiver',
      from,
      length: to - from,
      ends: [first ? 'corner' : 'seam', last ? 'corner' : 'seam'],
      yields: !alongX,
      beams: beams.filter((beam) => beam.at > from && beam.at < to).map((beam) => beam.at - from),
      deckScrews: [],
      bosses: bossPlaces(to - from, {
        first: (first ? reach : frame.joint.leg) + frame.boss.width / 2,
        last: (last ? reach : frame.joint.leg) + frame.boss.width / 2,
      }),
      fieldBosses: fieldPlaces({
        beams: beams.filter((beam) => beam.at > from && beam.at < to).map((beam) => beam.at - from),
        taken: taken[emits ? 'emitter' : 'receiver'],
        width: frame.boss.width,
        room: [first ? reach + COVER_GAP : null, last ? to - from - reach - COVER_GAP : null],
      }),
      cover: [first ? reach + COVER_GAP : COVER_GAP / 2, to - from - (last ? reach + COVER_GAP : COVER_GAP / 2)],
    };
  });
  return {
    side: at,
    kind: emits ? 'emitter' : 'receiver',
    length,
    beams,
    seams,
    segments,
    matrix: railMatrix(at, { grid, section: frame.section }),
  };
}

interface FieldOptions {
  readonly beams: readonly number[];
  /** What stands at each beam, along the rail; and how wide a boss with its screw's head is. */
  readonly taken: number;
  readonly width: number;
  /** Where the cover begins and ends at a corner; null at a seam. */
  readonly room: readonly [number | null, number | null];
}

/**
 * Bosses on the field wall, midway between beams or beside the outermost, where what stands there leaves room: with them cover and rail are a closed
 * box, which resists twist a hundred times as well as an open channel.
 */
function fieldPlaces({ beams, taken, room, width }: FieldOptions): number[] {
  const need = width + 2 * BOSS_AIR;
  const open = beams.slice(1).flatMap((beam, i) => {
    const before = beams[i]!;
    return beam - before - taken >= need ? [(beam + before) / 2] : [];
  });
  const edge = taken / 2 + BOSS_AIR + width / 2;
  const [first, last] = [beams[0], beams.at(-1)];
  if (first !== undefined && room[0] !== null && first - taken / 2 - room[0] >= need) open.unshift(first - edge);
  if (last !== undefined && room[1] !== null && room[1] - last - taken / 2 >= need) open.push(last + edge);
  const kept: number[] = [];
  for (const at of open) if (kept.length === 0 || at - kept.at(-1)! >= BOSS_EVERY / 2) kept.push(at);
  const end = open.at(-1);
  if (end !== undefined && end !== kept.at(-1)) kept.push(end);
  return kept;
}

/** Bosses for the cover's screws: one near each end, others between so that none is far from the next. */
function bossPlaces(length: number, { first, last }: { readonly first: number; readonly last: number }): number[] {
  const from = first + BOSS_APART;
  const to = length - last - BOSS_APART;
  if (to - from < BOSS_SHORTEST) return [(from + to) / 2];
  const spans = Math.ceil((to - from) / BOSS_EVERY);
  return Array.from({ length: spans + 1 }, (_, i) => from + (i * (to - from)) / spans);
}

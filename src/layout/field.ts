/** Field and mounts, each of which needs the other: the margin depends on the mounts, their width on whether rails are cut. */
import type { Mistake } from '../errors.js';
import type { Solved, Spec } from '../spec/spec.js';
import { plugged } from './boards/plugged.js';
import { layFrame } from './frame.js';
import { type Grid, layGrid } from './grid.js';
import { type AtBeam, decisive, type MarginNeed, marginNeeds, marginsOf } from './margin.js';
import type { MountLayout } from './mount.js';
import { askMount, longestPiece, type MountAsk } from './mount-ask.js';
import { laySocket } from './socket.js';

/** What is known of mounts, field and frame before the rest is laid out around them. */
export interface Field<Found> extends AtBeam {
  readonly grid: Grid;
  readonly ask: MountAsk;
  readonly found: Found;
  readonly solved: readonly Solved[];
}

/**
 * @param solve - the mount for what is asked of it; undefined where there is none
 * @throws {PresetError} when barrel, nuts or neighbouring mounts have no room
 */
export function layField<Found extends { readonly mount: MountLayout }>(
  spec: Spec,
  solve: (ask: MountAsk) => Found | undefined,
): Field<Found> | undefined {
  let rail = longestRail(gridOf(spec));
  for (;;) {
    const ask = askMount(spec, rail);
    const found = solve(ask);
    if (!found) return undefined;
    const at = around(spec, found.mount);
    const grid = layGrid(spec, marginsOf(spec, at));
    // A margin that grew with the mount may bring a rail beyond the bed.
    const bed = longestPiece(spec);
    const grown = longestRail(grid);
    if (rail > bed || grown <= bed) return { ...at, grid, ask, found, solved: marginSolved(spec, at) };
    rail = grown;
  }
}

/** The field as far as it is known before the mounts are: it may still grow with them. */
export const gridOf = (spec: Spec): Grid => layGrid(spec, marginsOf(spec));

export const longestRail = ({ width, depth }: Pick<Grid, 'width' | 'depth'>): number => Math.max(width, depth);

function around(spec: Spec, mount: MountLayout): AtBeam {
  const socket = laySocket(spec, { axis: mount.axis, pitch: gridOf(spec).leastPitch });
  const frame = layFrame(spec, { mount, socket });
  return { mount, socket: plugged(spec, { socket, frame }), frame };
}

/** What the preset pins too small, axis by axis, with the need that asks for the most. */
export function marginMistakes(spec: Spec, at: AtBeam): readonly Mistake[] {
  const { margin } = spec.frame;
  if (margin === undefined) return [];
  const needs = [spec.grid.columns, spec.grid.rows].flatMap((cells) => marginNeeds(spec, cells, at));
  const { what, least } = decisive(needs.filter(({ must }) => must));
  if (margin >= least - 1e-9) return [];
  return [
    {
      code: 'preset/margin-too-small',
      path: 'frame.margin',
      message: `${margin} mm from the outermost beam to the field's wall leave no room for ${what}`,
      hint: `at least ${least} mm`,
    },
  ];
}

function marginSolved(spec: Spec, at: AtBeam): readonly Solved[] {
  if (spec.frame.margin !== undefined) return [];
  const [x, y] = [spec.grid.columns, spec.grid.rows].map((cells) => decisive(marginNeeds(spec, cells, at))) as [
    MarginNeed,
    MarginNeed,
  ];
  const why =
    x.what === y.what
      ? `along x and y: room for ${x.what}`
      : `along x: room for ${x.what}; along y: room for ${y.what}`;
  return [{ path: 'frame.margin', value: [x.least, y.least], why }];
}

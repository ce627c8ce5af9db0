/**
 * The hood: before alignment a beam may leave upward by its barrel's error and the mount's tilt together, and at the far
 * side stand tens of millimetres above its plane. An opaque wall on each receiver rail catches it until the last line is set.
 */
import { type AimError, landing } from '../optics/safety-cone.js';
import type { Solved, Spec } from '../spec/spec.js';
import { deg } from '../units.js';
import { upTenth } from './fits.js';
import type { FrameLayout } from './frame.js';
import type { Grid } from './grid.js';
import type { LineWay } from './light/lines.js';
import { strayRadius } from './light/stray.js';
import type { RailRun } from './runs.js';
import { piecesFor } from './split.js';

export interface HoodLayout {
  readonly thickness: number;
  /** Flange that lies on the cover, skirt outside the rail's outer wall, and gap to that wall. */
  readonly flange: number;
  readonly skirt: number;
  readonly gap: number;
  /** One panel each: which run it stands on, from and to along that rail, and its height above the cover's top. */
  readonly panels: readonly HoodPanel[];
}

export interface HoodPanel {
  readonly side: RailRun['side'];
  /** In the middle of the wall's thickness. */
  readonly from: number;
  readonly to: number;
  readonly height: number;
  /** Which ends meet another panel: they slant by 45°, so that no beam finds the seam. */
  readonly meets: readonly [boolean, boolean];
}

const THICKNESS = 2.4;
const FLANGE = 12;
const SKIRT = 18;
const GAP = 0.3;
/** Wall over the highest spot. */
const ABOVE = 2;
const LOWEST = 10;
/** No hood is higher: beams that stray further have nothing that ends them, and the kit is refused for it. */
export const HIGHEST = 150;

export interface HoodOptions {
  readonly grid: Grid;
  readonly frame: FrameLayout;
  readonly runs: readonly RailRun[];
  readonly ways: readonly [LineWay, LineWay];
  readonly error: AimError;
  readonly longest: number;
}

/** @returns the hood, and why it is as high as it is */
export function layHood(spec: Spec, options: HoodOptions): { readonly hood: HoodLayout; readonly solved: Solved } {
  const { frame, runs, grid, ways, error, longest } = options;
  const { section } = frame;
  const coverTop = section.coverBottom + section.cover;
  const heights: number[] = [];
  const panels = runs
    .filter(({ kind }) => kind === 'receiver')
    .flatMap((run): HoodPanel[] => {
      const { line, toField } = ways.find((way) => way.line === run.beams[0]?.line)!;
      // From the barrel's front to the panel, which hangs outside the receivers' outer wall.
      const across = line === 'column' ? grid.depth : grid.width;
      const toPanel = toField + across + section.width + GAP;
      // Where a wide cone needs no stop, its middle gets one all the same: aligned by eye, it is brightest there.
      const patch = landing(error, { distance: toPanel, radius: strayRadius(spec, toPanel) ?? 0 });
      const rise = patch === null ? HIGHEST : patch.top;
      const height = upTenth(Math.min(HIGHEST, Math.max(LOWEST, spec.beam.height + rise + ABOVE - coverTop)));
      heights.push(height);
      // Yaw leads sideways as far as pitch leads up: the wall reaches past the outermost beams, short of the flange of the
      // wall round the corner.
      const outermost = Math.min(run.beams[0]?.at ?? 0, run.length - (run.beams.at(-1)?.at ?? run.length));
      const sideways = patch === null ? HIGHEST : patch.right;
      const past = Math.max(0, Math.min(section.width - FLANGE - 1, upTenth(sideways + ABOVE - outermost)));
      const whole = run.length + 2 * past;
      const pieces = piecesFor(whole, longest);
      return Array.from({ length: pieces }, (_, i) => ({
        side: run.side,
        from: -past + (i * whole) / pieces,
        to: -past + ((i + 1) * whole) / pieces - (i < pieces - 1 ? SEAM : 0),
        height,
        meets: [i > 0, i < pieces - 1],
      }));
    });
  return {
    hood: { thickness: THICKNESS, flange: FLANGE, skirt: SKIRT, gap: GAP, panels },
    solved: {
      path: 'frame.hood_height',
      value: heights,
      why: `above the cover, by receiver rail: ends a beam with the screw at its end, mount, warp and barrel each at the worst that 99 of 100 keep to${spec.aim.wedgeDeg ? ', and the barrel’s lean' : ''}, all one way: up to ${Math.round(10 * deg(error.tilt[1] + error.boresight)) / 10}° upward`,
    },
  };
}

/** Between two panels, along the rail. */
const SEAM = 0.3;

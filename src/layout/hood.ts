/**
 * The hood: before alignment a beam may leave upward by its barrel's error and the mount's tilt together, and at the far
 * side stand tens of millimetres above its plane. An opaque wall on each receiver rail catches it until the last line is set.
 */
import type { Spec } from '../spec/spec.js';
import { rad } from '../units.js';
import { upTenth } from './fits.js';
import type { FrameLayout } from './frame.js';
import type { Grid } from './grid.js';
import type { RailRun } from './runs.js';

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
  readonly from: number;
  readonly to: number;
  readonly height: number;
}

const THICKNESS = 2.4;
const FLANGE = 12;
const SKIRT = 18;
/** Largest boresight error met: three times the Rayleigh parameter (99 in 100 are below). */
const WORST = 3;
const ABOVE = 6;

export function layHood(
  spec: Spec,
  options: {
    readonly grid: Grid;
    readonly frame: FrameLayout;
    readonly runs: readonly RailRun[];
    readonly tiltDeg: number;
    readonly longest: number;
  },
): HoodLayout {
  const { frame, runs, grid, tiltDeg, longest } = options;
  const { section } = frame;
  const cone = rad(WORST * spec.emitters.part.boresightSigmaDeg.value + tiltDeg);
  const panels = runs
    .filter(({ kind }) => kind === 'receiver')
    .flatMap((run): HoodPanel[] => {
      const across = run.side === 'far' || run.side === 'near' ? grid.depth : grid.width;
      const rise = (across + 2 * section.width) * Math.tan(cone);
      const top = spec.beam.height + rise + ABOVE;
      const height = upTenth(Math.max(10, top - section.coverBottom - section.cover));
      // Yaw errors lead sideways as far as pitch errors lead up: the wall reaches past the field's ends,
      // short of the flange of the wall round the corner.
      const past = Math.min(section.width - FLANGE - 1, upTenth(rise));
      const whole = run.length + 2 * past;
      const pieces = Math.ceil(whole / longest);
      return Array.from({ length: pieces }, (_, i) => ({
        side: run.side,
        from: -past + (i * whole) / pieces,
        to: -past + ((i + 1) * whole) / pieces - (i < pieces - 1 ? 0.2 : 0),
        height,
      }));
    });
  return { thickness: THICKNESS, flange: FLANGE, skirt: SKIRT, gap: 0.3, panels };
}

/** How far each line's light goes, and about what it turns. mm. */
import type { Spec } from '../../spec/spec.js';
import type { SectionLayout } from '../frame.js';
import type { Grid } from '../grid.js';
import { type MountLayout, poseMotion } from '../mount.js';
import type { SocketLayout } from '../socket.js';

export interface LineWay {
  readonly line: 'column' | 'row';
  readonly count: number;
  /** From the emitter's front to the detector. */
  readonly distance: number;
  /** From the emitter's front to the field wall's face. */
  readonly toField: number;
  /** From the axis of tilt to the detector: what mount and screw act over. */
  readonly lever: number;
  /** From the axis of tilt to the adjusting screw. */
  readonly arm: number;
  /** Between neighbouring lines at the least; Infinity with one. */
  readonly pitch: number;
}

export interface WayOptions {
  readonly grid: Grid;
  readonly mount: MountLayout;
  readonly socket: Pick<SocketLayout, 'tube'>;
  readonly section: Pick<SectionLayout, 'mountFront' | 'socketFront'>;
}

/**
 * The beam's exit, ahead of the axis of tilt and above it. The axis is the point that a motion from level leaves where it is, the mean of
 * those to both ends: a leaf's wanders a little as it bends.
 */
export function exitOf({ mount }: Pick<WayOptions, 'mount'>): readonly [number, number] {
  const { leaf, origin, barrel, axis } = mount;
  const still = (['lowest', 'highest'] as const).map((pose) => {
    const { angle, du, dw } = poseMotion(leaf, pose);
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    // (I − R) x = d.
    const det = 2 * (1 - c);
    return [origin[0] + ((1 - c) * du - s * dw) / det, origin[1] + (s * du + (1 - c) * dw) / det] as const;
  });
  const [u, w] = [0, 1].map((i) => (still[0]![i]! + still[1]![i]!) / 2);
  return [barrel.exit - u!, axis - w!];
}

/** @returns columns, then rows */
export function lineWays(spec: Spec, options: WayOptions): readonly [LineWay, LineWay] {
  const { grid, mount, socket, section } = options;
  const [exit] = exitOf(options);
  const toField = section.mountFront - mount.barrel.exit;
  const beyond = toField + section.socketFront - socket.tube.end;
  const way = (line: 'column' | 'row'): LineWay => {
    const beams = line === 'column' ? grid.columns : grid.rows;
    const distance = (line === 'column' ? grid.depth : grid.width) + beyond;
    const gaps = beams.slice(1).map((at, i) => at - beams[i]!);
    return {
      line,
      count: (line === 'column' ? spec.grid.columns : spec.grid.rows).length,
      distance,
      toField,
      lever: distance + exit,
      arm: mount.leaf.lever,
      pitch: Math.min(Infinity, ...gaps),
    };
  };
  return [way('column'), way('row')];
}

/** The light's budget of a layout: everything that checks and reports tell of aim. */
import type { Layout } from '../layout.js';
import { type AimFigures, aimFigures } from './aim.js';
import { type FingerFigures, fingerFigures } from './finger.js';
import { type Lever, levers } from './levers.js';
import { exitOf } from './lines.js';
import { type SignalFigures, signalFigures } from './signal.js';

export interface LightBudget {
  readonly aim: AimFigures;
  /** What helps most, first. */
  readonly levers: readonly Lever[];
  readonly signal: SignalFigures;
  /** Null where no receiver ever reads dark. */
  readonly finger: FingerFigures | null;
  /** The beam's exit, ahead of the axis of tilt and above it [mm]. */
  readonly exit: readonly [number, number];
}

export function lightBudget({
  spec,
  mount,
  ways,
  aim: inputs,
}: Pick<Layout, 'spec' | 'mount' | 'ways' | 'aim'>): LightBudget {
  const aim = aimFigures(spec, { ways, inputs });
  const signal = signalFigures(spec, ways);
  return {
    aim,
    levers: levers(spec, ways, aim),
    signal,
    finger: fingerFigures(spec, { ways, signal }),
    exit: exitOf({ mount }),
  };
}

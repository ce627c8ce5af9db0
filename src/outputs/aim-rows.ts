/** What throws the longest beam off, and what brings it back: one list for text and figure. */
import type { LineChance } from '../layout/light/aim.js';
import type { LightBudget } from '../layout/light/budget.js';
import { NEARLY_ALL } from '../layout/light/stray.js';

export interface AimRow {
  readonly what: string;
  /** [rad] */
  readonly angle: number;
  /** At the receiver. */
  readonly mm: number;
  /** What it is mended by; '' for what mends. */
  readonly cure: string;
}

export interface AimRows {
  readonly longest: LineChance;
  /** 99 of 100 errors stay below. */
  readonly off: readonly AimRow[];
  readonly against: readonly AimRow[];
}

/** Boresight acts from the beam's exit, everything else from the axis of tilt. */
export function aimRows({ aim: { inputs, lines } }: Pick<LightBudget, 'aim'>): AimRows {
  const longest = lines[0].lever > lines[1].lever ? lines[0] : lines[1];
  const { distance, lever, tolerance } = longest;
  const far = (angle: number, over = lever) => over * Math.tan(angle);
  const boresight = NEARLY_ALL.rayleigh * inputs.boresight;
  const mount = NEARLY_ALL.normal * inputs.mountError;
  return {
    longest,
    off: [
      {
        what: 'barrel’s boresight error',
        angle: boresight,
        mm: far(boresight, distance),
        cure: 'roll it upright, then tilt',
      },
      ...(inputs.wedge > 0
        ? [
            {
              what: 'barrel’s lean, on purpose',
              angle: inputs.wedge,
              mm: far(inputs.wedge, distance),
              cure: 'roll it against the yaw, then tilt',
            },
          ]
        : []),
      { what: 'mount’s yaw', angle: mount, mm: far(mount), cure: 'roll, slide' },
      { what: 'mount’s tilt', angle: mount, mm: far(mount), cure: 'tilt' },
      { what: 'rail’s warp, at its worst mount', angle: inputs.warp, mm: far(inputs.warp), cure: 'tilt' },
    ],
    against: [
      { what: 'tilt, either way', angle: inputs.tilt, mm: far(inputs.tilt), cure: '' },
      { what: 'receiver’s slide, either way', angle: inputs.slide / lever, mm: inputs.slide, cure: '' },
      { what: 'half of its light is left in', angle: tolerance / lever, mm: tolerance, cure: '' },
    ],
  };
}

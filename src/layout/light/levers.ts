/** What would help the aim most: each thing a maker can change, changed, and what that is worth. */
import type { Spec } from '../../spec/spec.js';
import { deg, rad } from '../../units.js';
import { type AimFigures, type AimInputs, aimFigures } from './aim.js';
import type { LineWay } from './lines.js';
import { leanFor } from './wedge.js';

export interface Lever {
  /** Preset path to change. */
  readonly path: string;
  /** What to do, in words. */
  readonly change: string;
  /** Chance that all lines can be aligned then. */
  readonly all: number;
}

const TILT_MORE = rad(1);
const SLIDE_MORE = 0.5;
const TOLERANCE_MORE = 2;

/** @returns every lever, the one that helps most first; empty where nothing helps by a tenth of a percent */
export function levers(spec: Spec, ways: readonly [LineWay, LineWay], { inputs, all }: AimFigures): readonly Lever[] {
  const degrees = (angle: number) => `${Number(deg(angle).toPrecision(3))}°`;
  // Where it was left open it was solved: what was not drawn then can't be.
  const lean = spec.aim.wedgeDeg === undefined ? null : leanFor(spec, { ways, inputs });
  const leans =
    lean === null
      ? []
      : ([
          [
            'aim.wedge',
            `barrels leaned by ${degrees(lean.wedge)} on purpose, in sleeves bored askew`,
            { wedge: lean.wedge },
          ],
        ] as const);
  const tried: readonly (readonly [path: string, change: string, changed: Partial<AimInputs>])[] = [
    ['aim.tilt', `a tilt of ±${degrees(inputs.tilt + TILT_MORE)}`, { tilt: inputs.tilt + TILT_MORE }],
    [
      'aim.mount_error',
      `mounts that stand true to ${degrees(inputs.mountError / 2)}: ribs and screws without play, measured`,
      { mountError: inputs.mountError / 2 },
    ],
    [
      'emitters.part.boresight_sigma_deg',
      `barrels sorted or better, σ ${degrees(inputs.boresight / 2)}`,
      { boresight: inputs.boresight / 2 },
    ],
    ...leans,
    ['printer.warp_per_100', 'rails that warp half as much', { warp: inputs.warp / 2 }],
    ['grid.pitch', `receivers that slide by ±${inputs.slide + SLIDE_MORE} mm`, { slide: inputs.slide + SLIDE_MORE }],
    [
      'receivers.part',
      'receivers that take the light of a circle twice as wide, by a lens',
      { tolerance: [TOLERANCE_MORE * inputs.tolerance[0], TOLERANCE_MORE * inputs.tolerance[1]] },
    ],
  ];
  return tried
    .map(([path, change, changed]) => ({
      path,
      change,
      all: aimFigures(spec, { ways, inputs: { ...inputs, ...changed } }).all,
    }))
    .filter((lever) => lever.all > all + 1e-3)
    .sort((a, b) => b.all - a.all);
}

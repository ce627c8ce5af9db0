/** How far a beam can stray before it is aimed, and once it is. rad and mm. */
import { passedShare } from '../../optics/aperture.js';
import { coneRadius } from '../../optics/beam.js';
import type { AimError } from '../../optics/safety-cone.js';
import { classLimits } from '../../optics/safety-limits.js';
import type { Spec } from '../../spec/spec.js';
import type { Rad } from '../../units.js';
import type { AimInputs } from './aim.js';

/** 99 of 100 errors are below so many σ: Rayleigh's law, and the normal one either way. */
export const NEARLY_ALL = { rayleigh: 3.035, normal: 2.576 } as const;

/** The screw at either end, mount, warp and barrel each at the worst that 99 of 100 keep to, and the lean, all one way. */
export function strayError({ boresight, wedge, mountError, tilt, warp }: AimInputs): AimError {
  const mount = NEARLY_ALL.normal * mountError;
  const most = (tilt + warp + mount) as Rad;
  return {
    yaw: mount as Rad,
    tilt: [-most as Rad, most],
    boresight: (wedge + NEARLY_ALL.rayleigh * boresight) as Rad,
  };
}

/** Once it is aimed the beam is within the tolerance: an angle that small, in any direction. */
export const aimedError = (tolerance: number, distance: number): AimError => ({
  yaw: 0 as Rad,
  tilt: [0 as Rad, 0 as Rad],
  boresight: Math.atan(tolerance / distance) as Rad,
});

/** Half of the pupil that exposure is counted through [mm] (IEC 60825-1, as restated publicly). */
const PUPIL = 3.5;

/**
 * How far from its middle a beam has to be stopped: its 1/e² radius, or, where it is wider than a pupil, only as far as a pupil beyond
 * still gets more than class 1 allows. A diode's cone is soon too thin to matter; a laser's beam is not.
 *
 * @returns [mm]; null where no pupil anywhere in the beam gets more than class 1: there it need not be stopped
 */
export function strayRadius({ emitters }: Pick<Spec, 'emitters'>, distance: number): number | null {
  const { powerMw, wavelengthNm, beamDiameter, divergenceMrad } = emitters.part;
  const w = coneRadius({ diameter: beamDiameter.value, divergenceMrad: divergenceMrad.value }, distance);
  const answer = classLimits(wavelengthNm.value);
  if (w <= PUPIL || !answer.estimated) return w;
  const enters = (edge: number) => powerMw.value * passedShare({ radius: PUPIL, w, offset: edge + PUPIL });
  let [low, high] = [0, w];
  if (enters(0) <= answer.limits.class1) return null;
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (enters(middle) > answer.limits.class1) low = middle;
    else high = middle;
  }
  return high;
}

/** What a receiver gives: from light on its detector to the level at its pin. Lengths mm, powers mW, irradiance W/m², currents mA. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { passedShare } from './aperture.js';
import { FILTERED_WHITE_RESPONSE, siliconResponse, WHITE_RESPONSE } from './silicon.js';

/** A phototransistor with a pull-up: it sinks a current in proportion to its light. */
export interface Detector {
  /** Of the lens, or of the bare detector. */
  readonly radius: number;
  /** Current for irradiance at the wavelength it sees best [mA per W/m²]. */
  readonly sensitivity: number;
  /** Its filter passes nothing shorter than this; 0: no filter [nm]. */
  readonly filterFromNm: number;
}

/** Its pull-up and what the controller's pin takes as low and high. */
export interface Pin {
  readonly supply: number;
  readonly pullUpOhm: number;
}

/** Levels of CMOS inputs, over the supply. Source: common practice (0.3 and 0.7 of the supply). */
const LOW = 0.3;
const HIGH = 0.7;

/** @returns current that pulls the pin surely low, and the one below which it is surely high [mA] */
export function levels({ supply, pullUpOhm }: Pin): { readonly lit: number; readonly dark: number } {
  requirePositive('levels', { supply, pullUpOhm });
  const sink = (level: number) => ((supply * (1 - level)) / pullUpOhm) * 1000;
  return { lit: sink(LOW), dark: sink(HIGH) };
}

/** @returns share of its best response that a receiver has at a wavelength: 0 behind a filter that starts above it */
export const responseAt = ({ filterFromNm }: Detector, nm: number): number =>
  nm < filterFromNm ? 0 : siliconResponse(nm);

/**
 * Pull-ups with which a pin reads lit from its beam and dark from what is left without it, each with a factor in hand [Ω].
 *
 * @param lit - current of the weakest beam @param ambient - current of the light around [mA]
 * @returns `most` is Infinity in the dark; where `least` exceeds it, none serves
 */
export function pullUpRange({
  supply,
  lit,
  ambient,
  inHand,
}: {
  readonly supply: number;
  readonly lit: number;
  readonly ambient: number;
  readonly inHand: number;
}): { readonly least: number; readonly most: number } {
  requirePositive('pullUpRange', { supply, inHand });
  requireNotNegative('pullUpRange', { lit, ambient });
  return {
    least: lit > 0 ? (1000 * supply * (1 - LOW) * inHand) / lit : Infinity,
    most: ambient > 0 ? (1000 * supply * (1 - HIGH)) / (inHand * ambient) : Infinity,
  };
}

export interface Arriving {
  readonly powerMw: number;
  readonly wavelengthNm: number;
  /** 1/e² radius where it arrives. */
  readonly w: number;
  /** Of the beam's middle from the detector's. */
  readonly offset: number;
}

/** @returns mean irradiance on the detector [W/m²]: power through its circle over its area */
export function irradiance({ powerMw, w, offset }: Omit<Arriving, 'wavelengthNm'>, radius: number): number {
  requireNotNegative('irradiance', { powerMw });
  const share = passedShare({ radius, w, offset });
  // mW over mm² is kW/m².
  return (1000 * powerMw * share) / (Math.PI * radius ** 2);
}

/** @returns current that a beam makes [mA], as far as the light goes; the pull-up takes no more than supply over resistance */
export const beamCurrent = (detector: Detector, beam: Arriving): number =>
  detector.sensitivity * responseAt(detector, beam.wavelengthNm) * irradiance(beam, detector.radius);

/** Light from elsewhere, on a surface [W/m²]. */
export interface Surroundings {
  readonly direct: number;
  readonly diffuse: number;
}

/**
 * Currents that light from elsewhere makes [mA]: diffuse light, cut by the tube, and a source that stands inside the tube's view,
 * which is not cut at all.
 *
 * @param rejection - of the tube for diffuse light, ≥ 1
 */
export function ambientCurrent(
  { sensitivity, filterFromNm }: Detector,
  { direct, diffuse }: Surroundings,
  rejection: number,
): { readonly diffuse: number; readonly direct: number } {
  requireNotNegative('ambientCurrent', { direct, diffuse });
  if (!(rejection >= 1)) throw new RangeError(`ambientCurrent: the rejection must be ≥ 1, got ${rejection}`);
  const response = sensitivity * (filterFromNm > 0 ? FILTERED_WHITE_RESPONSE : WHITE_RESPONSE);
  return { diffuse: (response * diffuse) / rejection, direct: response * direct };
}

/**
 * Share of its beam that a receiver must lose before its pin reads dark.
 *
 * @param lit - current of the whole beam @param dark - current below which the pin reads dark @param ambient - what is left without it
 * @returns 0 to 1, or null where it never reads dark: what comes from elsewhere is enough to keep it lit
 */
export function shareToTake({
  lit,
  dark,
  ambient,
}: {
  readonly lit: number;
  readonly dark: number;
  readonly ambient: number;
}): number | null {
  requirePositive('shareToTake', { lit, dark });
  requireNotNegative('shareToTake', { ambient });
  if (ambient >= dark) return null;
  return Math.max(0, 1 - (dark - ambient) / lit);
}

/** Limits of laser classes for a continuous point source seen through a 7 mm aperture [mW]. An estimate, no classification. */

export interface ClassLimits {
  readonly class1: number;
  /** Null outside the visible: no aversion response. */
  readonly class2: number | null;
  readonly class3R: number;
}

/**
 * 500–700 nm: 0.39, 1 and 5 mW. 700–1150 nm: 0.39 C4 and 2 C4 mW, C4 = 10^(0.002 (λ − 700)) up to 1050 nm, 5 beyond (C7 = 1).
 *
 * @param wavelengthNm - λ [nm]
 * @returns the limits, or null where they are not estimated: below 500 nm the photochemical limit applies, above 1150 nm others
 * Source: IEC 60825-1:2014 through public restatements; class 3R beyond 700 nm from memory.
 */
export function classLimits(wavelengthNm: number): ClassLimits | null {
  if (!(wavelengthNm >= 500 && wavelengthNm <= 1150)) return null;
  if (wavelengthNm <= 700) return { class1: 0.39, class2: 1, class3R: 5 };
  const c4 = wavelengthNm <= 1050 ? 10 ** (0.002 * (wavelengthNm - 700)) : 5;
  return { class1: 0.39 * c4, class2: null, class3R: 2 * c4 };
}

/** The lowest class whose limit the power keeps. */
export function classOf(powerMw: number, limits: ClassLimits): '1' | '2' | '3R' | '3B or higher' {
  if (powerMw <= limits.class1) return '1';
  if (limits.class2 !== null && powerMw <= limits.class2) return '2';
  return powerMw <= limits.class3R ? '3R' : '3B or higher';
}

/** Parallel beams that a 50 mm aperture takes in at once: n = ⌊50 / p⌋ + 1, p their pitch [mm], no more than there are. */
export const beamsTogether = (pitch: number, beams: number): number => Math.min(beams, Math.floor(50 / pitch) + 1);

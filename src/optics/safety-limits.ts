/**
 * Limits for continuous light from a point: what an eye may be exposed to, and where laser classes end. An estimate, no
 * classification: the eye's own aperture of 7 mm, one wavelength, no pulses, no extended source.
 *
 * Source: IEC 60825-1:2014 and Directive 2006/25/EC Annex II, both through public restatements; what is from memory says so.
 */
import { requirePositive } from '../positive.js';

/** Wavelengths for which limits are estimated [nm]: only the retina's thermal limit counts here. */
export const ESTIMATED = { from: 500, to: 1400 } as const;

/** Where the eye turns away by itself [nm]; classes 2 and the 0.25 s rest on it. */
export const VISIBLE = { from: 400, to: 700 } as const;

/** Time in which the eye turns away from visible light [s]. */
export const AVERSION = 0.25;

/** Exposure to count with where nothing makes the eye turn away [s]; the limit is constant from here on. */
export const UNWARNED = 10;

/** Area of the 7 mm aperture over which exposure is averaged [m²]: π/4 · 7² mm². */
export const PUPIL_AREA = Math.PI * 3.5e-3 ** 2;

/** Ends of classes for one source [mW]. */
export interface ClassLimits {
  readonly class1: number;
  /** Null outside the visible: no aversion response. */
  readonly class2: number | null;
  readonly class3R: number;
  readonly class3B: number;
}

export type LaserClass = '1' | '2' | '3R' | '3B' | '4';

/** Limits, or why none are estimated; whoever gets no estimate has to treat the light as class 3B. */
export type LimitsAnswer =
  | { readonly estimated: true; readonly limits: ClassLimits }
  | { readonly estimated: false; readonly why: string };

/**
 * Correction for wavelength, called C4 or C_A: 1 to 700 nm, 10^(0.002 (λ − 700)) to 1050 nm, 5 to 1400 nm.
 *
 * @param wavelengthNm - λ, 500 to 1400 [nm]
 * @throws {RangeError} outside that range
 */
export function c4(wavelengthNm: number): number {
  requireEstimated('c4', wavelengthNm);
  if (wavelengthNm <= 700) return 1;
  return wavelengthNm <= 1050 ? 10 ** (0.002 * (wavelengthNm - 700)) : 5;
}

/**
 * Correction for absorption before the retina, called C7 or C_C: 1 to 1150 nm, 10^(0.018 (λ − 1150)) to 1200 nm, 8 to 1400 nm.
 * The 2014 edition allows 8 + 10^(0.04 (λ − 1250)) beyond 1200 nm; the directive's 8, which is always less, is taken.
 *
 * @param wavelengthNm - λ, 500 to 1400 [nm]
 * @throws {RangeError} outside that range
 */
export function c7(wavelengthNm: number): number {
  requireEstimated('c7', wavelengthNm);
  if (wavelengthNm <= 1150) return 1;
  return wavelengthNm < 1200 ? 10 ** (0.018 * (wavelengthNm - 1150)) : 8;
}

/**
 * Largest irradiance at the eye: 18 C4 t^−0.25 W/m² below 10 s, 10 C4 C7 W/m² from 10 s on, averaged over 7 mm.
 * Shortest time: 50 µs, from where on both ranges of wavelength follow the same law in the directive.
 *
 * @param wavelengthNm - 500 to 1400 [nm] @param time - exposure, 50e-6 or more [s]
 * @returns [W/m²] @throws {RangeError} outside these ranges
 * C7 joins the law at 10 s only; below, it is left out, which is the lower limit.
 */
export function exposureLimit(wavelengthNm: number, time: number): number {
  if (!(time >= 50e-6 && time < Infinity)) throw new RangeError(`exposureLimit: time must be ≥ 50e-6 s, got ${time}`);
  const c = c4(wavelengthNm);
  return time < UNWARNED ? 18 * c * time ** -0.25 : 10 * c * c7(wavelengthNm);
}

/**
 * Ends of the classes at a wavelength: 500–700 nm 0.39, 1 and 5 mW; 700–1400 nm 0.39 C4 C7 and 2 C4 C7 mW, no class 2; 500 mW
 * for class 3B, which also bounds the others.
 *
 * @param wavelengthNm - λ > 0 [nm] @returns limits, or why they are not estimated
 * @throws {RangeError} unless λ is a finite number above zero
 * Source: as above; class 3R beyond 700 nm and 3B from memory. A public summary gives class 3R there as five times class 1
 * (1.95 C4 C7): the standard's rounded 2 is taken.
 */
export function classLimits(wavelengthNm: number): LimitsAnswer {
  requirePositive('classLimits', { wavelengthNm });
  if (wavelengthNm < ESTIMATED.from)
    return {
      estimated: false,
      why: 'below 500 nm light harms the retina photochemically as well, by a dose that adds up over hours, and the limit depends on how long one looks and at what size of source',
    };
  if (wavelengthNm > ESTIMATED.to)
    return {
      estimated: false,
      why: 'beyond 1400 nm light is stopped by cornea and lens, and limits of another kind hold',
    };
  const class3B = 500;
  if (wavelengthNm <= VISIBLE.to) return { estimated: true, limits: { class1: 0.39, class2: 1, class3R: 5, class3B } };
  const c = c4(wavelengthNm) * c7(wavelengthNm);
  return { estimated: true, limits: { class1: 0.39 * c, class2: null, class3R: 2 * c, class3B } };
}

/**
 * The lowest class whose limit the power keeps. Drive that is pulsed or dimmed counts at its peak as if continuous: no credit
 * for duty, as trains of pulses have limits of their own, which are not estimated.
 *
 * @param powerMw - accessible power at its peak [mW]
 */
export function classOf(powerMw: number, limits: ClassLimits): LaserClass {
  if (powerMw <= limits.class1) return '1';
  if (limits.class2 !== null && powerMw <= limits.class2) return '2';
  if (powerMw <= limits.class3R) return '3R';
  return powerMw <= limits.class3B ? '3B' : '4';
}

/** @returns whether the eye turns away by itself; it does not from infrared or ultraviolet */
export const warns = (wavelengthNm: number): boolean => wavelengthNm >= VISIBLE.from && wavelengthNm <= VISIBLE.to;

/** @returns exposure to count with [s]: 0.25 where the eye turns away, else 10, from where on the limit is constant */
export const exposureTime = (wavelengthNm: number): number => (warns(wavelengthNm) ? AVERSION : UNWARNED);

function requireEstimated(name: string, wavelengthNm: number): void {
  if (!(wavelengthNm >= ESTIMATED.from && wavelengthNm <= ESTIMATED.to))
    throw new RangeError(`${name}: holds from ${ESTIMATED.from} to ${ESTIMATED.to} nm, got ${wavelengthNm}`);
}

/** How much of an emitter's light can enter an eye, alone or beside its neighbours, and how far off it stays dangerous. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { type ClassLimits, classOf, exposureLimit, type LaserClass } from './safety-limits.js';

/** One emitter: peak power, and its beam as a cone. */
export interface Source {
  /** Peak power [mW]; dimmed or pulsed drive counts at its peak. */
  readonly powerMw: number;
  /** Diameter (1/e²) where it leaves the emitter [mm]. */
  readonly diameter: number;
  /** Full angle of divergence [mrad]. */
  readonly divergenceMrad: number;
}

/** The pupil, 100 mm from where the light leaves: nearer than that the eye can't make it sharp. All mm. */
const PUPIL = { diameter: 7, distance: 100 } as const;

/** Binoculars or a telescope: their front lens, which the eye gets all light of. All mm. */
const LENS = { diameter: 50, distance: 2000 } as const;

/**
 * Power that passes an aperture on the beam's axis: P (1 − exp(−2 R² / w²)), w = ½ hypot(d, φ z).
 * The hyperbola keeps the beam narrower than the straight cone (d + φ z)/2 does, so the power is rather over- than understated.
 *
 * @param source - emitter @param aperture - its diameter and its distance from the emitter's face [mm]
 * @returns [mW] @throws {RangeError} unless power, diameters > 0, divergence and distance ≥ 0
 * Source: Gaussian beam through a circle (Siegman, Lasers; ISO 11146, from memory).
 */
export function throughAperture(
  { powerMw, diameter, divergenceMrad }: Source,
  aperture: { readonly diameter: number; readonly distance: number },
): number {
  requirePositive('throughAperture', { powerMw, diameter, aperture: aperture.diameter });
  requireNotNegative('throughAperture', { divergenceMrad, distance: aperture.distance });
  const w = Math.hypot(diameter, 1e-3 * divergenceMrad * aperture.distance) / 2;
  return powerMw * -Math.expm1((-2 * (aperture.diameter / 2) ** 2) / w ** 2);
}

/**
 * Parallel beams in one plane that an aperture takes in at once: the most whose middles lie within its diameter. For a pitch p that
 * is ⌊D / p⌋ + 1, no more than there are.
 *
 * @param aperture - its diameter D [mm] @param at - where the beams stand, across them, in any order [mm]
 */
export function beamsTogether(aperture: number, at: readonly number[]): number {
  const sorted = [...at].sort((a, b) => a - b);
  return Math.max(0, ...sorted.map((from) => sorted.filter((to) => to >= from && to - from <= aperture).length));
}

/** What reaches an eye, by the two views that count. */
export interface Accessible {
  /** Emitters that shine into the view at once. */
  readonly beams: number;
  /** Their power together [mW]. */
  readonly powerMw: number;
  readonly class: LaserClass;
}

export interface EmissionEstimate {
  /** One emitter, bare eye. */
  readonly alone: Accessible;
  /** The worst place along a row of parallel beams, bare eye. */
  readonly eye: Accessible;
  /** The same through a 50 mm lens, binoculars or telescope. */
  readonly lens: Accessible;
}

/**
 * Class estimates of one emitter and of a row of parallel ones.
 *
 * A narrow beam passes whole in both views. A wide one, such as an LED's, hardly: it is judged by what enters a pupil 100 mm off;
 * a lens 2 m off then takes in even less.
 *
 * @param source - every emitter alike @param rows - where the beams of each set of parallel ones stand, across them [mm]
 * @param limits - at its wavelength @throws {RangeError} on figures out of range
 * Source: measuring conditions of IEC 60825-1:2014 (50 mm at 2000 mm; 7 mm at 100 mm), from memory.
 */
export function estimateEmission(
  source: Source,
  rows: readonly (readonly number[])[],
  limits: ClassLimits,
): EmissionEstimate {
  const most = (aperture: typeof PUPIL | typeof LENS) =>
    Math.max(1, ...rows.map((at) => beamsTogether(aperture.diameter, at)));
  const view = (aperture: typeof PUPIL | typeof LENS, beams: number): Accessible => {
    const powerMw = beams * throughAperture(source, aperture);
    return { beams, powerMw, class: classOf(powerMw, limits) };
  };
  return {
    alone: view(PUPIL, 1),
    eye: view(PUPIL, most(PUPIL)),
    lens: view(LENS, most(LENS)),
  };
}

/**
 * Nominal hazard distance: how far along a free beam the exposure limit E is passed, (√(4 P / (π E)) − a) / φ.
 * For bare eyes in clear air; 0 where the limit is kept at the emitter. The law asks for the beam's diameter and angle at 1/e of
 * its peak; those at 1/e², which are larger by √2, are turned into them here.
 *
 * @param source - emitter (1/e² figures) @param seen - wavelength [nm] and exposure time [s]
 * @returns distance [m]; Infinity for a beam that exceeds the limit and does not spread
 * @throws {RangeError} on figures out of range
 * Source: IEC 60825-1 and IEC TR 60825-14, as restated publicly.
 */
export function hazardDistance(source: Source, seen: { readonly wavelengthNm: number; readonly time: number }): number {
  const peak = { diameter: source.diameter / Math.SQRT2, divergenceMrad: source.divergenceMrad / Math.SQRT2 };
  return hazardDistanceAtPeak({ ...peak, powerMw: source.powerMw }, seen);
}

/** As `hazardDistance`, diameter (0 allowed) and divergence being those at 1/e of the peak. */
export function hazardDistanceAtPeak(
  { powerMw, diameter, divergenceMrad }: Source,
  { wavelengthNm, time }: { readonly wavelengthNm: number; readonly time: number },
): number {
  requirePositive('hazardDistance', { powerMw });
  requireNotNegative('hazardDistance', { diameter, divergenceMrad });
  const safe = 1e3 * Math.sqrt((4 * 1e-3 * powerMw) / (Math.PI * exposureLimit(wavelengthNm, time)));
  // mm over mrad is m.
  return safe <= diameter ? 0 : (safe - diameter) / divergenceMrad;
}

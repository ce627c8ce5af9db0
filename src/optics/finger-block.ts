/** How much of a beam a finger takes away, and how far beside the beam it may be. All lengths mm. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { normalBetween } from './normal.js';
import { integrate } from './quadrature.js';

/** Gaussian beam as it arrives: w its 1/e² radius. */
export interface Lit {
  readonly w: number;
  /** What takes the light: radius of the detector or of its lens; left out: the whole beam counts. */
  readonly aperture?: Aperture | undefined;
}

export interface Aperture {
  readonly radius: number;
  /** Where its centre stands beside the beam's, in the direction in which the finger moves, and across it. Default 0, 0. */
  readonly off?: readonly [number, number];
}

/** A straight-edged strip across the beam: a finger that stands through the plane of the beams. */
export interface Strip {
  readonly breadth: number;
  /** From the beam's middle to the strip's [mm]. */
  readonly offset: number;
}

/**
 * Share of the light that a strip takes away.
 *
 * Whole beam: B = Φ((u + f/2)/σ) − Φ((u − f/2)/σ), σ = w/2. Through an aperture: the double integral over circle and strip is done
 * across in closed form, B = ∫ φ(x/σ)/σ (Φ(y₁/σ) − Φ(y₀/σ)) dx over the part of the circle under the strip, y its chord; x = R sin t takes
 * the square root out of the ends. The shadow is geometric: diffraction at a finger's edge spreads over √(λ L), .4 mm at 300 mm.
 *
 * @param strip - breadth f ≥ 0, offset u @param lit - w, R > 0
 * @returns 0 to 1 @throws {RangeError} on figures out of range
 * Source: Gaussian beam (ISO 11146; Siegman, Lasers, from memory); integral worked out here, tests do it in two dimensions.
 */
export function blockedShare({ breadth, offset }: Strip, { w, aperture }: Lit): number {
  requirePositive('blockedShare', { w });
  requireNotNegative('blockedShare', { breadth });
  if (!Number.isFinite(offset)) throw new RangeError(`blockedShare: offset must be finite, got ${offset}`);
  const sigma = w / 2;
  const [from, to] = [offset - breadth / 2, offset + breadth / 2];
  if (aperture === undefined) return normalBetween(from / sigma, to / sigma);
  const whole = passed([-Infinity, Infinity], sigma, aperture);
  return whole > 0 ? Math.min(1, passed([from, to], sigma, aperture) / whole) : 0;
}

/** Beyond this many σ from its middle a beam counts as dark: less than 1e-18 of it. */
const DARK = 9;

/** Share of the beam's power that passes the aperture between two lines across the finger's way; the beam stands at 0, 0. */
function passed([from, to]: readonly [number, number], sigma: number, { radius, off = [0, 0] }: Aperture): number {
  requirePositive('aperture', { radius });
  const [low, high] = [from, to].map((x) => clamp(x - off[0], radius));
  const [a, b] = [clamp(-DARK * sigma - off[0], radius), clamp(DARK * sigma - off[0], radius)];
  const [start, end] = [Math.max(low!, a), Math.min(high!, b)];
  if (start >= end) return 0;
  return integrate(
    (t) => {
      const x = radius * Math.sin(t) + off[0];
      const chord = radius * Math.cos(t);
      const across = normalBetween((off[1] - chord) / sigma, (off[1] + chord) / sigma);
      return (Math.exp(-((x / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI))) * across * chord;
    },
    [Math.asin(start / radius), Math.asin(end / radius)],
  );
}

const clamp = (x: number, radius: number) => Math.max(-radius, Math.min(radius, x));

/**
 * Breadth of a round fingertip, standing on the deck, at the height of the beams: 2 √(h (f − h)) below its middle, f above.
 *
 * @param breadth - f > 0 @param height - of the beams above the deck, h > 0
 * @throws {RangeError} otherwise
 * Source: chord of a circle.
 */
export function breadthAt(breadth: number, height: number): number {
  requirePositive('breadthAt', { breadth, height });
  return height < breadth / 2 ? 2 * Math.sqrt(height * (breadth - height)) : breadth;
}

/**
 * Offset to which a finger flips a receiver, by the overlap it needs: b = f_eff/2 − c.
 *
 * @param breadth - of the finger at the beam's height, f_eff > 0 @param overlap - how far its edge must pass the beam's middle, c
 * @returns b, or null where even a centred finger does not reach: it is narrower than 2 c
 */
export function reach(breadth: number, overlap: number): number | null {
  requirePositive('reach', { breadth });
  const b = breadth / 2 - overlap;
  return b > 0 ? b : null;
}

/**
 * The same by light alone: the largest offset at which the finger still takes the share of light that flips the receiver.
 *
 * @param breadth - of the finger at the beam's height @param needed - share, 0 < s < 1: one less the threshold over the lit signal
 * @returns offset, or null where even a centred finger takes less
 * @throws {RangeError} on figures out of range
 */
export function reachByLight(breadth: number, needed: number, lit: Lit): number | null {
  requirePositive('reachByLight', { breadth, needed });
  if (!(needed < 1)) throw new RangeError(`reachByLight: needed must be < 1, got ${needed}`);
  if (off(lit) !== 0) throw new RangeError('reachByLight: an aperture beside the beam has two different reaches');
  const enough = (offset: number) => blockedShare({ breadth, offset }, lit) >= needed;
  if (!enough(0)) return null;
  return bisect(enough, 0, breadth / 2 + Math.max(DARK * lit.w, lit.aperture?.radius ?? 0));
}

/**
 * Overlap c that a share of light asks of a wide finger: how far its edge passes the beam's middle.
 *
 * @param needed - share, 0 < s < 1 @returns c; negative where less than half the light is enough
 */
export function overlapFor(needed: number, lit: Lit): number {
  requirePositive('overlapFor', { needed });
  if (!(needed < 1)) throw new RangeError(`overlapFor: needed must be < 1, got ${needed}`);
  const far = DARK * lit.w + 2 * (lit.aperture?.radius ?? 0) + Math.abs(off(lit));
  // An edge at −c of a strip so broad that its other edge lies in the dark.
  return -bisect((edge) => blockedShare({ breadth: 2 * far, offset: edge + far }, lit) >= needed, -far, far);
}

const off = ({ aperture }: Lit): number => aperture?.off?.[0] ?? 0;

/** @returns the last place where it holds, to 1e-12 of the range: it holds at the start, not at the end, and changes once */
function bisect(holds: (x: number) => boolean, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

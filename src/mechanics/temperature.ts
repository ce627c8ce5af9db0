/** What warmth does to a plastic spring. Temperatures °C. */
import { requireNotNegative, requirePositive } from '../positive.js';
import type { Findley } from './creep.js';

/** Temperature at which catalogue moduli hold. Source: ISO 291, standard atmosphere 23/50, from memory. */
export const ROOM = 23;

/** Modulus that a bar has at its heat deflection temperature under .45 MPa: the standard deflection is a strain of .2 % (ISO 75-1, method B, from memory). */
const AT_SOFTENING = 0.45 / 0.002;

/**
 * Modulus when warm: straight from its value at 23 °C to 225 MPa at the heat deflection temperature. Below 23 °C it counts as at 23.
 *
 * Plastics without crystals keep more than this until just below softening: it is on the careful side for them.
 *
 * @param modulus - at 23 °C [MPa], > 0 @param softens - heat deflection temperature at .45 MPa, above 23
 * @param at - temperature
 * @returns [MPa], never less than 225 or the modulus itself where that is lower
 * @throws {RangeError} on figures out of range
 * Source: the straight line is a planning rule of this project, no source; its two ends are the material's own.
 */
export function modulusAt({
  modulus,
  softens,
  at,
}: {
  readonly modulus: number;
  readonly softens: number;
  readonly at: number;
}): number {
  requirePositive('modulusAt', { modulus });
  if (!(softens > ROOM)) throw new RangeError(`modulusAt: softens must be above ${ROOM} °C, got ${softens}`);
  if (!Number.isFinite(at)) throw new RangeError(`modulusAt: the temperature must be finite, got ${at}`);
  const end = Math.min(modulus, AT_SOFTENING);
  const way = Math.min(1, Math.max(0, (at - ROOM) / (softens - ROOM)));
  return modulus + (end - modulus) * way;
}

/** Warmer by so much, creep runs twice as fast [K]. Source: common practice, a rule of thumb well below softening; no source. */
const TWICE_AS_FAST = 10;

/**
 * Findley's law at another temperature: time runs twice as fast for every 10 K above 23 °C, so A grows by 2^(n ΔT / 10).
 * Below 23 °C nothing is gained. Near softening a plastic creeps faster still.
 *
 * @param at - [°C] @throws {RangeError} on negative figures
 * Source: time–temperature superposition (Findley, Lai & Onaran 1976) with that rule of thumb for its shift.
 */
export function warmCreep({ a, n }: Findley, at: number): Findley {
  requireNotNegative('warmCreep', { a, n });
  return { a: a * 2 ** ((n * Math.max(0, at - ROOM)) / TWICE_AS_FAST), n };
}

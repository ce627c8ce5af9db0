import { requireNotNegative, requirePositive } from '../positive.js';

/**
 * First natural frequency of an arm on its hinge, screw off its pad (the lower bound): f = √(K / J) / 2π.
 *
 * @param stiffness - K [N·mm/rad] @param inertia - J about the hinge [t·mm²]
 * @returns f [Hz] @throws {RangeError} unless both are finite and > 0
 * Source: single-degree-of-freedom oscillator (Thomson, Theory of Vibration).
 */
export function firstFrequency(stiffness: number, inertia: number): number {
  requirePositive('firstFrequency', { stiffness, inertia });
  return Math.sqrt(stiffness / inertia) / (2 * Math.PI);
}

/**
 * Moment of inertia of a uniform bar about an axis off its centre: J = m (d² + s²/12).
 *
 * @param mass - m [t] @param distance - d of its centre from the axis [mm] @param span - s, its length [mm]
 * @returns J [t·mm²] @throws {RangeError} on negative figures
 * Source: Steiner's parallel-axis theorem.
 */
export function barInertia(mass: number, distance: number, span: number): number {
  requireNotNegative('barInertia', { mass, distance, span });
  return mass * (distance ** 2 + span ** 2 / 12);
}

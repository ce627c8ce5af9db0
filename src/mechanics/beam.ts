/** Straight beams of constant section, small deflection: rails, base arms, moving arms. */
import { requirePositive } from '../positive.js';

export interface Bent {
  /** Largest deflection [mm]. */
  readonly sag: number;
  /** Largest slope [rad]. */
  readonly slope: number;
}

export type Ends = 'supported' | 'built-in';

/**
 * Beam under an even load q: supported 5 q L⁴/384EI and q L³/24EI at the ends; built in q L⁴/384EI and √3 q L³/216EI at
 * L/2 (1 − 1/√3) from the ends.
 *
 * @param load - q [N/mm] @param length - L [mm] @param stiffness - E I [N·mm²] @param ends - how both ends are held
 * @returns sag [mm] and slope [rad] @throws {RangeError} unless all > 0
 * Source: Young & Budynas, Roark's Formulas, 7th ed., Table 8.1 (from memory; slope of the built-in beam derived from its line).
 */
export function evenLoad(options: { load: number; length: number; stiffness: number; ends: Ends }): Bent {
  const { load, length, stiffness, ends } = options;
  requirePositive('evenLoad', { load, length, stiffness });
  const unit = (load * length ** 3) / stiffness;
  return ends === 'supported'
    ? { sag: (5 * unit * length) / 384, slope: unit / 24 }
    : { sag: (unit * length) / 384, slope: (Math.sqrt(3) * unit) / 216 };
}

/**
 * Beam under a force P at mid-span: supported P L³/48EI and P L²/16EI; built in P L³/192EI and P L²/64EI at the quarter points.
 *
 * @param force - P [N] @param length - L [mm] @param stiffness - E I [N·mm²] @param ends - how both ends are held
 * @returns sag [mm] and slope [rad] @throws {RangeError} unless all > 0
 * Source: as above.
 */
export function midForce(options: { force: number; length: number; stiffness: number; ends: Ends }): Bent {
  const { force, length, stiffness, ends } = options;
  requirePositive('midForce', { force, length, stiffness });
  const unit = (force * length ** 2) / stiffness;
  return ends === 'supported'
    ? { sag: (unit * length) / 48, slope: unit / 16 }
    : { sag: (unit * length) / 192, slope: unit / 64 };
}

/**
 * Cantilever with a force P at its end: P L³/3EI and P L²/2EI. The base arm under its own screw, from the post or the last fixing.
 *
 * @param force - P [N] @param length - L [mm] @param stiffness - E I [N·mm²]
 * @returns sag [mm] and slope [rad] at the end @throws {RangeError} unless all > 0
 * Source: as above.
 */
export function endForce(options: { force: number; length: number; stiffness: number }): Bent {
  const { force, length, stiffness } = options;
  requirePositive('endForce', { force, length, stiffness });
  return { sag: (force * length ** 3) / (3 * stiffness), slope: (force * length ** 2) / (2 * stiffness) };
}

/**
 * Twist at mid-span under a torque T there, both ends held against turning: T L / (4 G J).
 *
 * @param torque - T [N·mm] @param length - L [mm] @param stiffness - G J [N·mm²]
 * @returns twist [rad] @throws {RangeError} unless all > 0
 * Source: Saint-Venant torsion, two halves in parallel (Timoshenko & Gere, Mechanics of Materials).
 */
export function midTwist(options: { torque: number; length: number; stiffness: number }): number {
  const { torque, length, stiffness } = options;
  requirePositive('midTwist', { torque, length, stiffness });
  return (torque * length) / (4 * stiffness);
}

/**
 * Largest slope of a part that is bowed as an arc: bow b over its length L gives 4 b / L at its ends. A bow stated for
 * another length grows with its square (even curvature).
 *
 * @param bow - stated bow [mm] @param statedLength - for a part so long [mm] @param length - L [mm]
 * @returns slope [rad] @throws {RangeError} unless all > 0
 * Source: sagitta of a shallow arc.
 */
export function bowSlope(bow: number, statedLength: number, length: number): number {
  // A part that doesn't bow is flat.
  if (bow === 0) return 0;
  requirePositive('bowSlope', { bow, statedLength, length });
  return (4 * bow * length) / statedLength ** 2;
}

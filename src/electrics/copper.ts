/** Copper wire: size by gauge, resistance by length and temperature. */
import { requirePositive } from '../positive.js';

/** Resistivity of annealed copper at 20 °C [Ω·mm]. Source: IEC 60028: 1.7241e-8 Ω·m. */
export const COPPER = 1.7241e-5;
/** Rise of its resistance a kelvin, from 20 °C [1/K]. Source: IEC 60028: 0.00393. */
export const COPPER_RISE = 0.00393;

/**
 * Diameter of a solid wire by American wire gauge: d = 0.127 · 92^((36 − n) / 39) mm. Stranded wires of a gauge have that much copper.
 *
 * @param gauge - n; 0000 is −3 @returns [mm]
 * @throws {RangeError} beyond −3 … 40
 * Source: ASTM B258, which defines gauge 36 as 0.005 inch and 0000 as 0.46 inch with 39 equal steps between.
 */
export function gaugeDiameter(gauge: number): number {
  if (!(gauge >= -3 && gauge <= 40)) throw new RangeError(`gaugeDiameter: the gauge must be −3 to 40, got ${gauge}`);
  return 0.127 * 92 ** ((36 - gauge) / 39);
}

/**
 * Resistance of a length of solid copper: R = ρ (1 + α (T − 20)) L / A.
 *
 * @param length - one way [mm] @param diameter - of the copper [mm] @param celsius - of the wire @returns [Ω]
 */
export function wireResistance({
  length,
  diameter,
  celsius = 20,
}: {
  readonly length: number;
  readonly diameter: number;
  readonly celsius?: number;
}): number {
  requirePositive('wireResistance', { length, diameter });
  return (COPPER * (1 + COPPER_RISE * (celsius - 20)) * length) / ((Math.PI / 4) * diameter ** 2);
}

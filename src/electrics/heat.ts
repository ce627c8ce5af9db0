/** How warm a small box gets inside, closed and with vents. Kelvin, watts, square metres. */
import { requirePositive } from '../positive.js';

/**
 * Heat that leaves each square metre of a small upright or lying surface in still air, by convection and radiation together
 * [W/m²K]: 5 to 10 in common handbooks; the middle of it. Source: common practice.
 */
export const SURFACE = 8;
/** Air: heat capacity by volume [J/m³K] at about 30 °C. Source: 1.16 kg/m³ × 1006 J/kgK, common tables. */
const AIR = 1167;
/** Flow through a sharp opening against the ideal one. Source: ASHRAE Handbook, Fundamentals, natural ventilation: .65 (from memory). */
const DISCHARGE = 0.65;
const GRAVITY = 9.81;

/** @returns warmth over the air around of a closed box [K] @throws {RangeError} on figures out of range */
export function closedRise({ watts, area }: { readonly watts: number; readonly area: number }): number {
  requirePositive('closedRise', { area });
  return watts / (SURFACE * area);
}

/**
 * Draught of warm air: q = C A √(2 g h ΔT / T), the law of flow by stack effect (ASHRAE Handbook, Fundamentals), through inlets
 * below and outlets above of this free area each, h apart.
 *
 * @returns heat that it carries away [W] at a warmth of `rise` [K] over air of `around` [K]
 */
export function ventedHeat({
  rise,
  around,
  opening,
  height,
}: {
  readonly rise: number;
  readonly around: number;
  readonly opening: number;
  readonly height: number;
}): number {
  requirePositive('ventedHeat', { rise, around, height });
  // Inlet and outlet in a row: their resistances add.
  const through = opening / Math.SQRT2;
  return AIR * rise * DISCHARGE * through * Math.sqrt((2 * GRAVITY * height * rise) / around);
}

/** @returns free area of inlets, and of outlets, that keep a box at `rise` over the air around [m²]; 0 where it needs none */
export function ventArea({
  watts,
  area,
  rise,
  around,
  height,
}: {
  readonly watts: number;
  readonly area: number;
  readonly rise: number;
  readonly around: number;
  readonly height: number;
}): number {
  const left = watts - SURFACE * area * rise;
  if (left <= 0) return 0;
  return left / ventedHeat({ rise, around, opening: 1, height });
}

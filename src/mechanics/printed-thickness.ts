import { requirePositive } from '../positive.js';

/**
 * Thickness of a wall of n printed lines side by side: t = w + (n − 1)(w − h (1 − π/4)). A line is a rectangle with round ends
 * and neighbours overlap until the gap between their round ends is filled.
 *
 * @param lines - n, a whole number ≥ 1 @param lineWidth - w [mm] @param layer - height h [mm], < w
 * @returns t [mm] @throws {RangeError} outside those
 * Source: geometry of a stadium-shaped line, as slicing practice has it (from memory; common practice).
 */
export function printedThickness(lines: number, lineWidth: number, layer: number): number {
  requirePositive('printedThickness', { lines, lineWidth, layer });
  if (!Number.isInteger(lines)) throw new RangeError(`printedThickness: lines must be whole, got ${lines}`);
  if (!(layer < lineWidth)) throw new RangeError(`printedThickness: layer must be below the line width, got ${layer}`);
  return lineWidth + (lines - 1) * (lineWidth - layer * (1 - Math.PI / 4));
}

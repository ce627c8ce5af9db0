/** What of a bed can be printed on. mm. */
import type { Printer } from './printer.js';

/**
 * @returns x and y within the edge margin, as a reader would say them: 90.46 − 2 · 5.1 is 80.25999… in binary
 */
export function usableBed({
  bedX,
  bedY,
  edgeMargin,
}: Pick<Printer, 'bedX' | 'bedY' | 'edgeMargin'>): readonly [x: number, y: number] {
  const usable = (side: number) => Math.round(1e6 * (side - 2 * edgeMargin.value)) / 1e6;
  return [usable(bedX.value), usable(bedY.value)];
}

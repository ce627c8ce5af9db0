/** Short names for a design. */
import type { TunePoint } from '../tune/types.js';

/** `folded in 3, 10.5 × 1.26 mm` */
export function leafName({
  layout,
  legs,
  length,
  thickness,
}: Pick<TunePoint, 'layout' | 'legs' | 'length' | 'thickness'>): string {
  const size = `${length} × ${thickness} mm`;
  if (layout === 'folded') return `folded in ${legs}, ${size}`;
  return layout === 'notch' ? `notch of radius ${length}, ${thickness} mm thick` : `${layout}, ${size}`;
}

/** Bounds that more than one check of shapes uses. */
import type { Printer } from '../printers/printer.js';

/** Two parts may share this much without being said to overlap: rounding of facets [mm³]. */
export const SHARED = 0.01;

/**
 * Least gap between parts that are not meant to touch [mm]. A printed gap may come out smaller by the printer's gap
 * tolerance: what moves must still be free then. What stands still may close up to half of it, as it need only go together.
 */
export const leastGaps = (printer: Printer): { readonly still: number; readonly moving: number } => ({
  still: printer.gapTolerance.value / 2,
  moving: printer.gapTolerance.value,
});

/** Drawn lengths are compared to this: facets of a round hole stand off by up to a hundredth [mm]. */
export const DRAWN = 0.02;

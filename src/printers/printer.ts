import type { Datum } from '../data.js';

/** How close two surfaces stand: diametral (or both-sided) clearance by class [mm]. */
export type FitClass = 'press' | 'snug' | 'slide' | 'free';

/** A filament printer, by what it holds rather than by maker. */
export interface Printer {
  readonly title: string;
  /** Usable bed and height [mm]. */
  readonly bedX: Datum;
  readonly bedY: Datum;
  readonly bedZ: Datum;
  readonly nozzle: Datum;
  readonly lineWidth: Datum;
  readonly layer: Datum;
  /** Diametral clearance of each fit class [mm]. */
  readonly press: Datum;
  readonly snug: Datum;
  readonly slide: Datum;
  readonly free: Datum;
  /** What to add to a vertical hole's diameter [mm]. */
  readonly holeGrowth: Datum;
  /** How far a printed gap may be off [mm]. */
  readonly gapTolerance: Datum;
  /** Bow of a 100 mm long part off the bed [mm]. */
  readonly warpPer100: Datum;
  /** Largest angle from the vertical at which an underside prints without support [°]. */
  readonly overhangDeg: Datum;
  /** Longest bridge: lines drawn taut between two supports [mm]. */
  readonly bridge: Datum;
  /** Kept free along each edge of the bed [mm]. */
  readonly edgeMargin: Datum;
  /** Kept free between neighbours on the bed [mm]. */
  readonly spacing: Datum;
}

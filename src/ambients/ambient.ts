import type { Datum } from '../data.js';

/** Light that falls on the panel from elsewhere, over the wavelengths that silicon sees. */
export interface Ambient {
  readonly title: string;
  /** From one direction, as the sun shines [W/m²]: in the worst case straight into a receiver's tube. */
  readonly directWm2: Datum;
  /** From everywhere: its irradiance on a surface [W/m²]. */
  readonly diffuseWm2: Datum;
}

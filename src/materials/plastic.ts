import type { Datum } from '../data.js';

/** A printed plastic. Figures are for FDM parts, in the layer plane unless said. */
export interface Plastic {
  readonly title: string;
  /** Flexural modulus [MPa]. */
  readonly modulus: Datum;
  readonly poisson: Datum;
  /** Tensile strength in plane [MPa]. */
  readonly strength: Datum;
  /** Strength across layers over strength in plane. */
  readonly acrossLayers: Datum;
  readonly yieldStrain: Datum;
  /** Strain allowed for minutes, as a fraction. */
  readonly shortTermStrain: Datum;
  /** Strain allowed for years, as a fraction. */
  readonly sustainedStrain: Datum;
  /** Findley creep strain(t) = e0 (1 + A tⁿ), t in hours. */
  readonly creepA: Datum;
  readonly creepN: Datum;
  /** Heat deflection temperature at .45 MPa [°C]. */
  readonly softensC: Datum;
  /** Linear expansion [1/K]. */
  readonly expansion: Datum;
  /** Density [g/cm³]. */
  readonly densityGcm3: Datum;
  /** Friction against steel. */
  readonly friction: Datum;
}

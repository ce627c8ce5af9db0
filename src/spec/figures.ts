/**
 * The figures of a part, plastic or printer that a preset may spell out or override: key, limits, unit, meaning.
 * Keys in the preset are those of the types, with underscores: `boresightSigmaDeg` is `boresight_sigma_deg`.
 */
import type { Ambient } from '../ambients/ambient.js';
import type { Emitter, Receiver } from '../components/types.js';
import type { Plastic } from '../materials/plastic.js';
import type { Printer } from '../printers/printer.js';

/** Limits of one figure: outside them it is a mistake, not a choice. */
export interface Figure {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  readonly what: string;
  readonly whole?: boolean;
  /** May be left out of a part that is spelled out: it is solved then, or not there. */
  readonly open?: boolean;
}

/** One for each figure of T. */
export type Figures<T> = { readonly [K in Exclude<keyof T, 'title'>]-?: Figure };

const figure = (least: number, most: number, words: { unit: string; what: string; whole?: boolean }): Figure => ({
  least,
  most,
  ...words,
});
const mm = (least: number, most: number, what: string) => figure(least, most, { unit: 'mm', what });
const share = (least: number, most: number, what: string) => figure(least, most, { unit: '', what });

/** Diameter, wires and the receiver's aperture end where kits were drawn and checked; a wider one asks for a frame of its own. */
export const emitterFigures: Figures<Emitter> = {
  diameter: mm(3, 15, 'Body diameter'),
  length: mm(4, 40, 'Body, front face to rear face'),
  flangeDiameter: { ...mm(3, 17, 'Flange at the rear; left out: none'), open: true },
  flangeLength: { ...mm(0.3, 5, 'Thickness of that flange'), open: true },
  wireDiameter: mm(0.5, 6, 'Both wires as one bundle, where they leave the rear'),
  boresightSigmaDeg: figure(0.05, 5, { unit: '°', what: 'Rayleigh parameter of the angle between beam and body' }),
  divergenceMrad: figure(0.05, 1000, { unit: 'mrad', what: 'Full angle of divergence' }),
  beamDiameter: mm(0.2, 12, 'Beam diameter (1/e²) at the front face'),
  powerMw: figure(0.01, 500, { unit: 'mW', what: 'Optical power; measure it, a label is no class' }),
  wavelengthNm: figure(400, 1100, { unit: 'nm', what: 'Wavelength' }),
  massG: figure(0.05, 60, { unit: 'g', what: 'Mass' }),
  currentMa: figure(1, 500, { unit: 'mA', what: 'Supply current' }),
  voltageV: figure(1, 24, { unit: 'V', what: 'Supply voltage' }),
};

export const receiverFigures: Figures<Receiver> = {
  width: mm(2, 20, 'Body across the beam'),
  height: mm(2, 20, 'Body along its legs'),
  depth: mm(1, 15, 'Body along the beam'),
  sensorFromTop: mm(0.2, 19, "Sensitive spot, from the body's end away from the legs"),
  legs: figure(2, 4, { unit: '', what: 'Number of legs', whole: true }),
  legWidth: mm(0.2, 1.5, 'Leg width'),
  legPitch: mm(0.5, 5.08, 'Between neighbouring legs'),
  detectorRadius: mm(0.05, 5, 'Radius of the lens, or of the bare detector'),
  sensitivity: figure(1e-4, 20, {
    unit: 'mA per W/m²',
    what: 'Current for irradiance, at the wavelength it sees best',
  }),
  filterFromNm: figure(0, 1000, { unit: 'nm', what: 'Its body blocks what is shorter; 0: clear' }),
  apertureDiameter: { ...mm(0.5, 10, 'Aperture tube, inside; left out: solved'), open: true },
  apertureDepth: { ...mm(2, 40, 'Aperture tube, length; left out: solved'), open: true },
  massG: figure(0.05, 20, { unit: 'g', what: 'Mass' }),
};

export const ambientFigures: Figures<Ambient> = {
  directWm2: figure(0, 1400, { unit: 'W/m²', what: 'From one direction, as the sun shines' }),
  diffuseWm2: figure(0, 500, { unit: 'W/m²', what: 'From everywhere, on a surface' }),
};

export const plasticFigures: Figures<Plastic> = {
  modulus: figure(100, 20000, { unit: 'MPa', what: 'Flexural modulus as printed' }),
  poisson: share(0.1, 0.49, "Poisson's ratio"),
  strength: figure(5, 200, { unit: 'MPa', what: 'Tensile strength in the layer plane' }),
  acrossLayers: share(0.05, 1, 'Strength across layers over strength in plane'),
  yieldStrain: share(0.002, 0.3, 'Strain at yield, as a fraction'),
  shortTermStrain: share(0.001, 0.15, 'Strain allowed for minutes, as a fraction'),
  sustainedStrain: share(0.0005, 0.05, 'Strain allowed for years, as a fraction'),
  creepA: share(0, 5, 'A in strain(t) = e0 (1 + A tⁿ), t in hours'),
  creepN: share(0.01, 1, 'n in strain(t) = e0 (1 + A tⁿ), t in hours'),
  softensC: figure(30, 300, { unit: '°C', what: 'Heat deflection temperature at 0.45 MPa' }),
  expansion: figure(1e-6, 4e-4, { unit: '1/K', what: 'Linear thermal expansion' }),
  densityGcm3: figure(0.5, 3, { unit: 'g/cm³', what: 'Density' }),
  friction: share(0.05, 1, 'Friction against steel'),
};

export const printerFigures: Figures<Printer> = {
  bedX: mm(80, 1000, 'Bed, left to right'),
  bedY: mm(80, 1000, 'Bed, front to back'),
  bedZ: mm(40, 1000, 'Height'),
  nozzle: mm(0.15, 1.2, 'Nozzle'),
  lineWidth: mm(0.15, 1.6, 'Width of a printed line'),
  layer: mm(0.04, 0.8, 'Layer height'),
  press: mm(0, 1, 'Diametral clearance of a press fit'),
  snug: mm(0, 1, 'Diametral clearance of a snug fit'),
  slide: mm(0, 1.5, 'Diametral clearance of a sliding fit'),
  free: mm(0, 2, 'Diametral clearance of a free fit'),
  holeGrowth: mm(0, 0.5, 'What to add to the diameter of a vertical hole'),
  gapTolerance: mm(0.02, 1, 'How far a printed gap may be off'),
  warpPer100: mm(0, 2, 'Bow of a 100 mm long part off the bed'),
  overhangDeg: figure(20, 80, { unit: '°', what: 'Largest angle of an underside from the vertical, without support' }),
  bridge: mm(1, 50, 'Longest bridge'),
  edgeMargin: mm(0, 30, 'Kept free along each edge of the bed'),
  spacing: mm(0, 30, 'Kept free between neighbours on the bed'),
};

/** @returns the preset's key for a figure's name in the types: `warpPer100` → `warp_per_100`, `densityGcm3` → `density_gcm3` */
export const presetKey = (name: string) =>
  name.replace(/([a-z])(\d{2,})/g, '$1_$2').replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

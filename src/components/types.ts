import type { Datum } from '../data.js';

/** A barrel or LED that sends one beam; its axis is the body's. */
export interface Emitter {
  readonly title: string;
  /** Body, front face to rear face [mm]. */
  readonly diameter: Datum;
  readonly length: Datum;
  /** Flange at the rear, as an LED has: diameter and thickness [mm]; left out: none. */
  readonly flangeDiameter?: Datum;
  readonly flangeLength?: Datum;
  /** Diameter of the pair of wires leaving at the rear, as one bundle [mm]. */
  readonly wireDiameter: Datum;
  /** Rayleigh parameter of the angle between beam and body [°]. */
  readonly boresightSigmaDeg: Datum;
  /** Full angle of divergence [mrad]. */
  readonly divergenceMrad: Datum;
  /** Beam diameter (1/e²) at the front face [mm]. */
  readonly beamDiameter: Datum;
  readonly powerMw: Datum;
  readonly wavelengthNm: Datum;
  readonly massG: Datum;
  readonly currentMa: Datum;
  readonly voltageV: Datum;
}

/** A receiver on legs. The light enters the flat front across the legs. */
export interface Receiver {
  readonly title: string;
  /** Body across the beam, along the legs, along the beam [mm]. */
  readonly width: Datum;
  readonly height: Datum;
  readonly depth: Datum;
  /** Sensitive spot's height above the body's end where the legs leave is height − this, measured from the far end [mm]. */
  readonly sensorFromTop: Datum;
  readonly legs: Datum;
  readonly legWidth: Datum;
  readonly legPitch: Datum;
  /** Radius of the lens or bare detector that takes the light [mm]. */
  readonly detectorRadius: Datum;
  /** Current it sinks for irradiance at the wavelength it sees best [mA per W/m²]. */
  readonly sensitivity: Datum;
  /** Its body blocks what is shorter [nm]; 0: clear. */
  readonly filterFromNm: Datum;
  /** Aperture tube in front of it: diameter and length [mm]; left out: solved. */
  readonly apertureDiameter?: Datum;
  readonly apertureDepth?: Datum;
  readonly massG: Datum;
}

/** A receiver whose aperture is settled. */
export type ReceiverBehindTube = Receiver & { readonly apertureDiameter: Datum; readonly apertureDepth: Datum };

export type ScrewSize = 'M2' | 'M2.5' | 'M3' | 'M4';

/** An ISO metric thread with the heads and nuts used here. All mm. */
export interface Thread {
  readonly diameter: Datum;
  readonly pitch: Datum;
  /** Clearance hole, medium (ISO 273). */
  readonly clearance: Datum;
  /** Socket head cap screw (ISO 4762): head diameter (knurled), height, hex key. */
  readonly capHead: Datum;
  readonly capHeight: Datum;
  readonly capKey: Datum;
  /** Countersunk hex socket screw (ISO 10642): largest actual head diameter, head height, key. */
  readonly sunkHead: Datum;
  readonly sunkHeight: Datum;
  readonly sunkKey: Datum;
  /** Set screw with flat point (ISO 4026): key. */
  readonly setKey: Datum;
  /** Hex nut (ISO 4032): across flats, height. */
  readonly nutFlats: Datum;
  readonly nutHeight: Datum;
  /** Hole in which the screw forms its own thread. */
  readonly pilot: Datum;
  /** Lengths stocked, per kind of head. */
  readonly capLengths: Datum<readonly number[]>;
  readonly sunkLengths: Datum<readonly number[]>;
  readonly setLengths: Datum<readonly number[]>;
}

/** Parallel pin (ISO 2338): what the adjusting screw bears on. All mm. */
export interface Pin {
  readonly title: string;
  readonly diameter: Datum;
  readonly lengths: Datum<readonly number[]>;
}

/** Hexagon key (ISO 2936). All mm. */
export interface HexKey {
  readonly flats: Datum;
  /** Across corners, largest: what has to pass through an access hole. */
  readonly corners: Datum;
  readonly longArm: Datum;
  readonly shortArm: Datum;
}

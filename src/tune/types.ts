/** What a sweep varies, and what it tells of each design. mm, N, MPa, Hz; angles in degrees, strains in per cent, as they are read. */
import type { ScrewSize } from '../components/types.js';
import type { LeafLayout } from '../spec/spec.js';

/** What may be varied: paths of the preset. */
export const VARIED = [
  'leaf.layout',
  'leaf.legs',
  'leaf.length',
  'leaf.thickness',
  'leaf.width',
  'material',
  'aim.tilt',
  'screws.adjust',
] as const;
export type VariedPath = (typeof VARIED)[number];

/** The values of one path, in the order in which they are tried. */
export interface Axis {
  readonly path: VariedPath;
  readonly values: readonly (number | string)[];
}

/** One design: the leaf in full, the rest where it is varied. */
export interface TunePoint {
  /** Its number in the sweep, from 1. */
  readonly number: number;
  readonly layout: LeafLayout;
  readonly legs: number;
  readonly length: number;
  readonly thickness: number;
  /** Undefined: as wide as the pitch allows, as for a kit. */
  readonly width: number | undefined;
  /** Undefined: the preset's. */
  readonly material: string | undefined;
  readonly tiltDeg: number | undefined;
  readonly adjust: ScrewSize | undefined;
}

/** Why a design fails; the letter stands in tables. */
export const FAULTS = {
  strain: { letter: 'S', what: 'strain held for years at the lowest beam is over what the plastic takes' },
  stress: { letter: 'P', what: 'peak stress when the stop touches at its latest is over the strength / 1.5' },
  stop: { letter: 'M', what: 'strain when the stop touches at its latest is over what the plastic takes for a moment' },
  preload: { letter: 'L', what: 'preload after a year is less than shock or wires take off the screw' },
  force: { letter: 'F', what: 'the screw pulls, or pushes harder than its nut’s pocket bears' },
  gap: { letter: 'G', what: 'legs come too near each other when the stop touches' },
  room: { letter: 'Z', what: 'no room: the leaf is higher than the mount can be' },
  post: { letter: 'A', what: 'post and arm are less than five leaf thicknesses deep and would bend with the leaf' },
  bias: { letter: 'B', what: 'the arm would be printed tilted up so far that it no longer clears the leaf' },
  around: { letter: 'K', what: 'the kit can’t be laid out around this mount' },
  undrawn: { letter: 'X', what: 'can’t be drawn: legs, stop and screw find no room together' },
  unsolved: { letter: 'N', what: 'no equilibrium was found' },
} as const satisfies Record<string, { letter: string; what: string }>;
export type FaultCode = keyof typeof FAULTS;

export interface Fault {
  readonly code: FaultCode;
  readonly measured: number | null;
  readonly limit: number | null;
  readonly unit: string;
  /** What stands in the way, where figures don't say it. */
  readonly message?: string;
}

/** What is worth knowing of a design that passes; the letter stands in tables. */
export const REMARKS = {
  thick: { letter: 't', what: 'printed 0.05 mm thicker it is strained over what the plastic holds for years' },
  thin: { letter: 'n', what: 'printed 0.05 mm thinner it loses its preload within a year' },
  quiet: { letter: 'q', what: 'rings below 40 Hz' },
  lock: {
    letter: 'l',
    what: 'the screw pushes with less than 3 N at the highest beam: lock it with a prevailing-torque nut or lacquer',
  },
  lines: { letter: 'w', what: 'the thickness is no whole number of print lines: the slicer decides what is printed' },
} as const satisfies Record<string, { letter: string; what: string }>;
export type RemarkCode = keyof typeof REMARKS;

/** What a printed thickness off by ∓0.05 mm does: changes in per cent of the nominal figure. */
export interface ThicknessEffect {
  readonly stiffness: number;
  readonly force: number;
  readonly strain: number;
}

export interface TuneFigures {
  /** Tilt either way that is asked for, and that at which the strain held for years is just reached [°]. */
  readonly tilt: number;
  readonly tiltHeld: number;
  /** Screw force at the highest, level and lowest beam [N]. */
  readonly force: { readonly highest: number; readonly level: number; readonly lowest: number };
  /** At the screw [N/mm], and about the leaf [N·mm/rad]. */
  readonly screwStiffness: number;
  readonly stiffness: number;
  /** Held at the lowest beam, and what the plastic holds for years [%]. */
  readonly strain: number;
  readonly strainAllowed: number;
  /** At the stop's latest contact [%], [MPa]. */
  readonly stopStrain: number;
  readonly stopStress: number;
  /** Strength over the peak stress at the lowest beam, and at the stop's latest contact. */
  readonly safety: number;
  readonly stopSafety: number;
  /** Push of the screw at the highest beam after a year there [N], and the preload over what is needed then. */
  readonly preloadLeft: number;
  readonly preloadRatio: number;
  /** How far the screw can be backed off after a year at the lowest beam before it leaves its pad [°]. */
  readonly backOff: number;
  /** Per turn of the screw: of the beam [°], and at the farthest receiver [mm]. */
  readonly degPerTurn: number;
  readonly mmPerTurn: number;
  /** From the leaf to the farthest receiver [mm]. */
  readonly reach: number;
  readonly frequency: number;
  readonly corrected: boolean;
  /** −0.05 mm and +0.05 mm; null where no equilibrium was found. */
  readonly thinner: ThicknessEffect | null;
  readonly thicker: ThicknessEffect | null;
}

export interface TuneMount {
  /** Front to rear, width, and from the rail's floor to the barrel's axis [mm]. */
  readonly length: number;
  readonly width: number;
  readonly axis: number;
  /** Chosen by the rules of the kit's own solver [mm], [°]. */
  readonly legPitch: number;
  readonly fillet: number;
  readonly preload: number;
}

/** One line of the table. */
export interface TuneRow {
  readonly point: TunePoint;
  readonly mount: TuneMount | null;
  readonly figures: TuneFigures | null;
  readonly faults: readonly Fault[];
  readonly remarks: readonly RemarkCode[];
}

export const passes = ({ faults }: TuneRow): boolean => faults.length === 0;

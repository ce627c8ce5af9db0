/**
 * A validated preset: every default filled in, every catalogue name replaced by its figures, angles and lengths checked.
 * What the preset leaves to be solved is `undefined` here and is filled in by `layout/`.
 */
import type { Ambient } from '../ambients/ambient.js';
import type { Emitter, ReceiverBehindTube, ScrewSize } from '../components/types.js';
import type { Plastic } from '../materials/plastic.js';
import type { Printer } from '../printers/printer.js';
import type { BaySpec } from './bay.js';

export type LeafLayout = 'in-line' | 'upright' | 'folded' | 'notch';

/** Labels for another use of the same panel. */
export interface LabelSet {
  /** Of small letters, digits and hyphens: a folder of the kit is named after it. */
  readonly name: string;
  /** labels[row from near][column from left] */
  readonly labels: readonly (readonly string[])[];
}

export interface Spec {
  /** The preset's file name without ending: the kit's folder. */
  readonly name: string;
  readonly title: string;
  readonly grid: {
    /** Width of each column's cell along x [mm], left to right; its beam stands at the middle. */
    readonly columns: readonly number[];
    /** Depth of each row's cell along y [mm], near to far. */
    readonly rows: readonly number[];
    /** labels[row from near][column from left], or null when there are none. */
    readonly labels: readonly (readonly string[])[] | null;
    /** Further sets, printed and not engraved, in the preset's order; left out: none. */
    readonly labelSets?: readonly LabelSet[];
  };
  /** Height of the beams above the deck [mm]. */
  readonly beam: { readonly height: number };
  readonly emitters: {
    readonly name: string;
    readonly part: Emitter;
    readonly columnsFrom: 'far' | 'near';
    readonly rowsFrom: 'left' | 'right';
  };
  readonly receivers: { readonly name: string; readonly part: ReceiverBehindTube };
  /** Tilt that each mount must reach either way from level [°]; undefined: solved from the boresight error. */
  readonly aim: {
    readonly tiltDeg: number | undefined;
    /** Lean of every barrel in its sleeve, given on purpose [°]; 0: none; undefined: solved, and none until it is. */
    readonly wedgeDeg: number | undefined;
    /** Standard deviation of a mount's yaw and of its tilt as printed and screwed down [°]. */
    readonly mountErrorDeg: number;
    /** Chance wanted that the emitters bought are enough. */
    readonly confidence: number;
  };
  /** Breadths of the fingers that use the panel [mm]. */
  readonly finger: { readonly least: number; readonly most: number };
  /** Temperatures around the panel [°C]. */
  readonly surroundings: { readonly coldest: number; readonly warmest: number };
  readonly light: { readonly name: string; readonly ambient: Ambient };
  readonly leaf: {
    readonly layout: LeafLayout | undefined;
    readonly legs: number | undefined;
    readonly length: number | undefined;
    readonly thickness: number | undefined;
    readonly width: number | undefined;
  };
  readonly material: { readonly name: string; readonly plastic: Plastic };
  readonly printer: { readonly name: string; readonly machine: Printer };
  readonly screws: { readonly adjust: ScrewSize; readonly clamp: ScrewSize; readonly fix: ScrewSize };
  readonly frame: {
    readonly wall: number | undefined;
    readonly deck: number | undefined;
    /** From the outermost beams to the field's walls [mm]. */
    readonly margin: number | undefined;
  };
  /** Undefined: none. */
  readonly bay: BaySpec | undefined;
  readonly supply: {
    /** American wire gauge. */
    readonly gauge: number;
    readonly logicMa: number;
    readonly batteryMah: number | undefined;
    readonly batteryV: number | undefined;
  };
  /** How the receivers are read. */
  readonly scan: {
    /** Channels of a multiplexer. */
    readonly channels: 8 | 16;
    readonly address: 'shared' | 'single';
    readonly sparePins: number;
    /** Setting an address, settling after it, one reading, following the light [µs]. */
    readonly addressUs: number;
    readonly settleUs: number;
    readonly readUs: number;
    readonly lightUs: number;
    /** Equal scans in a row that make a change count. */
    readonly debounce: number;
    readonly pullUpOhm: number;
    readonly supplyV: number;
    /** Level of a receiver's output while it is lit. */
    readonly litLevel: 'low' | 'high';
  };
  /** Boards that are asked for; left out: none. */
  readonly boards?: {
    readonly receivers: boolean;
    readonly emitters: boolean;
    /** Largest panel that the maker takes [mm]. */
    readonly panel: { readonly x: number; readonly y: number };
    readonly thickness: number;
  };
  /** What was defaulted: path, value and reason, in the schema's order. */
  readonly chosen: readonly Solved[];
}

/** One value the preset left open, with the reason for what was taken. */
export interface Solved {
  readonly path: string;
  readonly value: number | string | readonly number[];
  readonly why: string;
}

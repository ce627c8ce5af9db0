/** What stands in the electronics bay: a board on screws or clips, or a battery. Figures of its own outline; measure yours. */
import type { Datum } from '../data.js';

export type Edge = 'left' | 'right' | 'front' | 'back';
type Point = readonly [x: number, y: number];

/** Where a plug or wires come in. */
export interface Connector {
  readonly what: string;
  readonly side: Edge;
  /** Its middle along that edge, from the board's left or front corner [mm]. */
  readonly at: number;
  /** The plug's body, across and up, and its middle above the board's underside [mm]. */
  readonly width: number;
  readonly height: number;
  readonly up: number;
  /** From the board's edge outward: the plug and the bend of its cable [mm]. */
  readonly room: number;
  /** Outside: plugged from outside the bay. Inside: wired within it. */
  readonly access: 'outside' | 'inside';
}

/** A rectangle on the board, by its middle [mm]. */
export interface Patch {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly depth: number;
}

/** What gives the supply. */
export interface Cell {
  /** Mean voltage of the whole battery [V], capacity [mAh], largest current [mA]. */
  readonly voltage: Datum;
  readonly capacityMah: Datum;
  readonly mostMa: Datum;
  readonly lithium: boolean;
}

/** Board coordinates [mm]: x along its length from the left edge, y along its width from the front edge, z up from its underside. */
export interface Module {
  readonly title: string;
  readonly length: Datum;
  readonly width: Datum;
  /** Of the board; of a battery its whole height. */
  readonly thickness: Datum;
  /** Tallest part over the board's top, and lowest under its underside. */
  readonly above: Datum;
  readonly below: Datum;
  /** Middles of the mounting holes; none: held by clips at two opposite edges. */
  readonly holes: Datum<readonly Point[]>;
  readonly holeDiameter?: Datum;
  readonly connectors: Datum<readonly Connector[]>;
  /** Seen through the lid: the picture of a display. */
  readonly window?: Datum<Patch>;
  /** Indicator lamps that shine up. */
  readonly lamps?: Datum<readonly Point[]>;
  /** Knobs of switches that are worked through the lid, their travel included. */
  readonly knobs?: Datum<readonly Patch[]>;
  readonly massG: Datum;
  /** Heat that it gives off, on average [mW]. */
  readonly heatMw: Datum;
  /** Lifts or lowers the battery to the supply's voltage. */
  readonly converts?: Datum<boolean>;
  readonly cell?: Cell;
}

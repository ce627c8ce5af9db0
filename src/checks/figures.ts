/** What the checks of the frame are told, in figures. mm, N. */
import type { Ends } from '../mechanics/beam.js';

/** A rail between its supports. */
export interface RailFigures {
  readonly name: string;
  /** Between what holds its ends [mm]. */
  readonly span: number;
  readonly ends: Ends;
  /** E I for bending up and down, G J in torsion [N·mm²]. */
  readonly bending: number;
  readonly torsion: number;
  /** Its weight and that of what it carries [N/mm], and how far beside the axis of twist it acts [mm]. */
  readonly weight: number;
  readonly weightLever: number;
  /** How far beside the axis of twist a hand presses [mm]. */
  readonly pressLever: number;
  /** Longest printed piece [mm]: what warps. */
  readonly piece: number;
  /** Longest beam that starts here [mm]. */
  readonly reach: number;
}

export interface FrameFigures {
  readonly rails: readonly RailFigures[];
  /** The mount's base from its fixing to the screw's pad [mm], and its E I [N·mm²]. */
  readonly baseArm: { readonly length: number; readonly bending: number };
  /** How far a beam may move at its receiver before the channel fails [mm]. */
  readonly tolerance: number;
  /** Least distance between neighbouring beams for each thing that stands beside its like. */
  readonly needs: readonly { readonly what: string; readonly least: number; readonly remedies: readonly string[] }[];
}

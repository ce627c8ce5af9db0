/** What the checks of leaf and frame are told, in figures. mm, rad, N, MPa, Hz. */
import type { Ends } from '../mechanics/beam.js';
import type { Rad } from '../units.js';

/** A leaf's behaviour over its travel. */
export interface LeafFigures {
  /** Largest strain with the beam at its lowest: held for years at the worst, as a fraction. */
  readonly strain: number;
  /** Largest stress there, the fillet's factor included [MPa]. */
  readonly peakStress: number;
  /** Largest strain when the stop touches at its latest. */
  readonly stopStrain: number;
  /** Flex that the shock asks for at the highest beam, so that the screw stays on its pad. */
  readonly preloadNeeded: Rad;
  /** Screw force with the beam at its highest, level and lowest [N]. */
  readonly force: { readonly highest: number; readonly level: number; readonly lowest: number };
  /** First frequency with the moving mass, arm free of the screw [Hz]: the lower bound. */
  readonly frequency: number;
  /** The end corrections apply to this leaf; false: beam theory alone. */
  readonly corrected: boolean;
}

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

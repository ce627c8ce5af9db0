/**
 * A kit: every distinct part once, placed many times, with everything the checks need to know of how it is meant to fit.
 * Assembly coordinates: x along a row, y along a column, z up, z = 0 the deck's top, origin the field's near left corner.
 */
import type { ScrewSize } from '../components/types.js';
import type { BayLayout } from '../layout/bay/types.js';
import type { PanelSet } from '../layout/boards/panels.js';
import type { Board } from '../layout/boards/types.js';
import type { Solid } from '../solid/kernel.js';
import type { Box, Matrix, Vec3 } from '../solid/mesh.js';

export { POSES, type Pose } from '../layout/types.js';

import type { AtPoses, Pose } from '../layout/types.js';

export interface Part {
  /** File stem and key: `tilt-mount`, `iso-4762-m2.5x16`. */
  readonly id: string;
  readonly title: string;
  readonly kind: 'printed' | 'bought';
  /** What it is made of: a material's name, or `steel`, `brass` … */
  readonly material: string;
  /** [g/cm³]; of a bought part the effective density of its simple solid. */
  readonly densityGcm3: number;
  /** Printed part: in print orientation, lowest z at 0. Bought part: its simple solid. */
  readonly solid: Solid;
  /** The shape in the assembly at each pose, in the coordinates of `solid`; null where it does not change. */
  readonly posed: Readonly<Record<Pose, Solid>> | null;
  /** A slice across its spring, as printed and at each pose: without it, what moves and what stands fall apart. */
  readonly springCut?: AtPoses<Solid>;
  /** Bought parts: what to order. */
  readonly order: { readonly standard: string; readonly size: string; readonly lengthMm: number | null } | null;
}

/** An overlap that is meant: a thread formed in plastic, a press fit. Larger than `most` is an error. */
export interface MeantOverlap {
  readonly with: string;
  readonly most: number;
  readonly why: string;
}

export interface Placement {
  readonly name: string;
  readonly part: string;
  /** From the part's file coordinates to the assembly's, at level. Rigid. */
  readonly matrix: Matrix;
  /** Where it stands at the ends of the mount's travel, for what rides on a mount's arm. */
  readonly rides: { readonly lowest: Matrix; readonly highest: Matrix } | null;
  /** Names it is meant to touch (gap 0 allowed; overlap still is not, unless in `overlaps`). */
  readonly touches: readonly string[];
  readonly overlaps: readonly MeantOverlap[];
  /** Put in once the kit is aligned: not in the way of the keys that align it. */
  readonly afterAlignment?: boolean;
}

/** A declared fit: the least gap between two placements across it must come out as the printer's class says. */
export interface Fit {
  readonly a: string;
  readonly b: string;
  readonly what: string;
  readonly fitClass: 'press' | 'snug' | 'slide' | 'free';
  /** Gap on one side, as drawn [mm]: half the diametral clearance where it is shared. */
  readonly drawn: number;
  /** Gap on one side that the class asks for [mm]. */
  readonly wanted: number;
}

export interface Screw {
  readonly placement: string;
  readonly size: ScrewSize;
  readonly lengthMm: number;
  /** Middle of the head's (or socket's) outer face at level, and the unit direction in which the screw advances. */
  readonly head: Vec3;
  readonly direction: Vec3;
  /** What holds the thread. */
  readonly into:
    | {
        readonly kind: 'nut';
        readonly nut: string /** Length of thread beyond the nut's far face [mm]. */;
        readonly beyond: number;
      }
    | {
        readonly kind: 'formed';
        readonly part: string /** Thread length in the pilot [mm]. */;
        readonly engaged: number;
      };
  /** Free depth past the tip before it touches ground [mm]; null when the tip is meant to bear. */
  readonly tipRoom: number | null;
  /** Tool that turns it, and when: with the covers on (after assembly) or at its own step. */
  readonly tool: ToolUse;
}

export interface ToolUse {
  /** `hex key 2` … */
  readonly name: string;
  /** Across corners of the key [mm]. */
  readonly diameter: number;
  /** Straight length that must be free outside the head, along the axis [mm]. */
  readonly reach: number;
  readonly when: 'at its step' | 'covers on';
}

/** A key that turns something other than a screw, with the covers on: the ways in which it must be able to stand. */
export interface Handling {
  readonly what: string;
  readonly placement: string;
  readonly tool: string;
  readonly diameter: number;
  readonly reach: number;
  /** In the placement's file coordinates: where the key's end stands, and the way it points outward, for each stand. */
  readonly stands: readonly { readonly from: Vec3; readonly out: Vec3 }[];
}

export interface Beam {
  readonly name: string;
  readonly line: 'column' | 'row';
  readonly index: number;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly diameter: number;
  /** Diameter that must be free all along [mm]. */
  readonly corridor: number;
  /** Emitter and receiver placements: not in their own way. */
  readonly emitter: string;
  readonly receiver: string;
}

/** One straight move; a placement may make several in its step, in order, the last one ending where it stands. */
export interface Move {
  readonly placement: string;
  /** The way it travels: a unit vector. */
  readonly direction: Vec3;
  readonly travel: number;
  readonly tool: string | null;
  /** Null: the assembly's axes. A name: axes of that placement's matrix; only parts of that sub-assembly are in the way. */
  readonly inFrameOf: string | null;
}

export interface Step {
  readonly step: number;
  readonly title: string;
  readonly joins: readonly string[];
  readonly hardware: readonly string[];
  readonly moves: readonly Move[];
}

/** A key's label and how wide its strokes come out in the room of its cell [mm]. */
export interface KitLegend {
  readonly label: string;
  /** `row 0, column 3`, counted from the near left. */
  readonly place: string;
  readonly stroke: number;
}

/** Room beside a placement that must be free in the finished kit. */
export interface Reach {
  /** For a plug and its cable; or for eye and finger. */
  readonly kind: 'plug' | 'face';
  readonly what: string;
  readonly placement: string;
  /** In the placement's file coordinates. */
  readonly room: Box;
}

/** Boards to order, and which stands where. */
export interface BoardsOfKit {
  readonly boards: readonly Board[];
  readonly panels: PanelSet;
  readonly places: readonly {
    readonly board: string;
    readonly placement: string;
    /** Names of its beams, in the order of the board's lines. */
    readonly beams: readonly string[];
  }[];
  /** What a receiver's legs must be long to reach into their sockets [mm]; 0 without carriers. */
  readonly legLength: number;
}

export interface Kit {
  readonly parts: ReadonlyMap<string, Part>;
  readonly placements: readonly Placement[];
  readonly beams: readonly Beam[];
  readonly screws: readonly Screw[];
  readonly fits: readonly Fit[];
  readonly handling?: readonly Handling[];
  readonly reaches?: readonly Reach[];
  /** The electronics bay as laid out; left out: the kit has none. */
  readonly bay?: BayLayout;
  readonly legends?: readonly KitLegend[];
  /** Where the wires end, where the kit has a place for its electronics; left out: beyond the corners. */
  readonly wiresEnd?: Vec3;
  /** Left out: none. */
  readonly boards?: BoardsOfKit;
  readonly assembly: readonly Step[];
}

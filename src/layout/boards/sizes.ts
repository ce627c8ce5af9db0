/** Sizes of boards that preset and kit leave alone. mm. Common practice, no source, where none is named. */

/** Between rows of a socket strip, and between pads: a tenth of an inch. */
export const RASTER = 2.54;
/** Turned-pin socket strip: how high it stands off the board, how much of a row's height it takes, how deep a leg goes in. */
export const SOCKET = { height: 4.2, breadth: 2.2, plug: 2.5 } as const;
/** Free between what stands in the rail and what stands on the board. */
export const FRONT_GAP = 1;
/** Pins and solder behind the board, and free behind them. */
export const SOLDER = 1.5;
export const BACK_GAP = 0.5;
/** Between the board's top edge and the cover. */
export const COVER_AIR = 0.5;
/** Way for wires below the board. */
export const WAY_BELOW = 4.5;
/** Guides: how far they reach up and along the board, how thick their cheeks and end walls are, play lengthwise. */
export const GUIDE = { up: 6, along: 3, cheek: 1.6, play: 0.3, every: 110 } as const;
/** Between neighbouring pieces, on each side of the middle; and between a piece and the corner post it is lowered beside. */
export const CUT_AIR = 0.3;
export const POST_AIR = 0.4;
/** No piece reaches farther than this beyond its last beam. */
export const END_MOST = 12;
/** Web from a hole's edge to the board's edge, and between unlike holes: ring and insulation. */
export const EDGE_WEB = 1;
/** Web between holes of one net row, where legs or pins stand closer than a tenth of an inch. */
export const ROW_WEB = 0.5;
/** Board left around a mounting hole. */
export const MOUNT_RING = 1.5;
/** Drill for a socket's pin at this leg pitch: turned pins 0.5 thick, at narrow pitches 0.4. */
export const legDrill = (pitch: number): number => (pitch >= 2 ? 0.8 : 0.65);
/** For wire, resistor legs. */
export const PAD_DRILL = 1;
export const RESISTOR_DRILL = 0.9;
/** Lying resistors of a quarter watt, the standing one last. */
export const RESISTOR_SPANS = [10.16, 7.62, 5.08] as const;
/** Heights of the pad rows and of the resistors above the board's lower edge. */
export const PAD_ROWS = [2.2, 4.74] as const;
export const RESISTOR_ROW = 7.9;

/** Sizes that every tilt mount keeps, whatever is in it. mm. */

/** Walls around nuts and holes: what carries a screw's pull, and what only closes [mm]. */
export const PULL_WALL = 1.7;
export const CLOSE_WALL = 1.2;
/** Play of a nut in its pocket's height; flats get the slide class. */
export const NUT_PLAY = 0.2;
/** Air under the first leg, over the last, and between arm and base at rest: slots that print open. */
export const AIR = 0.9;
/** Plastic above and below a leaf's root. */
export const SHOULDER = 0.8;
export const BASE_FRONT = 3.2;
/** Rail's floor: takes a countersunk head. */
export const RAIL_FLOOR = 3.2;
/** Past the screw's tip, and what closes that hole. */
export const TIP_ROOM = 0.5;
export const THIN_WALL = 0.9;
/** Between collar and seat. */
export const COLLAR_AIR = 0.4;
export const NECK = 3;
export const WIRE_STRAIGHT = 6;
export const NUT_WALLS = { pull: PULL_WALL, close: CLOSE_WALL, play: NUT_PLAY } as const;
/** The collar on what lies in the seat: a wall that grips, notches for the key that rolls it, and how deep the flat is that marks a lean. */
export const COLLAR = {
  wall: 1,
  notchDepth: 1.3,
  notchWidth: 1.6,
  notches: 10,
  length: 3.6,
  air: 0.6,
  mark: 0.6,
} as const;

/** How high the beams run above the deck when the preset does not say. */
import { breadthAt } from '../optics/finger-block.js';

/** Share of the narrowest finger's breadth that its round tip, standing on the deck, must have at the beams. */
const FULL = 0.98;
/** Between a beam's edge and the deck, in beam diameters: room for warp, dust and engraving. */
const CLEAR = 1;
const STEP = 0.5;

/**
 * The lowest half millimetre at which a fingertip is as good as whole and the beam keeps clear of the deck: every millimetre
 * more is a higher bezel beside the finger.
 *
 * @param finger - narrowest breadth [mm], > 0 @param beam - diameter [mm], > 0
 * @returns [mm]
 */
export function lowestHeight(finger: number, beam: number): number {
  let height = STEP;
  while (breadthAt(finger, height) < FULL * finger || height < beam / 2 + CLEAR * beam) height += STEP;
  return height;
}

import { threeLeg } from './receiver-three-leg.js';
import type { Receiver } from './types.js';

const OUTLINE = 'Two-leg side-looking package, public outline drawings';

/** A lens gathers the light of its whole face: more signal, and more room for a beam that is off. */
export const sideLooker: Receiver = {
  title: 'side-looking phototransistor with lens, two legs',
  width: { value: 4.5, source: OUTLINE },
  height: { value: 4.8, source: OUTLINE },
  depth: { value: 2.4, source: OUTLINE },
  sensorFromTop: { value: 2.4, source: 'Common practice: the middle of the face; look up your own part' },
  legs: { value: 2, source: OUTLINE },
  legWidth: { value: 0.45, source: OUTLINE },
  legPitch: { value: 2.54, source: OUTLINE },
  detectorRadius: {
    value: 1.75,
    source: `${OUTLINE}: lens Ø3.5. Many are filtered for infrared and blind at 650 nm: look up your own part`,
  },
  sensitivity: threeLeg.sensitivity,
  filterFromNm: threeLeg.filterFromNm,
  massG: { value: 0.2, source: 'Common practice, no source' },
};

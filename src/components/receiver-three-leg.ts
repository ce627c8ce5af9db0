import type { Receiver } from './types.js';

const OUTLINE = 'TO-92, public outline drawings';

/** The default: a bare detector in a three-leg package, lit through its flat face, across the legs. */
export const threeLeg: Receiver = {
  title: 'phototransistor in a three-leg package (TO-92)',
  width: { value: 4.58, source: OUTLINE },
  height: { value: 4.58, source: OUTLINE },
  depth: { value: 3.86, source: `${OUTLINE} (3.6–3.9)` },
  sensorFromTop: { value: 2.3, source: 'Common practice: the middle of the face; look up your own part' },
  legs: { value: 3, source: OUTLINE },
  legWidth: { value: 0.46, source: OUTLINE },
  legPitch: { value: 1.27, source: `${OUTLINE}, straight legs` },
  detectorRadius: { value: 0.5, source: 'Common practice: a bare detector of about 1 mm; look up your own part' },
  apertureDiameter: {
    value: 3,
    source: 'Chosen: with a 1 mm detector and depth 12 the tube cuts off beyond atan(4/24) = 9.5°',
  },
  apertureDepth: { value: 12, source: 'Chosen: see the diameter; lets through 1/65 of diffuse ambient light' },
  massG: { value: 0.25, source: 'Common practice, no source' },
};

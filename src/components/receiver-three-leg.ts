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
  sensitivity: {
    value: 0.2,
    source:
      'Common practice, from the run of public datasheets, from memory: 1 to 5 mA at 1 mW/cm² (10 W/m²) in the near infrared; measure your own part',
  },
  filterFromNm: { value: 0, source: 'A clear body; black ones are filtered: look up your own part' },
  massG: { value: 0.25, source: 'Common practice, no source' },
};

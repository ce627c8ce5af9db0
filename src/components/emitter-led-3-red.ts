import type { Emitter } from './types.js';

const OUTLINE = 'Outline T-1, public outline drawings';
const SHEET = 'Common practice, from the run of public datasheets: look up your own part';

/** For the spacing trial and for short spans: it needs no aim, and it floods its neighbours' receivers. */
export const led3Red: Emitter = {
  title: 'red LED 3 mm, 640 nm',
  diameter: { value: 3.1, source: `${OUTLINE} (3.1 ± 0.2)` },
  length: { value: 5.2, source: OUTLINE },
  flangeDiameter: { value: 3.8, source: OUTLINE },
  flangeLength: { value: 1, source: OUTLINE },
  wireDiameter: { value: 3.1, source: `${OUTLINE}: two leads of 0.5 at 2.54` },
  boresightSigmaDeg: { value: 2, source: SHEET },
  divergenceMrad: { value: 524, source: `${SHEET}: half-power angle 30° full, in mrad` },
  beamDiameter: { value: 3, source: 'The lens, across its edge' },
  powerMw: { value: 3, source: SHEET },
  wavelengthNm: { value: 640, source: SHEET },
  massG: { value: 0.2, source: SHEET },
  currentMa: { value: 20, source: SHEET },
  voltageV: { value: 2, source: SHEET },
};

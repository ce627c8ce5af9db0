import type { Emitter } from './types.js';

const OUTLINE = 'Outline T-1¾, public outline drawings';
const SHEET = 'Public datasheets of 850 nm, 5 mm emitters';

/** Invisible and wide: for daylight-filtered receivers and short spans. */
export const led5Infrared: Emitter = {
  title: 'infrared LED 5 mm, 850 nm (invisible)',
  diameter: { value: 5, source: `${OUTLINE} (5.0 ± 0.2)` },
  length: { value: 8.6, source: `${OUTLINE} (8.6–8.7)` },
  flangeDiameter: { value: 5.9, source: `${OUTLINE} (5.8–5.9)` },
  flangeLength: { value: 1, source: OUTLINE },
  wireDiameter: { value: 3.1, source: `${OUTLINE}: two leads of 0.5 at 2.54` },
  boresightSigmaDeg: { value: 2, source: 'Common practice, no source' },
  divergenceMrad: { value: 611, source: `${SHEET}: half-power angle 35° full, in mrad` },
  beamDiameter: { value: 5, source: 'The lens, across its edge' },
  powerMw: {
    value: 19,
    source: `By hand from ${SHEET} (50–80 mW/sr, at the middle): 65 mW/sr over a cone of 35°, 2π(1 − cos 17.5°) = 0.291 sr`,
  },
  wavelengthNm: { value: 850, source: SHEET },
  massG: { value: 0.3, source: 'Common practice, no source' },
  currentMa: { value: 50, source: `Half of the 100 mA that ${SHEET.toLowerCase()} allow` },
  voltageV: { value: 1.5, source: 'Common practice, no source' },
};

import { led5Infrared } from './emitter-led-5-infrared.js';
import type { Emitter } from './types.js';

const SHEET = 'Common practice, from the run of public datasheets: look up your own part';

/** The body of the infrared one, in a colour that can be aimed by eye. */
export const led5Red: Emitter = {
  ...led5Infrared,
  title: 'red LED 5 mm, 640 nm',
  divergenceMrad: { value: 349, source: `${SHEET}: half-power angle 20° full, in mrad` },
  powerMw: { value: 4, source: SHEET },
  wavelengthNm: { value: 640, source: SHEET },
  currentMa: { value: 20, source: SHEET },
  voltageV: { value: 2, source: SHEET },
};

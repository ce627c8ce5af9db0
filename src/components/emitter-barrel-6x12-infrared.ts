import { barrel6x12 } from './emitter-barrel-6x12.js';
import { BARREL } from './sources.js';
import type { Emitter } from './types.js';

/** Invisible: no blink guards the eye, and alignment needs a viewing card. */
export const barrel6x12Infrared: Emitter = {
  ...barrel6x12,
  title: 'infrared laser barrel Ø6 × 12, 850 nm (invisible)',
  powerMw: {
    value: 5,
    source: `${BARREL}: as labelled; infrared gives no warning and triggers no blink: measure it, assume 3R or higher until then`,
  },
  wavelengthNm: { value: 850, source: BARREL },
};

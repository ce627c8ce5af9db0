import type { Ambient } from './ambient.js';

/** The default: a desk under lamps. */
export const lamps: Ambient = {
  title: 'a room under lamps, away from windows',
  directWm2: { value: 0, source: 'Common practice: no lamp is seen from within a receiver’s tube, which lies level' },
  diffuseWm2: {
    value: 1.7,
    source:
      'By hand from 500 lx (EN 12464-1 for desk work, from memory) at about 300 lm/W for the light of white LEDs (from memory)',
  },
};

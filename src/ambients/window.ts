import type { Ambient } from './ambient.js';

/** Daylight, the sun itself kept out. */
export const window: Ambient = {
  title: 'daylight beside a window, no sun on the panel',
  directWm2: { value: 0, source: 'By the entry’s meaning' },
  diffuseWm2: {
    value: 45,
    source:
      'By hand from 5000 lx (common practice: a bright place by a window) at about 110 lm/W for daylight (from memory)',
  },
};

import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Small controller with a radio on it, plugged from one short edge, wired at pins along both long ones. */
export const controller: Module = {
  title: 'controller board 54 × 26',
  length: { value: 54, source: OUTLINE },
  width: { value: 26, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 4, source: OUTLINE },
  below: { value: 2, source: OUTLINE },
  holes: {
    value: [
      [3, 3],
      [51, 3],
      [3, 23],
      [51, 23],
    ],
    source: OUTLINE,
  },
  holeDiameter: { value: 3.2, source: OUTLINE },
  connectors: {
    value: [
      { what: 'USB plug', side: 'left', at: 13, width: 13, height: 8, up: 3.2, room: 45, access: 'outside' },
      { what: 'pins', side: 'front', at: 27, width: 40, height: 6, up: 4, room: 6, access: 'inside' },
      { what: 'pins', side: 'back', at: 27, width: 40, height: 6, up: 4, room: 6, access: 'inside' },
    ],
    source: OUTLINE,
  },
  massG: { value: 9, source: OUTLINE },
  heatMw: { value: 350, source: OUTLINE },
};

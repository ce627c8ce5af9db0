import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Slide switch on a board of its own, worked through the lid. */
export const slideSwitch: Module = {
  title: 'slide switch board 30 × 14',
  length: { value: 30, source: OUTLINE },
  width: { value: 14, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 5, source: OUTLINE },
  below: { value: 2, source: OUTLINE },
  holes: {
    value: [
      [3.5, 7],
      [26.5, 7],
    ],
    source: OUTLINE,
  },
  holeDiameter: { value: 3.2, source: OUTLINE },
  connectors: {
    value: [{ what: 'wires', side: 'back', at: 15, width: 10, height: 5, up: 0, room: 6, access: 'inside' }],
    source: OUTLINE,
  },
  knobs: { value: [{ x: 15, y: 7, width: 8, depth: 3.5 }], source: OUTLINE },
  massG: { value: 3, source: OUTLINE },
  heatMw: { value: 0, source: OUTLINE },
};

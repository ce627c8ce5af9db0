import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Small display, seen through the lid, wired at its back edge. */
export const display: Module = {
  title: 'display board 38 × 36',
  length: { value: 38, source: OUTLINE },
  width: { value: 36, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 2.6, source: OUTLINE },
  below: { value: 2.5, source: OUTLINE },
  holes: {
    value: [
      [3, 3],
      [35, 3],
      [3, 33],
      [35, 33],
    ],
    source: OUTLINE,
  },
  holeDiameter: { value: 3.2, source: OUTLINE },
  connectors: {
    value: [{ what: 'pins', side: 'back', at: 19, width: 12, height: 5, up: -1, room: 8, access: 'inside' }],
    source: OUTLINE,
  },
  window: { value: { x: 19, y: 17, width: 31, depth: 17 }, source: OUTLINE },
  massG: { value: 9, source: OUTLINE },
  heatMw: { value: 70, source: OUTLINE },
};

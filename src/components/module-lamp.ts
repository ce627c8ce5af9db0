import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** One indicator lamp on a board of its own. */
export const lamp: Module = {
  title: 'indicator lamp board 18 × 12',
  length: { value: 18, source: OUTLINE },
  width: { value: 12, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 1.5, source: OUTLINE },
  below: { value: 2, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [{ what: 'wires', side: 'back', at: 9, width: 8, height: 5, up: 2, room: 6, access: 'inside' }],
    source: OUTLINE,
  },
  lamps: { value: [[9, 6]], source: OUTLINE },
  massG: { value: 1, source: OUTLINE },
  heatMw: { value: 20, source: OUTLINE },
};

import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Multiplexer of sixteen channels, wired at pins along both long edges; without holes. */
export const multiplexer: Module = {
  title: 'multiplexer board 40 × 18',
  length: { value: 40, source: OUTLINE },
  width: { value: 18, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 3, source: OUTLINE },
  below: { value: 2, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [
      { what: 'channels', side: 'front', at: 20, width: 32, height: 6, up: 4, room: 6, access: 'inside' },
      { what: 'address and signal', side: 'back', at: 20, width: 24, height: 6, up: 4, room: 6, access: 'inside' },
    ],
    source: OUTLINE,
  },
  massG: { value: 3, source: OUTLINE },
  heatMw: { value: 5, source: OUTLINE },
};

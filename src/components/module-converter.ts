import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Lifts or lowers a battery's voltage to the supply's; without holes. */
export const converter: Module = {
  title: 'converter board 24 × 18',
  length: { value: 24, source: OUTLINE },
  width: { value: 18, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 5.5, source: OUTLINE },
  below: { value: 1.5, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [
      { what: 'battery', side: 'left', at: 9, width: 10, height: 6, up: 3, room: 8, access: 'inside' },
      { what: 'supply', side: 'right', at: 9, width: 10, height: 6, up: 3, room: 8, access: 'inside' },
    ],
    source: OUTLINE,
  },
  massG: { value: 3, source: OUTLINE },
  heatMw: { value: 200, source: OUTLINE },
  converts: { value: true, source: OUTLINE },
};

import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Charges one lithium cell from a plug, with two lamps; without holes. */
export const charger: Module = {
  title: 'charger board 28 × 18',
  length: { value: 28, source: OUTLINE },
  width: { value: 18, source: OUTLINE },
  thickness: { value: 1.6, source: OUTLINE },
  above: { value: 3.4, source: OUTLINE },
  below: { value: 1.5, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [
      { what: 'USB plug', side: 'left', at: 9, width: 13, height: 8, up: 3.2, room: 45, access: 'outside' },
      { what: 'cell and load', side: 'right', at: 9, width: 12, height: 6, up: 3, room: 8, access: 'inside' },
    ],
    source: OUTLINE,
  },
  lamps: {
    value: [
      [9, 3.5],
      [13, 3.5],
    ],
    source: OUTLINE,
  },
  massG: { value: 2, source: OUTLINE },
  heatMw: { value: 150, source: OUTLINE },
};

import type { Module } from './module.js';
import { CELLS, OUTLINE } from './sources.js';

/** Lithium pouch cell with its own protection, leads at one short edge. */
export const batteryPouch: Module = {
  title: 'lithium pouch cell 52 × 35 × 8',
  length: { value: 52, source: OUTLINE },
  width: { value: 35, source: OUTLINE },
  thickness: { value: 8, source: OUTLINE },
  above: { value: 0, source: OUTLINE },
  below: { value: 0, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [{ what: 'leads', side: 'left', at: 17, width: 10, height: 6, up: 4, room: 10, access: 'inside' }],
    source: OUTLINE,
  },
  massG: { value: 28, source: OUTLINE },
  heatMw: { value: 0, source: OUTLINE },
  cell: {
    voltage: { value: 3.7, source: CELLS },
    capacityMah: { value: 1500, source: CELLS },
    mostMa: { value: 1500, source: CELLS },
    lithium: true,
  },
};

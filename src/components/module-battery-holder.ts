import type { Module } from './module.js';
import { CELLS, OUTLINE } from './sources.js';

/** Holder of three nickel cells of size AA side by side, contacts and leads its own. */
export const batteryHolder: Module = {
  title: 'holder of three AA cells, nickel',
  length: { value: 60, source: OUTLINE },
  width: { value: 48, source: OUTLINE },
  thickness: { value: 16, source: OUTLINE },
  above: { value: 0, source: OUTLINE },
  below: { value: 0, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [{ what: 'leads', side: 'left', at: 24, width: 10, height: 6, up: 4, room: 8, access: 'inside' }],
    source: OUTLINE,
  },
  massG: { value: 95, source: OUTLINE },
  heatMw: { value: 0, source: OUTLINE },
  cell: {
    voltage: { value: 3.6, source: CELLS },
    capacityMah: { value: 1900, source: CELLS },
    mostMa: { value: 2000, source: CELLS },
    lithium: false,
  },
};

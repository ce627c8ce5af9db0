import type { Module } from './module.js';
import { OUTLINE } from './sources.js';

/** Radio on a board of its own, wired at one short edge; without holes. */
export const radio: Module = {
  title: 'radio board 29 × 16',
  length: { value: 29, source: OUTLINE },
  width: { value: 16, source: OUTLINE },
  thickness: { value: 1.2, source: OUTLINE },
  above: { value: 3.5, source: OUTLINE },
  below: { value: 1.5, source: OUTLINE },
  holes: { value: [], source: OUTLINE },
  connectors: {
    value: [{ what: 'pins', side: 'left', at: 8, width: 9, height: 6, up: 3, room: 8, access: 'inside' }],
    source: OUTLINE,
  },
  massG: { value: 2, source: OUTLINE },
  heatMw: { value: 120, source: OUTLINE },
};

import { bed220 } from './bed-220.js';
import type { Printer } from './printer.js';
import * as source from './sources.js';

/** Thin lines: closer fits and finer steps of leaf thickness, at several times the printing time. */
export const bed220Fine: Printer = {
  ...bed220,
  title: 'filament printer, bed 220 × 220, nozzle 0.25',
  nozzle: { value: 0.25, source: 'The usual fine nozzle' },
  lineWidth: { value: 0.28, source: source.LINE },
  layer: { value: 0.12, source: source.LAYER },
  press: { value: 0, source: source.CLEARANCE_LOW },
  snug: { value: 0.15, source: source.CLEARANCE_LOW },
  slide: { value: 0.25, source: source.CLEARANCE_LOW },
  free: { value: 0.4, source: source.CLEARANCE_LOW },
  gapTolerance: { value: 0.15, source: source.GAP },
};

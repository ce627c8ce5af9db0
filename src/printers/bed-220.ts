import type { Printer } from './printer.js';
import * as source from './sources.js';

/** The default: the middle of the field. */
export const bed220: Printer = {
  title: 'filament printer, bed 220 × 220',
  bedX: { value: 220, source: source.BED },
  bedY: { value: 220, source: source.BED },
  bedZ: { value: 250, source: source.BED },
  nozzle: { value: 0.4, source: 'The usual nozzle' },
  lineWidth: { value: 0.45, source: source.LINE },
  layer: { value: 0.2, source: source.LAYER },
  press: { value: 0.05, source: source.CLEARANCE },
  snug: { value: 0.175, source: source.CLEARANCE },
  slide: { value: 0.275, source: source.CLEARANCE },
  free: { value: 0.45, source: source.CLEARANCE },
  holeGrowth: { value: 0.2, source: source.HOLE },
  gapTolerance: { value: 0.2, source: source.GAP },
  warpPer100: { value: 0.15, source: source.WARP },
  overhangDeg: { value: 45, source: source.OVERHANG },
  bridge: { value: 10, source: source.BRIDGE },
  edgeMargin: { value: 5, source: source.EDGE },
  spacing: { value: 5, source: source.SPACING },
};

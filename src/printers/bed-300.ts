import { bed220 } from './bed-220.js';
import type { Printer } from './printer.js';
import * as source from './sources.js';

/** A large bed: fewer splices, and more warp over its colder corners. */
export const bed300: Printer = {
  ...bed220,
  title: 'large filament printer, bed 300 × 300',
  bedX: { value: 300, source: source.BED },
  bedY: { value: 300, source: source.BED },
  bedZ: { value: 300, source: source.BED },
  warpPer100: { value: 0.2, source: source.WARP },
  edgeMargin: { value: 8, source: source.EDGE },
};

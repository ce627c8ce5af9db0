import { bed220 } from './bed-220.js';
import type { Printer } from './printer.js';
import * as source from './sources.js';

/** A small bed: rails and decks split early. */
export const bed180: Printer = {
  ...bed220,
  title: 'small filament printer, bed 180 × 180',
  bedX: { value: 180, source: source.BED },
  bedY: { value: 180, source: source.BED },
  bedZ: { value: 180, source: source.BED },
};

import * as source from './sources.js';
import type { Thread } from './types.js';

/** ISO metric coarse thread M3 with its heads and nut. */
export const m3: Thread = {
  diameter: { value: 3, source: source.PITCH },
  pitch: { value: 0.5, source: source.PITCH },
  clearance: { value: 3.4, source: source.CLEARANCE },
  capHead: { value: 5.68, source: source.CAP_KNURLED },
  capHeight: { value: 3, source: source.CAP },
  capKey: { value: 2.5, source: source.CAP },
  sunkHead: { value: 6, source: source.SUNK_HEAD },
  sunkHeight: { value: 1.86, source: source.SUNK },
  sunkKey: { value: 2, source: source.SUNK },
  setKey: { value: 1.5, source: source.SET },
  nutFlats: { value: 5.5, source: source.NUT },
  nutHeight: { value: 2.4, source: source.NUT },
  pilot: { value: 2.5, source: source.PILOT },
  capLengths: { value: [5, 6, 8, 10, 12, 16, 20, 25, 30], source: source.CAP_LENGTHS },
  sunkLengths: { value: [6, 8, 10, 12, 16, 20, 25, 30], source: source.SUNK_LENGTHS },
  setLengths: { value: [3, 4, 5, 6, 8, 10, 12, 16], source: source.SET_LENGTHS },
};

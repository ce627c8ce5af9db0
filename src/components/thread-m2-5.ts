import * as source from './sources.js';
import type { Thread } from './types.js';

/** ISO metric coarse thread M2.5 with its heads and nut. */
export const m2_5: Thread = {
  diameter: { value: 2.5, source: source.PITCH },
  pitch: { value: 0.45, source: source.PITCH },
  clearance: { value: 2.9, source: source.CLEARANCE },
  capHead: { value: 4.68, source: source.CAP_KNURLED },
  capHeight: { value: 2.5, source: source.CAP },
  capKey: { value: 2, source: source.CAP },
  sunkHead: { value: 5, source: source.SUNK_SMALL },
  sunkHeight: { value: 1.55, source: source.SUNK_SMALL },
  sunkKey: { value: 1.5, source: source.SUNK_SMALL },
  setKey: { value: 1.3, source: source.SET },
  nutFlats: { value: 5, source: source.NUT },
  nutHeight: { value: 2, source: source.NUT },
  pilot: { value: 2.1, source: source.PILOT },
  capLengths: { value: [4, 5, 6, 8, 10, 12, 16, 20, 25], source: source.CAP_LENGTHS },
  sunkLengths: { value: [5, 6, 8, 10, 12, 16, 20], source: source.SUNK_LENGTHS },
  setLengths: { value: [3, 4, 5, 6, 8, 10, 12], source: source.SET_LENGTHS },
};

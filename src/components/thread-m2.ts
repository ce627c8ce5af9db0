import * as source from './sources.js';
import type { Thread } from './types.js';

/** ISO metric coarse thread M2 with its heads and nut. */
export const m2: Thread = {
  diameter: { value: 2, source: source.PITCH },
  pitch: { value: 0.4, source: source.PITCH },
  clearance: { value: 2.4, source: source.CLEARANCE },
  capHead: { value: 3.98, source: source.CAP_KNURLED },
  capHeight: { value: 2, source: source.CAP },
  capKey: { value: 1.5, source: source.CAP },
  sunkHead: { value: 4, source: source.SUNK_SMALL },
  sunkHeight: { value: 1.24, source: source.SUNK_SMALL },
  sunkKey: { value: 1.3, source: source.SUNK_SMALL },
  setKey: { value: 0.9, source: source.SET },
  nutFlats: { value: 4, source: source.NUT },
  nutHeight: { value: 1.6, source: source.NUT },
  pilot: { value: 1.7, source: source.PILOT },
  capLengths: { value: [4, 5, 6, 8, 10, 12, 16, 20], source: source.CAP_LENGTHS },
  sunkLengths: { value: [4, 5, 6, 8, 10, 12, 16, 20], source: source.SUNK_LENGTHS },
  setLengths: { value: [2, 3, 4, 5, 6, 8, 10], source: source.SET_LENGTHS },
};

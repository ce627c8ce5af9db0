import * as source from './sources.js';
import type { Thread } from './types.js';

/** ISO metric coarse thread M4 with its heads and nut. */
export const m4: Thread = {
  diameter: { value: 4, source: source.PITCH },
  pitch: { value: 0.7, source: source.PITCH },
  clearance: { value: 4.5, source: source.CLEARANCE },
  capHead: { value: 7.22, source: source.CAP_KNURLED },
  capHeight: { value: 4, source: source.CAP },
  capKey: { value: 3, source: source.CAP },
  sunkHead: { value: 8, source: source.SUNK_HEAD },
  sunkHeight: { value: 2.48, source: source.SUNK },
  sunkKey: { value: 2.5, source: source.SUNK },
  setKey: { value: 2, source: source.SET },
  nutFlats: { value: 7, source: source.NUT },
  nutHeight: { value: 3.2, source: source.NUT },
  pilot: { value: 3.4, source: source.PILOT },
  capLengths: { value: [6, 8, 10, 12, 16, 20, 25, 30, 35, 40], source: source.CAP_LENGTHS },
  sunkLengths: { value: [8, 10, 12, 16, 20, 25, 30, 35, 40], source: source.SUNK_LENGTHS },
  setLengths: { value: [4, 5, 6, 8, 10, 12, 16, 20], source: source.SET_LENGTHS },
};

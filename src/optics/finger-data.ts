/** Breadths of fingers and hands, and pitches that suit them, each with its source [mm]. */
import type { Datum } from '../data.js';

const FAA =
  'FAA Human Factors Design Standard, Appendix B, seen second-hand: breadth of the index finger at its middle joint';
const ANSUR = 'ANSUR II open data, hand breadth; percentiles worked out from the data for this project';

export interface Percentile {
  readonly who: 'men' | 'women';
  readonly percentile: 5 | 50 | 95;
  readonly breadth: Datum;
}

const rows = (
  who: Percentile['who'],
  [p5, p50, p95]: readonly [number, number, number],
  source: string,
): readonly Percentile[] =>
  (
    [
      [5, p5],
      [50, p50],
      [95, p95],
    ] as const
  ).map(([percentile, value]) => ({
    who,
    percentile,
    breadth: { value, source: `${source}, ${who}, ${percentile}th percentile` },
  }));

export const INDEX_FINGER: readonly Percentile[] = [
  ...rows('men', [19, 21, 23], FAA),
  ...rows('women', [16, 18, 21], FAA),
];

/** A hand laid across the beams. */
export const HAND: readonly Percentile[] = [...rows('men', [81, 88, 96], ANSUR), ...rows('women', [72, 78, 85], ANSUR)];

/** Fingertips, ends of the usual range. */
export const FINGERTIP: { readonly least: Datum; readonly most: Datum } = {
  least: { value: 16, source: 'Dandekar, Raju & Srinivasan 2003, J Biomech Eng 125:682, as quoted: about 16 to 20' },
  most: { value: 20, source: 'Dandekar, Raju & Srinivasan 2003, J Biomech Eng 125:682, as quoted: about 16 to 20' },
};

/** The standard's jointed test finger: the narrowest finger to plan for. */
export const TEST_FINGER: Datum = {
  value: 12,
  source: 'IEC 61032, test probe B, as restated: Ø12 (0/−0.05), round tip, 80 long',
};

/** From the narrowest to the broadest finger to try a panel with. */
export const FINGERS: readonly Datum[] = [
  TEST_FINGER,
  FINGERTIP.least,
  { value: 18, source: `${FAA}, women, 50th percentile` },
  FINGERTIP.most,
  { value: 23, source: `${FAA}, men, 95th percentile` },
];

/** Key pitches of keyboards, to compare with. */
export const KEY_PITCH: { readonly main: Datum; readonly tolerance: Datum; readonly elsewhere: Datum } = {
  main: {
    value: 19,
    source: 'ISO 9241-4 as restated: 19 ± 1. Pereira 2013 and Madison et al. 2015: 17 to 19 do alike, 16 worse',
  },
  tolerance: { value: 1, source: 'ISO 9241-4 as restated' },
  elsewhere: { value: 15, source: 'ISO 9241-4 as restated: least outside the main zone' },
};

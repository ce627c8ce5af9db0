import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** Stiff and easy to print; creeps most and softens first. */
export const pla: Plastic = {
  title: 'PLA',
  modulus: { value: 3000, source: source.sheets('flexural 3231 and 3100 MPa; rounded down') },
  poisson: { value: 0.36, source: source.POISSON },
  strength: { value: 50, source: source.sheets('52 and 51 MPa in plane; rounded down') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; sheets: .77 and .33` },
  yieldStrain: { value: 0.02, source: source.memory('2 %') },
  shortTermStrain: { value: 0.01, source: source.SHORT_TERM },
  sustainedStrain: { value: 0.005, source: `${source.SUSTAINED}: .3 to .5 %, the upper end taken` },
  creepA: { value: 0.2, source: source.CREEP },
  creepN: { value: 0.25, source: source.CREEP },
  softensC: { value: 60, source: source.sheets('60 °C at .45 MPa, glass transition 61 °C') },
  expansion: { value: 9.9e-5, source: source.EXPANSION('96 to 102') },
  densityGcm3: { value: 1.24, source: source.sheets('1.17 to 1.24; upper end') },
  friction: { value: 0.3, source: source.memory('.30 on steel') },
};

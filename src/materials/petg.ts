import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** Tough, prints anywhere, holds a larger strain for years than PLA: the default. */
export const petg: Plastic = {
  title: 'PETG',
  modulus: { value: 1900, source: source.sheets('flexural 1899 and 1700 MPa') },
  poisson: { value: 0.38, source: source.POISSON },
  strength: { value: 45, source: source.sheets('51 and 47 MPa in plane; rounded down') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; sheets: .84 and .38` },
  yieldStrain: { value: 0.035, source: source.memory('3 to 4 %') },
  shortTermStrain: { value: 0.015, source: source.SHORT_TERM },
  sustainedStrain: { value: 0.007, source: `${source.SUSTAINED}: .5 to .7 %, the upper end taken` },
  creepA: { value: 0.12, source: source.CREEP },
  creepN: { value: 0.22, source: source.CREEP },
  softensC: { value: 78, source: source.sheets('78 °C at .45 MPa, glass transition 81 °C') },
  expansion: { value: 6.2e-5, source: source.EXPANSION('59 to 65') },
  densityGcm3: { value: 1.25, source: source.sheets('1.25') },
  friction: { value: 0.27, source: source.memory('.27 on steel') },
};

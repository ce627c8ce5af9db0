import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** Soft and tough: large strains, thick leaves; takes up little water for a nylon, but some. */
export const pa12: Plastic = {
  title: 'PA12 (nylon)',
  modulus: { value: 1200, source: source.memory('1200 MPa flexural, 1300 to 1800 tensile') },
  poisson: { value: 0.39, source: source.POISSON },
  strength: { value: 43, source: source.sheets('43 to 48 MPa in plane; lower end') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; from memory .5 to .8` },
  yieldStrain: { value: 0.05, source: source.memory('5 %') },
  shortTermStrain: { value: 0.02, source: source.SHORT_TERM },
  sustainedStrain: { value: 0.008, source: `${source.SUSTAINED}: .8 to 1 %, the lower end taken` },
  creepA: { value: 0.16, source: source.CREEP },
  creepN: { value: 0.22, source: source.CREEP },
  softensC: {
    value: 130,
    source: 'Public data sheet, 130 °C at .45 MPa; glass transition 45 °C from memory, so it creeps in warm rooms',
  },
  expansion: { value: 0.00011, source: source.EXPANSION('100 to 120') },
  densityGcm3: { value: 1.01, source: source.memory('1.01') },
  friction: { value: 0.25, source: source.memory('.25 on steel') },
};

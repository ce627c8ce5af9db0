import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** The hinge plastic: bends far, but is soft and creeps; sticks to few beds. */
export const pp: Plastic = {
  title: 'PP',
  modulus: { value: 900, source: source.memory('600 to 1300 MPa flexural') },
  poisson: { value: 0.42, source: source.POISSON },
  strength: { value: 15, source: source.memory('12 to 25 MPa in plane') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; from memory .6 to .9` },
  yieldStrain: { value: 0.08, source: source.sheets('8 to 12 %; lower end') },
  shortTermStrain: { value: 0.03, source: source.sheets('3 to 4 %; lower end') },
  sustainedStrain: { value: 0.01, source: source.SUSTAINED },
  creepA: { value: 0.3, source: source.CREEP },
  creepN: { value: 0.22, source: source.CREEP },
  softensC: { value: 107, source: source.sheets('107 to 121 °C at .45 MPa, glass transition −10 °C') },
  expansion: { value: 8.6e-5, source: source.EXPANSION('72 to 100') },
  densityGcm3: { value: 0.905, source: source.sheets('.905') },
  friction: { value: 0.27, source: source.memory('.27 on steel') },
};

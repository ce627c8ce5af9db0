import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** For warm places; needs a warm, draught-free printer. */
export const abs: Plastic = {
  title: 'ABS',
  modulus: { value: 2100, source: source.sheets('flexural 2127 MPa; rounded down') },
  poisson: { value: 0.35, source: source.POISSON },
  strength: { value: 30, source: source.sheets('30 to 33 MPa in plane; lower end') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; a sheet .9 to 1, one paper .12` },
  yieldStrain: { value: 0.025, source: source.sheets('2.5 to 3.5 %; lower end') },
  shortTermStrain: { value: 0.01, source: `${source.SHORT_TERM}: 1.0 to 1.5 %, the lower end taken` },
  sustainedStrain: { value: 0.005, source: source.SUSTAINED },
  creepA: { value: 0.12, source: source.CREEP },
  creepN: { value: 0.2, source: source.CREEP },
  softensC: { value: 100, source: source.sheets('100 °C at .45 MPa, glass transition 101 °C') },
  expansion: { value: 9.4e-5, source: source.EXPANSION('72 to 115') },
  densityGcm3: { value: 1.08, source: source.sheets('1.04 to 1.12; middle') },
  friction: { value: 0.35, source: source.memory('.35 on steel') },
};

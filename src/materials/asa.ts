import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** As ABS, and it stands sunlight. */
export const asa: Plastic = {
  title: 'ASA',
  modulus: {
    value: 2400,
    source: source.sheets('tensile 2379 MPa; the flexural 3206 MPa of the same sheet is not trusted'),
  },
  poisson: { value: 0.35, source: source.POISSON },
  strength: { value: 40, source: source.sheets('44 MPa in plane; rounded down') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; a sheet .73` },
  yieldStrain: { value: 0.025, source: source.memory('2.5 to 3 %') },
  shortTermStrain: { value: 0.012, source: source.SHORT_TERM },
  sustainedStrain: { value: 0.005, source: source.SUSTAINED },
  creepA: { value: 0.12, source: source.CREEP },
  creepN: { value: 0.2, source: source.CREEP },
  softensC: { value: 103, source: source.sheets('103 °C at .45 MPa, glass transition 98 °C') },
  expansion: { value: 8.5e-5, source: source.EXPANSION('83 to 88') },
  densityGcm3: { value: 1.13, source: source.sheets('1.13') },
  friction: { value: 0.35, source: source.memory('.35 on steel') },
};

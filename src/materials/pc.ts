import type { Plastic } from './plastic.js';
import * as source from './sources.js';

/** Strong, warm-proof and slow to creep; hard to print. */
export const pc: Plastic = {
  title: 'PC',
  modulus: { value: 2050, source: source.sheets('flexural 2050 MPa, tensile 2435') },
  poisson: { value: 0.37, source: source.POISSON },
  strength: { value: 50, source: source.sheets('53 MPa in plane; rounded down') },
  acrossLayers: { value: 0.3, source: `${source.ACROSS}; sheets .78 and .33` },
  yieldStrain: { value: 0.06, source: source.sheets('6 %') },
  shortTermStrain: { value: 0.02, source: source.sheets('2 %') },
  sustainedStrain: { value: 0.008, source: source.SUSTAINED },
  creepA: { value: 0.0909, source: 'Fitted to handbook creep moduli of moulded PC; prints may creep more' },
  creepN: { value: 0.154, source: 'Fitted to handbook creep moduli of moulded PC; prints may creep more' },
  softensC: { value: 114, source: source.sheets('114 °C at .45 MPa, glass transition 113 °C') },
  expansion: { value: 6.6e-5, source: source.EXPANSION('62 to 70') },
  densityGcm3: { value: 1.19, source: source.sheets('1.19') },
  friction: { value: 0.35, source: source.memory('.35 on steel') },
};

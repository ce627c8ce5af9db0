import { barrel6x12 } from './emitter-barrel-6x12.js';
import { BARREL } from './sources.js';
import type { Emitter } from './types.js';

/** A thicker red barrel: needs a wider mount, so a wider pitch. */
export const barrel8x13: Emitter = {
  ...barrel6x12,
  title: 'red laser barrel Ø8 × 13, 650 nm',
  diameter: { value: 8, source: BARREL },
  length: { value: 13, source: BARREL },
  massG: { value: 5.6, source: 'By hand: solid brass π/4 · 8² · 13 mm³ at 8.5 g/cm³ = 5.55 g, an upper bound' },
};

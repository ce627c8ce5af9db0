import { barrel6x12 } from './emitter-barrel-6x12.js';
import { BARREL } from './sources.js';
import type { Emitter } from './types.js';

/** The short form of the default. */
export const barrel6x10: Emitter = {
  ...barrel6x12,
  title: 'red laser barrel Ø6 × 10, 650 nm',
  length: { value: 10, source: `${BARREL} (10–15)` },
  massG: { value: 2.4, source: 'By hand: solid brass π/4 · 6² · 10 mm³ at 8.5 g/cm³ = 2.40 g, an upper bound' },
};

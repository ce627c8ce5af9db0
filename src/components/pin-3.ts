import { PIN } from './sources.js';
import type { Pin } from './types.js';

/** Pad under the adjusting screw's tip. */
export const pin3: Pin = {
  title: 'parallel pin Ø3',
  diameter: { value: 3, source: PIN },
  lengths: { value: [8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30], source: PIN },
};

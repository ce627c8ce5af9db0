import { PIN } from './sources.js';
import type { Pin } from './types.js';

/** A thinner pad, where the base arm has no room for Ø3. */
export const pin2: Pin = {
  title: 'parallel pin Ø2',
  diameter: { value: 2, source: PIN },
  lengths: { value: [6, 8, 10, 12, 14, 16, 18, 20], source: PIN },
};

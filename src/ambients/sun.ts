import type { Ambient } from './ambient.js';

/** Sun on the panel: low enough, it shines along the beams into the tubes. */
export const sun: Ambient = {
  title: 'full sun on the panel',
  directWm2: { value: 1000, source: 'Usual round figure for full sun at sea level, all wavelengths; from memory' },
  diffuseWm2: { value: 100, source: 'Clear sky without the sun, a tenth of it; common practice, no source' },
};

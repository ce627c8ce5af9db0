import { BARREL } from './sources.js';
import type { Emitter } from './types.js';

/** The default: the common red laser barrel of hobby shops, at the figures a buyer should plan with. */
export const barrel6x12: Emitter = {
  title: 'red laser barrel Ø6 × 12, 650 nm',
  diameter: { value: 6, source: `${BARREL} (Ø6.0 +0/−0.1)` },
  length: { value: 12, source: `${BARREL} (10–15)` },
  wireDiameter: {
    value: 2,
    source: 'Common practice: a pair of about 0.1 mm² wires side by side, each about 1 over its sleeve',
  },
  boresightSigmaDeg: {
    value: 1,
    source: `${BARREL}: errors of 0.5–3° are usual; σ 1° of a Rayleigh distribution has 0.32–2.45° between its 5 and 95 % points`,
  },
  divergenceMrad: { value: 1, source: `${BARREL} (0.5–2 full angle)` },
  beamDiameter: {
    value: 2,
    source: `${BARREL} (spot 2–6, often elliptical): the low end, which a 3 mm aperture takes whole`,
  },
  powerMw: {
    value: 5,
    source: `${BARREL}: labelled ≤ 5 mW, found between 1 and 10; a label is no class, measure and assume 3R or higher until then`,
  },
  wavelengthNm: { value: 650, source: BARREL },
  massG: { value: 2.9, source: 'By hand: solid brass π/4 · 6² · 12 mm³ at 8.5 g/cm³ = 2.88 g, an upper bound' },
  currentMa: { value: 25, source: `${BARREL} (15–40)` },
  voltageV: { value: 5, source: `${BARREL} (3–5)` },
};

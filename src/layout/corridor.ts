/** The room that a beam needs on its way. mm. */
import type { Spec } from '../spec/spec.js';
import { upTenth } from './fits.js';
import type { Grid } from './grid.js';

/** Free space around a beam, in all. */
const AROUND_BEAM = 1;

/** The beam at the far aperture, taken as a cone from the emitter, as far as the aperture takes it, with air around it. */
export function corridorOf(spec: Spec, { width, depth }: Pick<Grid, 'width' | 'depth'>): number {
  const { beamDiameter, divergenceMrad } = spec.emitters.part;
  const beam = beamDiameter.value + (divergenceMrad.value / 1000) * Math.max(width, depth);
  // What is wider than the aperture never reaches the receiver.
  return Math.min(upTenth(beam + AROUND_BEAM), corridorMost(spec));
}

/** The widest corridor, whatever the field. */
export const corridorMost = (spec: Spec): number => upTenth(spec.receivers.part.apertureDiameter.value + AROUND_BEAM);

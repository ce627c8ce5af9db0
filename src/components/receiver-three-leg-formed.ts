import { threeLeg } from './receiver-three-leg.js';
import type { Receiver } from './types.js';

/** The same package with its legs spread to the raster of boards and headers. */
export const threeLegFormed: Receiver = {
  ...threeLeg,
  title: 'phototransistor in a three-leg package, legs spread to 2.54',
  legPitch: { value: 2.54, source: 'TO-92, public outline drawings, formed legs' },
};

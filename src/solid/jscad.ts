/** The one door to @jscad/modeling: its names exist on the default import only when Node runs the built program. */
import modeling from '@jscad/modeling';

export const {
  booleans,
  expansions,
  extrusions,
  geometries,
  measurements,
  modifiers,
  text: lettering,
  transforms,
} = modeling;

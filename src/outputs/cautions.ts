/**
 * What to be told with every build. Written into `kit.json` and the summary, and shown before a kit is used.
 *
 * Source: IEC 60825-1:2014 (classes, 7 mm aperture, aversion response) and Directive 2006/25/EC, both through public
 * restatements; the rest is common practice in laboratories and workshops.
 */

/** Laser light first, then the rest of the build; each one or two sentences that stand on their own. */
export const CAUTIONS: readonly string[] = [
  "The power printed on an emitter's label is not its class. Measure every emitter; until then treat it as class 3R or higher.",
  'Never look into a beam, directly or through a lens, a loupe or a camera finder.',
  'Set the panel up so that the plane of its beams is never at the eye height of someone who sits or stands beside it, children included.',
  'End every beam in an opaque, matt stop behind its receiver, wide enough for the largest aim error.',
  'Run it with all covers fitted, and with nothing mirror-like on the deck.',
  'Take rings, watches and bright tools off before you reach in: they throw a beam out of its plane.',
  'Cut the power before you open it. Align at reduced drive, one line powered at a time, with the alignment hood on.',
  'Infrared light gives no warning: the eye neither sees it nor turns away. Find and follow such a beam with a viewing card only.',
  'Any class or power stated for this kit is an estimate, not a classification. Local law and a qualified laser safety person decide.',
  'Lithium cells, hot plastic and solder have dangers of their own: keep to the makers’ instructions and to local codes, and leave to licensed hands what these reserve for them.',
];

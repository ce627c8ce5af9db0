/** Calm colours by what a part is, so that pictures of different kits can be compared. */

/** The first pattern that a part's id matches gives its colour. */
const BY_ID = [
  [/^emitter-rail/, [150, 172, 186]],
  [/^receiver-rail/, [128, 156, 158]],
  [/^cover/, [196, 202, 196]],
  [/^deck-tile/, [232, 226, 208]],
  [/^corner-post/, [172, 180, 188]],
  [/^(corner-bracket|sill-bar|wall-plate|deck-splice)/, [120, 128, 142]],
  [/^tilt-mount/, [214, 158, 98]],
  [/^roll-collar/, [176, 96, 78]],
  [/^receiver-socket/, [124, 166, 128]],
  [/^socket-lid/, [160, 192, 146]],
  [/^plug/, [218, 186, 140]],
  [/^hood/, [96, 100, 112]],
  [/wires/, [150, 52, 52]],
];
const BY_MATERIAL = { steel: [182, 186, 192], brass: [208, 182, 96] };
const OTHER = [88, 92, 98];
export const BEAM = [226, 60, 48];

/** @returns {readonly [number, number, number]} */
export const colourOf = ({ id, material }) =>
  BY_ID.find(([pattern]) => pattern.test(id))?.[1] ?? BY_MATERIAL[material] ?? OTHER;

/** Calm colours by what a part is, so that pictures of different kits can be compared. Red, green and blue, 0 to 255. */
import type { Vec3 } from '../solid/mesh.js';

/** The first pattern that a part's id matches gives its colour. */
const BY_ID: readonly (readonly [RegExp, Vec3])[] = [
  [/^emitter-rail/, [150, 172, 186]],
  [/^receiver-rail/, [128, 156, 158]],
  [/^cover/, [196, 202, 196]],
  [/^deck-tile/, [232, 226, 208]],
  [/^corner-post/, [172, 180, 188]],
  [/^(corner-bracket|sill-bar|wall-plate|deck-splice)/, [120, 128, 142]],
  [/^tilt-mount/, [214, 158, 98]],
  [/^(roll-collar|emitter-sleeve)/, [176, 96, 78]],
  [/^receiver-socket/, [124, 166, 128]],
  [/^socket-lid/, [160, 192, 146]],
  [/^plug/, [218, 186, 140]],
  [/^hood/, [96, 100, 112]],
  [/^bay-tray/, [138, 150, 166]],
  [/^bay-lid/, [188, 196, 204]],
  [/^bay-door/, [206, 190, 168]],
  [/^board-clip/, [218, 186, 140]],
  [/^module-battery/, [92, 118, 150]],
  [/^module-/, [74, 122, 92]],
  [/^light-pipe/, [226, 226, 232]],
  [/^(carrier|supply-board)/, [62, 112, 88]],
  [/wires/, [150, 52, 52]],
  [/^(barrel|own-emitter)/, [208, 182, 96]],
  [/^led/, [196, 70, 60]],
];
const BY_MATERIAL: Readonly<Record<string, Vec3>> = { steel: [182, 186, 192], brass: [208, 182, 96] };
const OTHER: Vec3 = [88, 92, 98];
export const BEAM: Vec3 = [226, 60, 48];

export const colourOf = ({ id, material }: { readonly id: string; readonly material?: string }): Vec3 =>
  BY_ID.find(([pattern]) => pattern.test(id))?.[1] ?? BY_MATERIAL[material ?? ''] ?? OTHER;

/** @returns `#rrggbb` */
export const hex = (colour: Vec3): string =>
  `#${colour.map((c) => Math.round(c).toString(16).padStart(2, '0')).join('')}`;

/** The printed parts, each once, and how a place in one is told. */
import type { Kit, Part } from '../../kit/types.js';
import type { Vec3 } from '../../solid/mesh.js';

export const printed = (kit: Kit): readonly Part[] => [...kit.parts.values()].filter(({ kind }) => kind === 'printed');

/** In the coordinates of the part's print file, to a tenth [mm]. */
export const place = (at: Vec3): string => `at (${at.map((x) => (Math.round(x * 10) / 10 + 0).toFixed(1)).join(', ')})`;

/** Lettering as outlines: single strokes, widened. */
import { expansions, geometries, lettering } from './jscad.js';
import type { Outlines, Vec2 } from './mesh.js';
import { requirePositive } from './numbers.js';
import { shift } from './outlines.js';
import type { Profiles } from './profiles.js';

export interface TextOptions {
  /** Height of a capital, middle of stroke to middle of stroke [mm]. */
  readonly height: number;
  /** Width of the strokes [mm]; a seventh of the height without it. */
  readonly stroke?: number;
}

/**
 * A line of printable ASCII, its baseline on y = 0, beginning at x = 0.
 * @returns no outlines at all for blanks
 * @throws {RangeError} on a character outside printable ASCII: the strokes have no others
 */
export function text(profiles: Profiles, line: string, { height, stroke = height / 7 }: TextOptions): Outlines {
  requirePositive('text: the height', height);
  requirePositive('text: the stroke', stroke);
  const unknown = /[^ -~]/u.exec(line);
  if (unknown) throw new RangeError(`text: no strokes for ${JSON.stringify(unknown[0])} in ${JSON.stringify(line)}`);
  if (line.trim() === '') return [];
  const strokes = lettering.vectorText({ height }, line).map((points) => {
    const path = geometries.path2.fromPoints({ closed: false }, points);
    const wide = expansions.expand({ delta: stroke / 2, corners: 'round', segments: 16 }, path);
    return geometries.geom2.toOutlines(wide) as unknown as Outlines;
  });
  return profiles.union(strokes);
}

/** Moved so that the middle of its bounds is at the point. */
export function centred(profiles: Profiles, outlines: Outlines, [x, y]: Vec2): Outlines {
  const { min, max } = profiles.bounds(outlines);
  return shift(outlines, [x - (min[0] + max[0]) / 2, y - (min[1] + max[1]) / 2]);
}

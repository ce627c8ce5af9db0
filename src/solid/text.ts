/** Lettering as outlines: single strokes, widened. */
import { expansions, geometries, lettering } from './jscad.js';
import type { Outlines, Vec2 } from './mesh.js';
import { requirePositive } from './numbers.js';
import { shift } from './outlines.js';
import { outlinesBox } from './outlines-box.js';
import type { Profiles } from './profiles.js';

export interface TextOptions {
  /** Height of a capital, middle of stroke to middle of stroke [mm]. */
  readonly height: number;
  /** Width of the strokes [mm]; a seventh of the height without it. */
  readonly stroke?: number;
  /** Breadth of the letters' middle lines over the alphabet's own, up to 1; strokes keep their width. Default 1. */
  readonly condense?: number;
}

/** Distance between the middle lines of neighbouring letters that condensing leaves, in strokes: one stroke's width is free. */
const APART = 2;

interface Glyph {
  readonly outlines: Outlines;
  /** Where its middle lines begin and end; undefined for a blank. */
  readonly from?: number;
  readonly to?: number;
  /** From one letter's start to the next one's. */
  readonly advance: number;
}

/**
 * A line of printable ASCII, its baseline on y = 0, beginning at x = 0.
 * @returns no outlines at all for blanks
 * @throws {RangeError} on a character outside printable ASCII: the strokes have no others
 */
export function text(profiles: Profiles, line: string, options: TextOptions): Outlines {
  return letterer(profiles)(line, options);
}

/** @returns `text` for many lines: each letter is widened once */
export function letterer(profiles: Profiles): (line: string, options: TextOptions) => Outlines {
  const glyphs = new Map<string, Glyph>();
  return (line, { height, stroke = height / 7, condense = 1 }) => {
    requirePositive('text: the height', height);
    requirePositive('text: the stroke', stroke);
    requirePositive('text: the breadth', condense);
    const unknown = /[^ -~]/u.exec(line);
    if (unknown) throw new RangeError(`text: no strokes for ${JSON.stringify(unknown[0])} in ${JSON.stringify(line)}`);
    const glyphOf = (letter: string): Glyph => {
      const key = `${letter} ${height} ${stroke} ${condense}`;
      const glyph = glyphs.get(key) ?? drawGlyph(profiles, letter, { height, stroke, condense });
      glyphs.set(key, glyph);
      return glyph;
    };
    let x = 0;
    let before = -Infinity;
    const placed = [...line].flatMap((letter): Outlines[] => {
      const { outlines, advance, from, to } = glyphOf(letter);
      if (from === undefined || to === undefined) {
        x += advance;
        return [];
      }
      // Condensed letters keep the distance that they had, up to two strokes.
      const at = Math.max(x, before + Math.min((x + from - before) / condense, APART * stroke) - from);
      [x, before] = [at + advance, at + to];
      return [shift(outlines, [at, 0])];
    });
    return joined(profiles, placed);
  };
}

function drawGlyph(profiles: Profiles, letter: string, { height, stroke, condense }: Required<TextOptions>): Glyph {
  const { width, segments } = lettering.vectorChar({ height }, letter);
  if (letter === ' ') return { outlines: [], advance: condense * width };
  const narrow = segments.map((points) => points.map(([x, y]): [number, number] => [condense * x!, y!]));
  const xs = narrow.flatMap((points) => points.map(([x]) => x));
  const strokes = narrow.map((points) => {
    const path = geometries.path2.fromPoints({ closed: false }, points);
    const wide = expansions.expand({ delta: stroke / 2, corners: 'round', segments: 12 }, path);
    return geometries.geom2.toOutlines(wide) as unknown as Outlines;
  });
  return {
    outlines: profiles.union(strokes),
    from: Math.min(...xs),
    to: Math.max(...xs),
    advance: condense * width,
  };
}

/** Letters in their order as one figure: united are only those whose widths overlap. */
function joined(profiles: Profiles, letters: readonly Outlines[]): Outlines {
  const groups: Outlines[][] = [];
  let end = -Infinity;
  for (const letter of letters) {
    const { min, max } = outlinesBox(letter);
    if (min[0] > end) groups.push([letter]);
    else groups.at(-1)!.push(letter);
    end = Math.max(end, max[0]);
  }
  return groups.flatMap((group) => (group.length === 1 ? group[0]! : profiles.union(group)));
}

/** Moved so that the middle of its bounds is at the point. */
export function centred(profiles: Profiles, outlines: Outlines, [x, y]: Vec2): Outlines {
  const { min, max } = profiles.bounds(outlines);
  return shift(outlines, [x - (min[0] + max[0]) / 2, y - (min[1] + max[1]) / 2]);
}

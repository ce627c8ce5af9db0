import { beforeAll, expect, test } from 'vitest';
import { expansions, geometries, lettering } from '../../src/solid/jscad.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import type { Outlines } from '../../src/solid/mesh.js';
import type { Profiles } from '../../src/solid/profiles.js';
import { letterer, text } from '../../src/solid/text.js';

let profiles: Profiles;
beforeAll(async () => {
  ({ profiles } = await loadManifold());
});

/** The same line by the strokes' own library: all strokes of the whole line widened and united at once. */
function atOnce(line: string, height: number): Outlines {
  const strokes = lettering.vectorText({ height }, line).map((points) => {
    const path = geometries.path2.fromPoints({ closed: false }, points);
    const wide = expansions.expand({ delta: height / 14, corners: 'round', segments: 12 }, path);
    return geometries.geom2.toOutlines(wide) as unknown as Outlines;
  });
  return profiles.union(strokes);
}

test.for(['MIST 1', 'AAVA', 'WAVE', '"!|, ;:', 'B8&g#@%', 'Tjfy  lI1'])(
  'letter by letter as the whole line: %s',
  (line) => {
    const [one, other] = [text(profiles, line, { height: 4.5 }), atOnce(line, 4.5)];
    // The library's corners depend a little on where the letter stands: alike to three hundredths.
    const beyond = (a: Outlines, b: Outlines) => profiles.area(profiles.difference(a, profiles.offset(b, 0.03)));
    expect(beyond(one, other)).toBe(0);
    expect(beyond(other, one)).toBe(0);
    expect(profiles.pieces(one)).toHaveLength(profiles.pieces(other).length);
    const [a, b] = [profiles.bounds(one), profiles.bounds(other)];
    for (const i of [0, 1] as const) {
      expect(a.min[i]).toBeCloseTo(b.min[i], 2);
      expect(a.max[i]).toBeCloseTo(b.max[i], 1);
    }
  },
);

test('heights and strokes are kept apart, and a second line is like the first', () => {
  const letters = letterer(profiles);
  const small = letters('A', { height: 3 });
  expect(profiles.area(letters('A', { height: 6 }))).toBeCloseTo(4 * profiles.area(small), 3);
  expect(profiles.area(letters('A', { height: 3, stroke: 1 }))).toBeGreaterThan(1.5 * profiles.area(small));
  expect(letters('A', { height: 3 })).toEqual(small);
});

test('blanks have no outlines; what has no strokes is refused', () => {
  expect(text(profiles, '   ', { height: 4 })).toEqual([]);
  expect(() => text(profiles, 'Mü', { height: 4 })).toThrow(/ü/);
  expect(() => text(profiles, 'M', { height: 0 })).toThrow(RangeError);
});

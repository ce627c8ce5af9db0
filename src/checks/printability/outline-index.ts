/** Is a point within outlines? Sorted into bands, so that thousands of points may be asked. */
import type { Outlines, Vec2 } from '../../solid/mesh.js';

export type Within = (point: Vec2) => boolean;

/** @returns a function that counts how often a ray to the right crosses the outlines: odd is inside */
export function within(outlines: Outlines): Within {
  const count = outlines.reduce((sum, outline) => sum + outline.length, 0);
  if (count === 0) return () => false;
  const sides = new Float64Array(4 * count);
  let [low, high, n] = [Infinity, -Infinity, 0];
  for (const outline of outlines)
    for (let i = 0; i < outline.length; i++) {
      const from = outline[i]!;
      const to = outline[i + 1 < outline.length ? i + 1 : 0]!;
      sides[n++] = from[0];
      sides[n++] = from[1];
      sides[n++] = to[0];
      sides[n++] = to[1];
      if (from[1] < low) low = from[1];
      if (from[1] > high) high = from[1];
    }
  const bandCount = Math.max(1, Math.min(1000, count >> 2));
  const scale = bandCount / (high - low || 1);
  const band = (y: number) => Math.min(bandCount - 1, Math.max(0, Math.floor((y - low) * scale)));
  const bands: number[][] = Array.from({ length: bandCount }, () => []);
  for (let s = 0; s < sides.length; s += 4) {
    const a = band(Math.min(sides[s + 1]!, sides[s + 3]!));
    const b = band(Math.max(sides[s + 1]!, sides[s + 3]!));
    for (let i = a; i <= b; i++) bands[i]!.push(s);
  }
  return (point) => {
    const x = point[0];
    const y = point[1];
    if (y < low || y > high) return false;
    let inside = false;
    const near = bands[band(y)]!;
    for (let i = 0; i < near.length; i++) {
      const s = near[i]!;
      const ay = sides[s + 1]!;
      const by = sides[s + 3]!;
      if (ay > y === by > y) continue;
      const ax = sides[s]!;
      if (x < ax + ((y - ay) / (by - ay)) * (sides[s + 2]! - ax)) inside = !inside;
    }
    return inside;
  };
}

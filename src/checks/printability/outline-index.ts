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
      const [from, to] = [outline[i]!, outline[i + 1 < outline.length ? i + 1 : 0]!];
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
    const [a, b] = [sides[s + 1]!, sides[s + 3]!];
    for (let i = band(Math.min(a, b)); i <= band(Math.max(a, b)); i++) bands[i]!.push(s);
  }
  return ([x, y]) => {
    if (y < low || y > high) return false;
    let inside = false;
    for (const s of bands[band(y)]!) {
      const [ax, ay, bx, by] = [sides[s]!, sides[s + 1]!, sides[s + 2]!, sides[s + 3]!];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    }
    return inside;
  };
}

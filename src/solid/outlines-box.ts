import type { Outlines, Vec2 } from './mesh.js';

/** Smallest upright rectangle around outlines [mm]. @throws {RangeError} when there are none */
export function outlinesBox(outlines: Outlines): { readonly min: Vec2; readonly max: Vec2 } {
  const all = outlines.flat();
  if (all.length === 0) throw new RangeError('outlinesBox: no outlines');
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
}

/** Large solids in slices, so that only what is near is measured. */
import type { MeasuringKernel, Solid } from '../solid/kernel.js';
import { translation } from '../solid/matrix.js';
import type { Box, Vec3 } from '../solid/mesh.js';

/** A slice has about so many triangles and is at least so long [mm]: below that slicing costs more than it saves. */
const SLICE_TRIANGLES = 500;
const SLICE_LENGTH = 10;

/**
 * Cuts a large solid across its longest side into slices, each when it is first asked for. What the kernel measures takes as
 * long as its arguments are large, and most of a rail is nowhere near the screw that is measured against it.
 */
export function slicer(
  kernel: MeasuringKernel,
  { solid, box, triangles }: { readonly solid: Solid; readonly box: Box; readonly triangles: number },
): (near: Box) => readonly Solid[] {
  const sizes = [0, 1, 2].map((k) => box.max[k]! - box.min[k]!);
  const axis = sizes.indexOf(Math.max(...sizes));
  const count = Math.min(Math.floor(triangles / SLICE_TRIANGLES), Math.floor(sizes[axis]! / SLICE_LENGTH));
  if (count < 2) return () => [solid];
  const thick = sizes[axis]! / count;
  const made: (Solid | undefined)[] = [];
  const cut = (i: number): Solid => {
    // Beyond the solid on all sides but the two cuts.
    const least = box.min.map((x, k) => (k !== axis ? x - 1 : i === 0 ? x - 1 : x + i * thick));
    const size = sizes.map((x, k) => (k !== axis ? x + 2 : thick + (i === 0 ? 1 : 0) + (i === count - 1 ? 1 : 0)));
    const [w, d] = [size[0]!, size[1]!];
    const block = kernel.extrude(
      [
        [
          [0, 0],
          [w, 0],
          [w, d],
          [0, d],
        ],
      ],
      size[2]!,
    );
    return kernel.intersect(solid, kernel.move(block, translation(least as unknown as Vec3)));
  };
  return (near) => {
    const at = (x: number) => Math.min(count - 1, Math.max(0, Math.floor((x - box.min[axis]!) / thick)));
    const [from, to] = [at(near.min[axis]!), at(near.max[axis]!)];
    if (to - from + 1 > count / 2) return [solid];
    return Array.from({ length: to - from + 1 }, (_, i) => {
      made[from + i] ??= cut(from + i);
      return made[from + i]!;
    });
  };
}

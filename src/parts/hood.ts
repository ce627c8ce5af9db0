/**
 * Panel of the alignment hood: wall and skirt in one plane, a flange that lies on the cover. It prints on its outer face: x
 * along the rail, y up in the kit with 0 at the cover's top, z inward from the outer face.
 */
import type { HoodPanel } from '../layout/hood.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { box } from '../solid/shapes.js';

export function drawHoodPanel(k: Kernel, { hood }: Layout, panel: Pick<HoodPanel, 'from' | 'to' | 'height'>): Solid {
  const length = panel.to - panel.from;
  const t = hood.thickness;
  return k.union([
    box(k, [0, -hood.skirt, 0], [length, panel.height, t]),
    box(k, [0, 0, t - 0.2], [length, t, t + hood.gap + hood.flange]),
  ]);
}

/** From file coordinates to the rail's. */
export function hoodMatrix({ hood, frame: { section } }: Layout, panel: HoodPanel): Matrix {
  const outer = section.width + hood.gap + hood.thickness;
  return frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [panel.from, outer, section.height + section.cover]);
}

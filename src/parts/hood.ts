/**
 * Panel of the alignment hood: wall and skirt in one plane, a flange that lies on the cover. It prints on its outer face: x
 * along the rail, y up in the kit with 0 at the cover's top, z inward from the outer face.
 */
import type { HoodPanel } from '../layout/hood.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { polygon } from '../solid/outlines.js';
import { box, prism } from '../solid/shapes.js';

export function drawHoodPanel(k: Kernel, { hood }: Layout, panel: HoodPanel): Solid {
  const length = panel.to - panel.from;
  const t = hood.thickness;
  // At a seam the outer face of the one before reaches over the next one's, whose own leans back: 45°, which prints.
  const [start, end] = panel.meets.map((meets) => (meets ? t / 2 : 0)) as [number, number];
  const wall = polygon([
    [start, 0],
    [length + end, 0],
    [length - end, t],
    [-start, t],
  ]);
  return k.union([
    prism(k, wall, { axis: 'y', from: -hood.skirt, to: panel.height }),
    // Clear of the next wall's inner edge, which reaches back over this one's end.
    box(k, [0, 0, t - 0.2], [length - end, t, t + hood.gap + hood.flange]),
  ]);
}

/** From file coordinates to the rail's. */
export function hoodMatrix({ hood, frame: { section } }: Layout, panel: HoodPanel): Matrix {
  const outer = section.width + hood.gap + hood.thickness;
  return frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [panel.from, outer, section.height + section.cover]);
}

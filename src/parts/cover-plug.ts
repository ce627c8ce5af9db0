/** Plug for the openings over one mount or socket, put in after alignment: a plate with a boss for each. Prints on its plate. */

import { side } from '../layout/fits.js';
import type { Layout } from '../layout/layout.js';
import { mountOpenings, PLUG, plugHalf, socketOpenings } from '../layout/openings.js';
import type { RailKind } from '../layout/sides.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Outlines, Vec2 } from '../solid/mesh.js';
import { rectangle } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';

/** x along the rail from the beam, y outward from the mount's or socket's front, mirrored in y: the file's top is down in the kit. */
export function drawCoverPlug(k: Kernel, layout: Layout, kind: RailKind): Solid {
  const openings =
    kind === 'emitter' ? mountOpenings({ ...layout, section: layout.frame.section }) : socketOpenings(layout);
  const gap = side(layout.spec, 'snug');
  const all = openings.flatMap(({ outline }) => outline.flat());
  const half = plugHalf({ ...layout, section: layout.frame.section, pitch: layout.grid.leastPitch });
  const [y0, y1] = [Math.min(...all.map(([, y]) => y)), Math.max(...all.map(([, y]) => y))];
  const plate = rectangle(-half, -y1 - PLUG.rim, half, -y0 + PLUG.rim);
  return k.union([
    prism(k, plate, { axis: 'z', from: 0, to: PLUG.plate }),
    ...openings.map(({ outline }) =>
      prism(k, flipped(shrunk(outline, gap)), {
        axis: 'z',
        from: PLUG.plate - 0.2,
        to: PLUG.plate + layout.frame.section.cover,
      }),
    ),
  ]);
}

/** A convex outline drawn in toward its middle by `gap` along both axes: exact for rectangles and for slots along an axis. */
function shrunk(outlines: Outlines, gap: number): Outlines {
  return outlines.map((points) => {
    const xs = points.map(([x]) => x);
    const ys = points.map(([, y]) => y);
    const [cx, hx] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.max(...xs) - Math.min(...xs)) / 2];
    const [cy, hy] = [(Math.min(...ys) + Math.max(...ys)) / 2, (Math.max(...ys) - Math.min(...ys)) / 2];
    return points.map(([x, y]): Vec2 => [cx + ((x - cx) * (hx - gap)) / hx, cy + ((y - cy) * (hy - gap)) / hy]);
  });
}

const flipped = (outlines: Outlines): Outlines =>
  outlines.map((points) => points.toReversed().map(([x, y]): Vec2 => [x, -y]));

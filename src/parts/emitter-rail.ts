/** Emitter rail: a window per beam, ribs that keep each mount square, holes for its screw. Prints on its floor. */

import { side } from '../layout/fits.js';
import type { Layout } from '../layout/layout.js';
import { RIB_LEAST } from '../layout/mount-ask.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { polygon, teardrop } from '../solid/outlines.js';
import { atPlaces, box, prism } from '../solid/shapes.js';
import { boardGuides } from './board-guides.js';
import { sunkHole } from './holes.js';
import { railBody } from './rail.js';

const OVER = 1;
const RIB = 1.6;
export const RIB_HEIGHT = 5;
/** Bump that presses the mount against the opposite rib: how far it reaches into the mount, and its breadth. */
export const BUMP = { crush: 0.12, breadth: 1.6 } as const;

export function drawEmitterRail(k: Kernel, layout: Layout, segment: RailSegment): Solid {
  const { section } = layout.frame;
  const beamZ = layout.spec.beam.height - section.bottom;
  const windows = segment.beams.map((x) => teardrop([x, beamZ], layout.window, { roof: '+y' }));
  const { add, cut } = railBody(k, layout, { segment, windows });
  const fixY = section.mountFront - layout.mount.fix.at;
  const fix = sunkHole(k, layout.spec, { at: [0, fixY, 0], way: '+z', depth: section.floor + OVER });
  cut.push(
    ...atPlaces(
      k,
      fix,
      segment.beams.map((x) => [x, 0, 0]),
    ),
  );
  return k.subtract(k.union([...add, ...ribs(k, layout, segment), ...boardGuides(k, layout, segment)]), cut);
}

/** Ribs on both sides of each mount, beside its post and its rear; one rib serves two mounts where they stand close. */
function ribs(k: Kernel, layout: Layout, { beams, length }: RailSegment): Solid[] {
  const { mount, spec, frame } = layout;
  const gap = side(spec, 'snug');
  const half = mount.width / 2;
  const z: [number, number] = [frame.section.floor - 0.2, frame.section.floor + RIB_HEIGHT];
  const stubs = ribStubs(layout);
  const spans: [number, number][] = [];
  beams.forEach((x, i) => {
    const left = x - half - gap;
    const before = beams[i - 1];
    const room = before === undefined ? Infinity : left - (before + half + gap);
    if (room <= 2 * RIB + 1) spans.push([left - room, left]);
    else {
      spans.push([left - RIB, left]);
      if (before !== undefined) spans.push([before + half + gap, before + half + gap + RIB]);
    }
  });
  const last = beams.at(-1);
  if (last !== undefined) spans.push([last + half + gap, last + half + gap + RIB]);
  const kept = spans
    .map(([a, b]): [number, number] => [Math.max(a, 0), Math.min(b, length)])
    .filter(([a, b]) => b - a >= RIB_LEAST - 1e-9);
  const bodies = kept.flatMap(([a, b]) => stubs.map(([y0, y1]) => box(k, [a, y0, z[0]], [b, y1, z[1]])));
  const bumps = beams
    .map((x) => x - half - gap)
    .filter((face) => kept.some(([, b]) => Math.abs(b - face) < 1e-6))
    .flatMap((face) =>
      bumpPlaces(layout).map((y) => {
        const tip = gap + BUMP.crush;
        return prism(
          k,
          polygon([
            [face - 0.2, y - BUMP.breadth / 2],
            [face, y - BUMP.breadth / 2],
            [face + tip, y],
            [face, y + BUMP.breadth / 2],
            [face - 0.2, y + BUMP.breadth / 2],
          ]),
          { axis: 'z', from: z[0], to: z[1] },
        );
      }),
    );
  return [...bodies, ...bumps];
}

/** Where ribs stand along y: beside the post, and beside the base's thick rear. */
function ribStubs({ mount, frame: { section } }: Layout): [number, number][] {
  const front = section.mountFront;
  return [
    [front + 0.5, front + mount.post.depth - 0.5],
    [front - mount.base.rearFrom + 0.5, front + mount.length - 0.3],
  ];
}

/** Bumps: at the post's middle, and behind the pin's groove. */
function bumpPlaces({ mount, frame: { section } }: Layout): [number, number] {
  const front = section.mountFront;
  return [front + mount.post.depth / 2, front + mount.length - 0.3 - BUMP.breadth / 2];
}

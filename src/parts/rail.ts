/**
 * What emitter and receiver rails share: floor, walls, the sill that carries the deck, bosses for the cover, screw holes at
 * corners and seams. Rail coordinates of the segment: x along it from 0, y outward, z up from its underside, as it prints.
 */
import type { Layout } from '../layout/layout.js';
import type { RailSegment } from '../layout/runs.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Outlines, Vec2, Vec3 } from '../solid/mesh.js';
import { asHoles, polygon, rectangle, together } from '../solid/outlines.js';
import { atPlaces, box, prism } from '../solid/shapes.js';
import { bayHold } from './bay-hold.js';
import { pilotHole, sunkHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;

/** Bodies and cutters of the shared cross-section. */
export function railBody(
  k: Kernel,
  layout: Layout,
  {
    segment,
    windows,
  }: { readonly segment: RailSegment /** In (x, z), through the field wall. */; readonly windows: readonly Outlines[] },
): { add: Solid[]; cut: Solid[] } {
  const { section } = layout.frame;
  const { length } = segment;
  const { wall, floor, width, height, sill, sillTop } = section;
  const bay = bayHold(k, layout, segment);
  return {
    add: [
      box(k, [0, 0, 0], [length, width, floor]),
      // Drawn into the wall's figure: far cheaper than cut from the solid.
      prism(k, together(rectangle(0, 0, length, height), ...windows.map(asHoles)), { axis: 'y', from: 0, to: wall }),
      box(k, [0, width - wall, 0], [length, width, height]),
      box(k, [0, -sill, 0], [length, INTO, sillTop]),
      ...segment.bosses.map((x) => boss(k, layout, { x, wall: 'outer' })),
      ...segment.fieldBosses.map((x) => boss(k, layout, { x, wall: 'field' })),
      ...bay.add,
    ],
    cut: [
      ...bay.cut,
      ...endCuts(k, layout, segment),
      ...atPlaces(
        k,
        pilotHole(k, layout.spec, { at: [0, 0, sillTop], way: '-z', depth: layout.deckHold.pilotDepth }),
        segment.deckScrews.map((x) => [x, -layout.deckHold.fromWall, 0]),
      ),
      ...atPlaces(
        k,
        pilotHole(k, layout.spec, { at: [0, 0, height], way: '-z', depth: layout.frame.boss.pilotDepth }),
        coverScrews(layout, segment).map(([x, y]) => [x, y, 0]),
      ),
    ],
  };
}

/** Where a segment's cover is screwed down: x along it, y outward. */
export function coverScrews({ frame }: Layout, { bosses, fieldBosses }: RailSegment): Vec2[] {
  const { section, boss: b } = frame;
  return [
    ...bosses.map((x): Vec2 => [x, section.width - section.wall - b.depth / 2]),
    ...fieldBosses.map((x): Vec2 => [x, section.wall + b.depth / 2]),
  ];
}

/** Boss on a wall under the cover; its underside rises at 45°, so that it prints and wires pass below. */
function boss(
  k: Kernel,
  { frame: { section, boss: b } }: Layout,
  { x, wall }: { readonly x: number; readonly wall: 'outer' | 'field' },
): Solid {
  // The boss's top ends exactly at the wall's face: coplanar tops that overlap would leave slivers.
  const face = wall === 'outer' ? section.width - section.wall : section.wall;
  const into = wall === 'outer' ? 1 : -1;
  const top = section.height;
  const profile = polygon([
    [face, top],
    [face - into * b.depth, top],
    [face - into * b.depth, top - b.height],
    [face + into * INTO, top - b.height - b.depth - INTO],
    [face + into * INTO, top - 1],
  ]);
  return prism(k, profile, { axis: 'x', from: x - b.width / 2, to: x + b.width / 2 });
}

/** At both ends: room for bracket or splice in the sill, their pilot holes, and the holes through the outer wall. */
function endCuts(k: Kernel, layout: Layout, segment: RailSegment): Solid[] {
  const { section, joint, tab } = layout.frame;
  const pilot = pilotHole(k, layout.spec, {
    at: [0, -section.sillBehind, section.sillTop / 2],
    way: '+y',
    depth: section.sillBehind + section.wall + OVER,
    up: '+z',
  });
  const through = sunkHole(k, layout.spec, {
    at: [0, section.width, 0],
    way: '-y',
    depth: section.wall + OVER,
    up: '+z',
  });
  return segment.ends.flatMap((end, i) => {
    const x = (distance: number) => (i === 1 ? segment.length - distance : distance);
    const outer = end === 'corner' ? [tab.reach / 2] : joint.screws;
    const cuts = [
      box(k, [x(-OVER), -section.sill - OVER, -OVER], [x(joint.leg), -section.sillBehind, section.sillTop + OVER]),
      ...atPlaces(
        k,
        pilot,
        joint.screws.map((distance) => [x(distance), 0, 0]),
      ),
      ...atPlaces(
        k,
        through,
        outer.flatMap((distance) => tab.heights.map((z): Vec3 => [x(distance), 0, z])),
      ),
    ];
    // Where the neighbour's sill passes.
    if (end === 'corner' && segment.yields)
      cuts.push(
        box(k, [x(-OVER), -section.sillBehind - OVER, -OVER], [x(section.sillBehind + 0.3), 0, section.sillTop + OVER]),
      );
    return cuts;
  });
}

/**
 * What joins rails: the bracket in each corner of the field, the bar in the sill at a seam, the plate inside the outer wall at
 * a seam. Each prints flat or as it stands, without supports.
 */
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';
import { polygon } from '../solid/outlines.js';
import { atPlaces, box, prism } from '../solid/shapes.js';
import { pilotHole, sunkHole } from './holes.js';

const OVER = 1;
/** Between a bracket's or bar's end and the sill beside it. */
export const JOINT_PLAY = 0.2;

/**
 * Corner bracket: x and y run into the field along the two rails from the bracket's outer corner, z up from the rails'
 * underside; it prints as it stands and its top carries the deck's corner.
 */
export function drawCornerBracket(k: Kernel, layout: Layout): Solid {
  const { section, joint } = layout.frame;
  const leg = joint.leg - section.sillBehind - JOINT_PLAY;
  const t = joint.thickness;
  const outline = polygon([
    [0, 0],
    [leg, 0],
    [leg, t],
    [t, t],
    [t, leg],
    [0, leg],
  ]);
  const body = prism(k, outline, { axis: 'z', from: 0, to: section.sillTop });
  const hole = (way: '-x' | '-y') => sunkHole(k, layout.spec, { at: [0, 0, 0], way, depth: t + OVER, up: '+z' });
  const places = joint.screws.map((distance) => distance - section.sillBehind);
  const z = section.sillTop / 2;
  const cuts = [
    ...atPlaces(
      k,
      hole('-y'),
      places.map((at) => [at, t, z]),
    ),
    ...atPlaces(
      k,
      hole('-x'),
      places.map((at) => [t, at, z]),
    ),
  ];
  return k.subtract(body, cuts);
}

/** Bar in the sill across a seam: x along the rail from its middle, y height, z from the sill's face into the field. Prints flat. */
export function drawSillBar(k: Kernel, layout: Layout): Solid {
  const { section, joint } = layout.frame;
  const half = joint.leg - JOINT_PLAY;
  const t = joint.thickness;
  const hole = sunkHole(k, layout.spec, { at: [0, 0, 0], way: '-z', depth: t + OVER });
  const places = joint.screws.flatMap((d) => [d, -d].map((x): Vec3 => [x, section.sillTop / 2, t]));
  return k.subtract(box(k, [-half, 0, 0], [half, section.sillTop, t]), atPlaces(k, hole, places));
}

/** Plate inside the outer wall across a seam: x along the rail from its middle, y height, z inward from the wall. Prints flat. */
export function drawWallPlate(k: Kernel, layout: Layout): Solid {
  const { section, tab, joint } = layout.frame;
  const half = joint.leg - JOINT_PLAY;
  const low = section.floor + 0.4;
  const hole = pilotHole(k, layout.spec, { at: [0, 0, 0], way: '+z', depth: tab.thickness + OVER });
  const places = joint.screws.flatMap((d) => [d, -d].flatMap((x) => tab.heights.map((z): Vec3 => [x, z - low, 0])));
  return k.subtract(box(k, [-half, 0, 0], [half, tab.plateTop - low, tab.thickness]), atPlaces(k, hole, places));
}

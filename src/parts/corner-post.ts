/**
 * Corner post: closes the outside of a corner and ties the outer walls of two rails. Corner coordinates: p and q outward from
 * the field's corner, z up from the rails' underside; rail A lies at p < 0, rail B at q < 0. It prints top down, so the file
 * holds it turned over: x = p, y = −q, z = its top downward.
 */
import { CABLE_FROM_CORNER } from '../layout/cable.js';
import { TAB_ROOT } from '../layout/frame.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { polygon } from '../solid/outlines.js';
import { box, prism } from '../solid/shapes.js';
import { pilotHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;
/** Pillar in the inner corner: closes the gap between the two field walls. */
const PILLAR = 8;
const APART = 0.15;

/** From file coordinates to corner coordinates (p, q, z). */
export function postMatrix({ frame: { section } }: Layout): Matrix {
  return frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, section.height + section.cover]);
}

export function drawCornerPost(k: Kernel, layout: Layout): Solid {
  const { section, tab } = layout.frame;
  const { width, wall, height, cover, floor } = section;
  const reach = tab.reach;
  const plate = polygon([
    [-reach, 0],
    [0, 0],
    [0, -reach],
    [width, -reach],
    [width, width],
    [-reach, width],
  ]);
  const inner = width - wall;
  const tabOuter = inner - tab.gap;
  const tabInner = tabOuter - tab.thickness;
  const low = floor + 0.4;
  const solid = k.union([
    prism(k, plate, { axis: 'z', from: height, to: height + cover }),
    box(k, [APART, inner, 0], [width, width, height + INTO]),
    box(k, [inner, APART, 0], [width, width, height + INTO]),
    // Tabs inside the rails' outer walls, each rooted in the post's own wall.
    box(k, [-reach + 0.3, tabInner, low], [TAB_ROOT, tabOuter, height + INTO]),
    box(k, [APART, tabInner, low], [TAB_ROOT, inner + INTO, height + INTO]),
    box(k, [tabInner, -reach + 0.3, low], [tabOuter, TAB_ROOT, height + INTO]),
    box(k, [tabInner, APART, low], [inner + INTO, TAB_ROOT, height + INTO]),
    prism(
      k,
      polygon([
        [APART, APART],
        [PILLAR, APART],
        [PILLAR, wall],
        [wall, wall],
        [wall, PILLAR],
        [APART, PILLAR],
      ]),
      { axis: 'z', from: 0, to: height + INTO },
    ),
  ]);
  const cuts = tab.heights.flatMap((z) => [
    pilotHole(k, layout.spec, { at: [-reach / 2, tabOuter, z], way: '-y', depth: tab.thickness + OVER, up: '-z' }),
    pilotHole(k, layout.spec, { at: [tabOuter, -reach / 2, z], way: '-x', depth: tab.thickness + OVER, up: '-z' }),
  ]);
  const { cable } = layout;
  const edge = width - CABLE_FROM_CORNER;
  cuts.push(box(k, [edge - cable.width, inner - OVER, -OVER], [edge, width + OVER, cable.height]));
  const slit = edge + cable.tie.aside;
  for (const z of cable.tie.at)
    cuts.push(
      box(
        k,
        [slit, inner - OVER, z - cable.tie.height / 2],
        [slit + cable.tie.width, width + OVER, z + cable.tie.height / 2],
      ),
    );
  // Turned over: the inverse of a half turn about x through mid-height is itself.
  return k.move(k.subtract(solid, cuts), frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, height + cover]));
}

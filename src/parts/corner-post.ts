/**
 * Corner post: closes the outside of a corner and ties the outer walls of two rails. Corner coordinates: p and q outward from
 * the field's corner, z up from the rails' underside; rail A lies at p < 0, rail B at q < 0. It prints top down, so the file
 * holds it turned over: x = p, y = −q, z = its top downward.
 */
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { polygon } from '../solid/outlines.js';
import { box, prism } from '../solid/shapes.js';
import { pilotHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;
/** How far a tab runs on beyond the rail's end, where it joins the post's wall. */
const ROOT = 8;
/** Pillar in the inner corner: closes the gap between the two field walls. */
const PILLAR = 8;
const APART = 0.15;
/** Slot for the cable that leaves the kit. */
const CABLE = { width: 8, height: 7 } as const;

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
    box(k, [-reach + 0.3, tabInner, low], [ROOT, tabOuter, height + INTO]),
    box(k, [APART, tabInner, low], [ROOT, inner + INTO, height + INTO]),
    box(k, [tabInner, -reach + 0.3, low], [tabOuter, ROOT, height + INTO]),
    box(k, [tabInner, APART, low], [inner + INTO, ROOT, height + INTO]),
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
  cuts.push(box(k, [width - 14 - CABLE.width, inner - OVER, -OVER], [width - 14, width + OVER, CABLE.height]));
  // Turned over: the inverse of a half turn about x through mid-height is itself.
  return k.move(k.subtract(solid, cuts), frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, height + cover]));
}

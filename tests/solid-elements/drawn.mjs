/**
 * The tilt mount as it is drawn, at rest: its section beside every bore and pocket, drawn out over the whole width.
 *
 * Held: the underside of the base. Load: a dead force, straight up, on the arm's underside at the adjusting screw's axis. Read: the
 * seat's turn, the stress along the leaf. Bores, pockets and the screws themselves are left out.
 */
import { readFileSync } from 'node:fs';
import { layOut } from '../../.build/layout/lay-out.js';
import { leafBending } from '../../.build/layout/leaf-figures.js';
import { armMotion, leafAtFlex, leafPath } from '../../.build/layout/leaf-shape.js';
import { moved } from '../../.build/layout/plane.js';
import { drawTiltMount } from '../../.build/parts/tilt-mount.js';
import { readPreset } from '../../.build/spec/read-preset.js';
import { sectionOutline, withCorner } from './outline.mjs';

/** Where the section is taken [mm]: before the pin's groove, beside the bores. */
const SECTION_AT = 0.5;
/** Above the neck, so high begins what is seat and nothing else [mm]. */
const SEAT_FROM = 3;

/** @param {string} file - a preset @param {string} pins - more lines of it */
export function layPreset(file, pins = '') {
  const { spec, mount } = layOut(readPreset(`${readFileSync(file, 'utf8')}\n${pins}\n`, file));
  return { spec, mount, plastic: spec.material.plastic };
}

/**
 * @returns the case for `meshHalf`, `solveHalf` and the readings
 * @throws {Error} when the section is not one closed line: then more than the leaf joins arm and base
 */
export function drawnCase({ spec, mount, plastic }, { kernel, solid = drawTiltMount(kernel, spec, mount, 0) }) {
  const sections = kernel.section(solid, SECTION_AT);
  if (sections.length !== 1)
    throw new Error(
      `the mount's section has ${sections.length} closed lines, not one: more than the leaf joins arm and base`,
    );
  const { leaf, origin, adjust, arm } = mount;
  const toRest = armMotion(leaf, leaf.bias, 0);
  const screw = moved(toRest, [adjust.at, arm.rearBottom], origin);
  const line = leafAtFlex(leaf, 0).points.map(([u, w]) => [u + origin[0], w + origin[1]]);
  const half = leaf.thickness / 2;
  // The points of the centreline stand up to half a millimetre apart.
  const onLeaf = (at) => line.some(([u, w]) => Math.hypot(at[0] - u, at[1] - w) < Math.hypot(half, 0.25) + 0.05);
  const leg = leaf.layout === 'upright' ? [0, leaf.length / 2] : [-leaf.length / 2, 0];
  const across = leaf.layout === 'upright' ? [half, 0] : [0, half];
  const middle = [-1, 1].map((sign) => [0, 1].map((axis) => origin[axis] + leg[axis] + sign * across[axis]));
  const edges = [screw, ...middle].reduce(withCorner, sectionOutline(sections[0]));
  const root = line.at(-1);
  const close = (at, to) => Math.hypot(at[0] - to[0], at[1] - to[1]) < half + 1.2 * leaf.fillet;
  const lowest = leaf.preload + 2 * leaf.tilt;
  return {
    leaf,
    path: leafPath(leaf),
    // What, by the closed forms, brings the beam to its lowest.
    force: (leafBending(leaf, plastic).stiffness * lowest) / leaf.lever,
    edges,
    size: (at, { centre }) => {
      const fine = 0.34 * leaf.thickness;
      if (centre) return Math.min(fine, Math.hypot(at[0] - centre[0], at[1] - centre[1]) / 4);
      return onLeaf(at) ? fine : 2.5;
    },
    width: leaf.width,
    plastic: { modulus: plastic.modulus.value, poisson: plastic.poisson.value },
    fixed: (at) => at[1] < 1e-6,
    screw,
    origin,
    body: (at) => at[1] > arm.neckTop + SEAT_FROM,
    middle,
    root: (at) => close(at, origin) || close(at, root),
    turn: (at) => leaf.legs > 1 && onLeaf(at) && (at[0] < origin[0] - leaf.length - 1e-6 || at[0] > origin[0] + 1e-6),
  };
}

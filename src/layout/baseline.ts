/** The mount nearest to what the preset asks for: the kit's own where its solver finds one. */

import type { Spec } from '../spec/spec.js';
import { rad } from '../units.js';
import { gridOf, longestRail } from './field.js';
import { nearestLeaf } from './leaf-search.js';
import { findLeaf } from './leaf-solve.js';
import { askMount } from './mount-ask.js';
import { type MountSolution, roomsOf, settleMount } from './mount-solve.js';

export interface Baseline extends MountSolution {
  /** It meets every demand; else it misses them by the least. */
  readonly holds: boolean;
}

/**
 * @returns undefined where nothing like what the preset asks for can be drawn
 * @throws {PresetError} when barrel, nuts or neighbouring mounts have no room, whatever the leaf
 */
export function baselineOf(spec: Spec): Baseline | undefined {
  const { width, tiltDeg } = askMount(spec, longestRail(gridOf(spec)));
  const at = { width, tilt: rad(tiltDeg) };
  const rooms = roomsOf(spec);
  for (const lengthMost of rooms) {
    const found = settleMount(spec, { ...at, lengthMost, choose: findLeaf });
    if (found) return { ...found, holds: true };
  }
  const near = settleMount(spec, { ...at, lengthMost: rooms.at(-1)!, choose: nearestLeaf });
  return near && { ...near, holds: false };
}

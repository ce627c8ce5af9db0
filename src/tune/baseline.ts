/** The leaf from which a sweep starts: the preset's own as far as it says, the kit's solver's for the rest. */
import { gridOf } from '../layout/lay-out.js';
import { nearestLeaf } from '../layout/leaf-search.js';
import { findLeaf } from '../layout/leaf-solve.js';
import { askMount } from '../layout/mount-ask.js';
import { type MountSolution, roomsOf, settleMount } from '../layout/mount-solve.js';
import type { Spec } from '../spec/spec.js';
import { rad } from '../units.js';

export interface Baseline extends MountSolution {
  /** It meets every demand; else it misses them by the least. */
  readonly holds: boolean;
}

/**
 * @returns undefined where nothing like what the preset asks for can be drawn
 * @throws {PresetError} when barrel, nuts or neighbouring mounts have no room, whatever the leaf
 */
export function baselineOf(spec: Spec): Baseline | undefined {
  const { width, tiltDeg } = askMount(spec, gridOf(spec).grid);
  const at = { width, tilt: rad(tiltDeg) };
  const rooms = roomsOf(spec);
  for (const lengthMost of rooms) {
    const found = settleMount(spec, { ...at, lengthMost, choose: findLeaf });
    if (found) return { ...found, holds: true };
  }
  const near = settleMount(spec, { ...at, lengthMost: rooms.at(-1)!, choose: nearestLeaf });
  return near && { ...near, holds: false };
}

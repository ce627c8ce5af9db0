/** What is said of a bay that can't be: by how much, and what would do. */
import type { Mistake } from '../../errors.js';
import type { BayPlace, BaySpec } from '../../spec/bay.js';
import type { Spec } from '../../spec/spec.js';
import { upTenth } from '../fits.js';
import { topNeeded } from './fixing.js';
import { footprints } from './footprint.js';
import type { Row, TrayRoom } from './units.js';

/** Modules higher than the rails. */
export function tooHigh(
  bay: BaySpec,
  { spec, floor, height }: { spec: Spec; floor: number; height: number },
): Mistake[] {
  return bay.modules
    .filter((module) => topNeeded(module, { spec, floor }) > height + 1e-9)
    .map((module) => ({
      code: 'preset/bay-too-small',
      path: module.path,
      message: `${module.id} needs a bay ${topNeeded(module, { spec, floor })} mm high, ${upTenth(topNeeded(module, { spec, floor }) - height)} mm more than the rails it would hang on`,
      hint: 'place: apart, whose case is as high as it has to be',
    }));
}

interface TooLong {
  /** Needed, and there from corner to corner [mm]; what the rail lacks between its posts. */
  readonly is: number;
  readonly has: number;
  readonly short: number;
  readonly wall: number;
  readonly place: BayPlace;
}

/** Even the shortest row of trays finds no place on its rail. */
export function tooLong({ trays, depth }: Row, { is, has, short, wall, place }: TooLong): Mistake[] {
  return [
    {
      code: 'preset/bay-too-small',
      path: 'bay.modules',
      message:
        is > has
          ? `the modules need at least ${is} × ${upTenth(depth + 2 * wall)} mm along the ${place} rail, ${upTenth(is - has)} mm more than its ${has} mm from corner to corner`
          : `the modules need ${trays.length} trays, and those at both ends are screwed to the ${place} rail between its corner posts, which is ${short} mm too short for it`,
      hint: 'place: apart, fewer modules, or a longer rail',
    },
  ];
}

/** Modules that even the largest tray that the bed takes doesn't hold. */
export function noTray({ modules }: BaySpec, { most }: TrayRoom): Mistake[] {
  const over = modules.flatMap((module): Mistake[] => {
    const misses = footprints(module).map(({ size, margins }) => {
      const need = [size[0] + margins.left + margins.right, size[1] + margins.inner + margins.outer];
      return { need, by: Math.max(need[0]! - most[0], need[1]! - most[1]) };
    });
    const best = misses.reduce((a, b) => (b.by < a.by ? b : a));
    if (best.by <= 1e-9) return [];
    return [
      {
        code: 'preset/bay-too-small',
        path: module.path,
        message: `${module.id} with the room around it needs ${upTenth(best.need[0]!)} × ${upTenth(best.need[1]!)} mm, ${upTenth(best.by)} mm more than the largest tray that the bed takes, ${upTenth(most[0])} × ${upTenth(most[1])} inside`,
        hint: 'a larger bed',
      },
    ];
  });
  if (over.length > 0) return over;
  return [
    {
      code: 'preset/bay-too-small',
      path: 'bay.modules',
      message:
        'modules whose places are given don’t go into one tray: they reach out of it, or over each other or its screws',
      hint: 'leave at and turn out, and they are placed',
    },
  ];
}

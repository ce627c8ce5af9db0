import { KEY } from './sources.js';
import type { HexKey } from './types.js';

const key = (flats: number, arms: { corners: number; longArm: number; shortArm: number }): HexKey => ({
  flats: { value: flats, source: KEY },
  corners: { value: arms.corners, source: KEY },
  longArm: { value: arms.longArm, source: KEY },
  shortArm: { value: arms.shortArm, source: KEY },
});

/** Hexagon keys by width across flats [mm]. */
export const keys = {
  '0.9': key(0.9, { corners: 0.99, longArm: 33, shortArm: 11 }),
  '1.3': key(1.3, { corners: 1.45, longArm: 41, shortArm: 13 }),
  '1.5': key(1.5, { corners: 1.68, longArm: 46.5, shortArm: 15.5 }),
  '2': key(2, { corners: 2.25, longArm: 52, shortArm: 18 }),
  '2.5': key(2.5, { corners: 2.82, longArm: 58.5, shortArm: 20.5 }),
  '3': key(3, { corners: 3.39, longArm: 66, shortArm: 23 }),
} as const satisfies Record<string, HexKey>;

/**
 * @param flats - across flats of a socket [mm]
 * @throws {RangeError} when no such key is known
 */
export function hexKeyFor(flats: number): HexKey {
  const found = Object.values(keys).find((one) => Math.abs(one.flats.value - flats) < 1e-9);
  if (!found) throw new RangeError(`no hexagon key of ${flats} mm is known`);
  return found;
}

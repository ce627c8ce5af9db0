/**
 * A lean given to every barrel's seat on purpose. A mount's yaw can only be undone by an error of the barrel at least as large; where
 * barrels are truer than mounts, a sleeve bored askew gives them one.
 */
import { requirePositive } from '../positive.js';
import type { AimReach } from './aim.js';
import { exceeds } from './boresight.js';
import { chanceFor, type Mounting } from './chance.js';

/** Leans tried [in the unit of the angles given], from none up. */
export interface WedgeAsk {
  readonly sigma: number;
  readonly mounting: Mounting;
  readonly reach: AimReach;
  readonly step: number;
  readonly most: number;
}

export interface WedgeAnswer {
  readonly wedge: number;
  readonly chance: number;
  /** Without any. */
  readonly without: number;
}

/** Points at which the law's tail is worked out; straight between them it is right to 4e-5: (14/400)² / 8 of its curvature, 0.25 / σ². */
const POINTS = 400;

/**
 * The tilt either way that aligns this share of the channels whose yaw a leaning barrel can be rolled to undo: as `tiltFor`, with Rice's
 * law in place of Rayleigh's.
 *
 * @param share - 0 to 1 @param sm - standard deviation of a mount's yaw and of its tilt, > 0
 */
export function tiltForLeaned(
  share: number,
  { sigma, wedge, sm }: { readonly sigma: number; readonly wedge: number; readonly sm: number },
): number {
  requirePositive('tiltForLeaned', { share, sigma, sm });
  if (!(share < 1)) throw new RangeError(`tiltForLeaned: the share must be < 1, got ${share}`);
  const chance = chanceLeaned({ sigma, wedge });
  const chanceAt = (tilt: number) => chance({ yaw: sm, tilt: sm, points: 6 }, { tilt: [-tilt, tilt], tolerance: 0 });
  let [low, high] = [0, wedge + 8 * Math.hypot(sigma, sm)];
  const enough = share * chanceAt(high);
  for (let i = 0; i < 30; i += 1) {
    const middle = (low + high) / 2;
    if (chanceAt(middle) < enough) low = middle;
    else high = middle;
  }
  return high;
}

/** @returns the smallest lean whose chance is within 0.5 % of the best, and that chance @throws {RangeError} on figures out of range */
export function bestWedge({ sigma, mounting, reach, step, most }: WedgeAsk): WedgeAnswer {
  requirePositive('bestWedge', { sigma, step, most });
  const tried = Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => {
    const wedge = i * step;
    return { wedge, chance: leanedChance({ sigma, wedge }, mounting, reach) };
  });
  const best = Math.max(...tried.map(({ chance }) => chance));
  const taken = tried.find(({ chance }) => chance >= best - 0.005)!;
  return { ...taken, without: tried[0]!.chance };
}

/** Rayleigh errors of σ in a seat that leans by `wedge` ≥ 0. */
export interface Leaned {
  readonly sigma: number;
  readonly wedge: number;
}

/** So many σ about the lean, between which nearly all of the law's tail falls. */
const FALLS = [-4, -1.5, 0, 1.5, 4] as const;

/** Works the law's tail out once for all that is asked of it. */
function chanceLeaned({ sigma, wedge }: Leaned): (mounting: Mounting, reach: AimReach) => number {
  const tail = leanedTail(sigma, wedge);
  const falls = wedge === 0 ? [] : FALLS.map((times) => wedge + times * sigma).filter((error) => error > 0);
  return (mounting, reach) => chanceFor(tail, { ...mounting, falls }, reach);
}

/** `channelChance` for barrels that lean: P1 by Rice's law. Without a lean it is Rayleigh's. */
export const leanedChance = (law: Leaned, mounting: Mounting, reach: AimReach): number =>
  chanceLeaned(law)(mounting, reach);

/**
 * The tail of Rice's law as a table: Marcum's Q is an integral of its own. Between wedge − 7 σ and wedge + 7 σ; all exceed less, none more.
 *
 * @param sigma - of the Rayleigh errors, > 0 @param wedge - lean, ≥ 0 @returns share of errors above one
 */
export function leanedTail(sigma: number, wedge: number): (error: number) => number {
  if (wedge === 0) return (error) => exceeds({ kind: 'rayleigh', sigma }, error);
  const near = Math.max(0, wedge - 7 * sigma);
  const width = wedge + 7 * sigma - near;
  const table = Float64Array.from({ length: POINTS + 1 }, (_, i) =>
    exceeds({ kind: 'rice', sigma, wedge }, near + (width * i) / POINTS),
  );
  return (error) => {
    if (!(error > near)) return 1;
    if (error >= near + width) return 0;
    const at = ((error - near) / width) * POINTS;
    const i = Math.floor(at);
    return table[i]! + (table[i + 1]! - table[i]!) * (at - i);
  };
}

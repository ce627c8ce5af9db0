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

/** Points at which the law's tail is worked out; straight between them it is right to 1e-5. */
const POINTS = 1200;

/** @returns the smallest lean whose chance is within 0.5 % of the best, and that chance @throws {RangeError} on figures out of range */
export function bestWedge({ sigma, mounting, reach, step, most }: WedgeAsk): WedgeAnswer {
  requirePositive('bestWedge', { sigma, step, most });
  const tried = Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => {
    const wedge = i * step;
    return { wedge, chance: chanceFor(tabulated(sigma, wedge), mounting, reach) };
  });
  const best = Math.max(...tried.map(({ chance }) => chance));
  const taken = tried.find(({ chance }) => chance >= best - 0.005)!;
  return { ...taken, without: tried[0]!.chance };
}

/** The tail of Rice's law as a table: Marcum's Q is an integral of its own. */
function tabulated(sigma: number, wedge: number): (error: number) => number {
  const far = wedge + 7 * sigma;
  const table = Float64Array.from({ length: POINTS + 1 }, (_, i) =>
    exceeds(wedge === 0 ? { kind: 'rayleigh', sigma } : { kind: 'rice', sigma, wedge }, (far * i) / POINTS),
  );
  return (error) => {
    if (!(error > 0)) return 1;
    if (error >= far) return 0;
    const at = (error / far) * POINTS;
    const i = Math.floor(at);
    return table[i]! + (table[i + 1]! - table[i]!) * (at - i);
  };
}

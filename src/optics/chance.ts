/**
 * Chance that a channel, and a whole grid, can be aligned. Angles in one unit of the caller's choice (degrees or radians), all small.
 * The mount's errors are normal and independent in yaw and tilt.
 */
import { requireNotNegative, requirePositive } from '../positive.js';
import { type AimReach, alignable } from './aim.js';
import { type BoresightLaw, exceeds } from './boresight.js';
import { normalAbove, normalDensity } from './normal.js';
import { gaussLegendre, integrate } from './quadrature.js';

export interface Mounting {
  /** Standard deviation of a mount's yaw and of its tilt, > 0. */
  readonly yaw: number;
  readonly tilt: number;
  /** Yaw that all mounts of a rail share, this time. Default 0. */
  readonly shared?: number;
  /** Errors between which the law's tail falls steeply: the integral is cut there too. */
  readonly falls?: readonly number[];
  /** Points of the rule on each panel: 16 for eight digits, the default; 6 for four. */
  readonly points?: 16 | 6;
}

/** Sixteen points a panel, panels no wider than two and a half standard deviations: eight digits. */
const PANELS = { 16: gaussLegendre(16), 6: gaussLegendre(6) } as const;
const WIDE = 2.5;
/** Beyond this many standard deviations nothing is added. */
const FAR = 6.5;

/**
 * Chance that one channel can be aligned: P1 = E[S(ε_from) − S(ε_to)] over the mount's errors, S the boresight law's tail and
 * from, to the band that `alignable` gives.
 *
 * The integral is cut where that band has its kinks (the slide's and the tilt's ends, and the same with the tolerance), without which
 * only about four digits hold.
 *
 * @returns 0 to 1 @throws {RangeError} on figures out of range
 * Source: derived for this project; closed forms below and drawn samples agree.
 */
export const channelChance = (law: BoresightLaw, mounting: Mounting, reach: AimReach): number =>
  chanceFor((error) => exceeds(law, error), mounting, reach);

/** As `channelChance`, with the boresight law's tail as a function. */
export function chanceFor(tail: (error: number) => number, mounting: Mounting, reach: AimReach): number {
  const { yaw, tilt, shared = 0, falls = [], points = 16 } = mounting;
  const rule = PANELS[points];
  requirePositive('channelChance', { yaw, tilt });
  const { tolerance, slide = 0 } = reach;
  const [t0, t1] = reach.tilt;
  // What is even on an axis is worked out on its upper half.
  const evenX = shared === 0;
  const evenY = t0 === -t1;
  const xs = panels({
    mean: shared,
    sigma: yaw,
    kinks: [
      ...both(slide, tolerance),
      ...falls.flatMap((error) => [-1, 1].map((way) => way * (slide + tolerance + error))),
    ],
    half: evenX,
  });
  const ys = panels({
    mean: 0,
    sigma: tilt,
    kinks: [t0, t1].flatMap((end) =>
      [0, tolerance, ...falls.map((error) => error + tolerance), ...falls.map((error) => error - tolerance)].flatMap(
        (off) => [-end - off, -end + off],
      ),
    ),
    half: evenY,
  });
  const column = (x: number) => {
    const inner = (y: number) => {
      const { from, to } = alignable([x, y], reach);
      return ((tail(from) - tail(to)) * normalDensity(y / tilt)) / tilt;
    };
    return ys.reduce((sum, range) => sum + integrate(inner, range, rule), 0) * (evenY ? 2 : 1);
  };
  const weighed = (x: number) => (column(x) * normalDensity((x - shared) / yaw)) / yaw;
  const sum = xs.reduce((total, range) => total + integrate(weighed, range, rule), 0) * (evenX ? 2 : 1);
  return Math.min(1, sum);
}

const both = (slide: number, tolerance: number) => [
  0,
  slide,
  -slide,
  slide + tolerance,
  -slide - tolerance,
  slide - tolerance,
  tolerance - slide,
];

interface Axis {
  readonly mean: number;
  readonly sigma: number;
  readonly kinks: readonly number[];
  /** From the mean up only. */
  readonly half: boolean;
}

/** As far about the mean as anything is added, cut at the kinks, then into pieces that the rule is good for. */
function panels({ mean, sigma, kinks, half }: Axis): (readonly [number, number])[] {
  const [low, high] = [half ? mean : mean - FAR * sigma, mean + FAR * sigma];
  const cuts = [...new Set([low, mean, ...kinks.filter((at) => at > low && at < high), high])].sort((a, b) => a - b);
  return cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i]!;
    const n = Math.max(1, Math.ceil((to - from) / (WIDE * sigma)));
    return Array.from(
      { length: n },
      (_, k) => [from + ((to - from) * k) / n, from + ((to - from) * (k + 1)) / n] as const,
    );
  });
}

/**
 * Chance that yaw can be rolled out, whatever the tilt: P(|mx| ≤ ε + α).
 * Rayleigh: 1 − 2Q(α/σm) + 2 (σe/s) exp(−α²/2s²) Q(α σe/(σm s)), s = √(σe² + σm²); half-normal, α = 0: (2/π) atan(σe/σm).
 *
 * Source: derived for this project.
 */
export function yawChance(
  law: { readonly kind: 'rayleigh'; readonly sigma: number },
  sm: number,
  tolerance: number,
): number {
  requirePositive('yawChance', { sm, sigma: law.sigma });
  requireNotNegative('yawChance', { tolerance });
  const se = law.sigma;
  const s = Math.hypot(se, sm);
  return (
    1 -
    2 * normalAbove(tolerance / sm) +
    2 * (se / s) * Math.exp(-(tolerance ** 2) / (2 * s * s)) * normalAbove((tolerance * se) / (sm * s))
  );
}

/**
 * Chance that a tilt of ±T is enough once the yaw is rolled out exactly (Rayleigh, α = 0): h is then Rayleigh again and
 * F(T) = 1 − 2Q(T/σm) + 2 (σe/s) exp(−T²/2s²) [Q(T σe/(σm s)) − Q(T σm/(σe s))]; one channel: P1 = (σe/s) F(T).
 *
 * Source: derived for this project.
 */
export function tiltChance({
  se,
  sm,
  tilt,
}: {
  readonly se: number;
  readonly sm: number;
  readonly tilt: number;
}): number {
  requirePositive('tiltChance', { se, sm, tilt });
  const s = Math.hypot(se, sm);
  return (
    1 -
    2 * normalAbove(tilt / sm) +
    2 *
      (se / s) *
      Math.exp(-(tilt ** 2) / (2 * s * s)) *
      (normalAbove((tilt * se) / (sm * s)) - normalAbove((tilt * sm) / (se * s)))
  );
}

/** @returns the tilt that is enough for this share of the channels whose yaw can be rolled out */
export function tiltFor(share: number, { se, sm }: { readonly se: number; readonly sm: number }): number {
  requirePositive('tiltFor', { share });
  if (!(share < 1)) throw new RangeError(`tiltFor: the share must be < 1, got ${share}`);
  let [low, high] = [0, 12 * Math.hypot(se, sm)];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (tiltChance({ se, sm, tilt: middle }) < share) low = middle;
    else high = middle;
  }
  return high;
}

/** A set of alike channels on one rail. */
export interface Bank {
  readonly count: number;
  readonly law: BoresightLaw;
  readonly mounting: Mounting;
  readonly reach: AimReach;
  /** Standard deviation of a yaw that the whole rail shares. Default 0. */
  readonly railYaw?: number;
}

/**
 * Chance that every channel of a rail can be aligned with the barrels at hand: ∫ P1(c)^N f(c) dc over the yaw c that all share, which is
 * not E[P1]^N; without a shared yaw P1^N.
 */
export function bankChance({ count, law, mounting, reach, railYaw = 0 }: Bank): number {
  requireNotNegative('bankChance', { count, railYaw });
  if (count === 0) return 1;
  if (railYaw === 0) return channelChance(law, mounting, reach) ** count;
  // The law is even in c.
  const at = (c: number) => channelChance(law, { ...mounting, shared: c }, reach) ** count;
  let sum = 0;
  for (let i = 0; i < 3; i += 1)
    sum += integrate((z) => at(z * railYaw) * normalDensity(z), [(i * 5) / 3, ((i + 1) * 5) / 3], SHORT);
  return Math.min(1, 2 * sum);
}

const SHORT = gaussLegendre(6);

/**
 * @param needed - lines @param bought - emitters @param chance - that one will do, 0 to 1
 * @returns chance that enough of them will: binomial tail, summed in logarithms
 */
export function enough(needed: number, bought: number, chance: number): number {
  if (![needed, bought].every((n) => Number.isInteger(n) && n >= 0))
    throw new RangeError(`enough: whole numbers ≥ 0 are needed, got ${needed} of ${bought}`);
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`enough: the chance must be 0 to 1, got ${chance}`);
  if (bought < needed) return 0;
  if (chance === 1) return 1;
  if (chance === 0) return needed === 0 ? 1 : 0;
  let log = bought * Math.log(chance);
  let sum = 0;
  // From all good ones down: C(B, k) p^k q^(B−k).
  for (let k = bought; k >= needed; k -= 1) {
    sum += Math.exp(log);
    log += Math.log((k * (1 - chance)) / ((bought - k + 1) * chance));
  }
  return Math.min(1, sum);
}

/** @returns how many emitters to buy so that with this confidence enough of them will do, or null when a thousand would not be enough */
export function toBuy(
  needed: number,
  { chance, confidence }: { readonly chance: number; readonly confidence: number },
): number | null {
  requirePositive('toBuy', { confidence });
  if (!(confidence < 1)) throw new RangeError(`toBuy: the confidence must be < 1, got ${confidence}`);
  for (let bought = needed; bought <= needed + 1000; bought += 1)
    if (enough(needed, bought, chance) >= confidence) return bought;
  return null;
}

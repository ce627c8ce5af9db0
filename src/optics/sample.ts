/**
 * Draws channels and turns them with true rotations, not small angles: a second opinion on the closed forms and the integral.
 * Lengths mm, angles rad. y runs along the beam, x across it in the plane of the beams, z up.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { requireNotNegative, requirePositive } from '../positive.js';
import { alignable } from './aim.js';

/** One mount with its barrel, before it is aligned. */
export interface Channel {
  /** Boresight error of the barrel, ε. */
  readonly error: number;
  /** How the mount stands: yaw about z, then tilt about x. */
  readonly yaw: number;
  readonly tilt: number;
}

export interface Bench {
  /** From the beam's exit to the receiver with everything straight. */
  readonly distance: number;
  /** The beam's exit seen from the axis of tilt: ahead of it, and above it. */
  readonly exit: readonly [number, number];
  /** Least and greatest tilt of the screw. */
  readonly range: readonly [number, number];
  /** Radius about the receiver's middle within which the beam has arrived, and the receiver's slide either way. */
  readonly tolerance: number;
  readonly slide: number;
}

/** Rolls looked at all round, and steps of the search about a dip: 0.26 rad · 0.618²⁰ = 2e-5 rad. */
const ROUND = 24;
const STEPS = 20;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where the beam lands about the receiver's middle, from a roll and a tilt: x and z [mm]. */
export type Landing = (roll: number, tilt: number) => readonly [number, number];

/** The barrel is rolled in its seat, the arm tilted about x, the whole mount yawed about z. */
export function landingOf({ error, yaw, tilt: stands }: Channel, { distance, exit: [e, h] }: Bench): Landing {
  const [sinError, ahead] = [Math.sin(error), Math.cos(error)];
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  return (roll, tilt) => {
    const [cb, sb] = [Math.cos(stands + tilt), Math.sin(stands + tilt)];
    const [across, up] = [sinError * Math.cos(roll), sinError * Math.sin(roll)];
    const [vy, vz] = [cb * ahead - sb * up, sb * ahead + cb * up];
    const [oy, oz] = [cb * e - sb * h, sb * e + cb * h];
    const way = (distance + e - c * oy) / (s * across + c * vy);
    return [(c * across - s * vy) * way - s * oy, oz - h + vz * way];
  };
}

/**
 * Least distance from the beam to where the receiver can be slid, over all rolls and the screw's range [mm].
 *
 * For a roll, the tilt that brings the beam to the receiver's height, as far as the screw goes; of the rolls, those that bring it
 * to the slide's middle, its ends and a tolerance beyond, either way round, then a search about the best of them. What is found
 * within the tolerance ends the search.
 */
export function leastMiss(channel: Channel, bench: Bench): number {
  const { distance, exit, slide, range, tolerance } = bench;
  const lands = landingOf(channel, bench);
  const lever = distance + exit[0];
  const settle = (roll: number): readonly [number, number] => {
    let tilt = clamp(-channel.tilt - channel.error * Math.sin(roll), range);
    let at = lands(roll, tilt);
    for (let i = 0; i < 3 && Math.abs(at[1]) > 1e-6; i += 1) {
      const next = clamp(tilt - at[1] / lever, range);
      if (next === tilt) break;
      tilt = next;
      at = lands(roll, tilt);
    }
    return at;
  };
  const missOf = ([x, z]: readonly [number, number]) => Math.hypot(Math.max(0, Math.abs(x) - slide), z);
  const circle = channel.error * lever;
  const middle = -channel.yaw * lever;
  let least = Infinity;
  for (const target of [0, slide, -slide, slide + tolerance, -slide - tolerance])
    for (const way of [1, -1]) {
      let roll = way * Math.acos(clamp((target - middle) / (circle || 1), [-1, 1]));
      let at = settle(roll);
      // Two steps of Newton: x falls by ε L sin φ a radian.
      for (let i = 0; i < 2; i += 1) {
        const slope = circle * Math.sin(roll);
        if (Math.abs(slope) < 1e-3 * circle || missOf(at) <= tolerance) break;
        roll += clamp((at[0] - target) / slope, [-0.2, 0.2]);
        at = settle(roll);
      }
      const miss = missOf(at);
      if (miss <= tolerance) return miss;
      least = Math.min(least, miss);
    }
  // Where neither yaw nor height can be met the best lies between: every dip of a look all round is searched.
  const missAt = (roll: number) => missOf(settle(roll));
  const step = (2 * Math.PI) / ROUND;
  const ring = Array.from({ length: ROUND }, (_, i) => missAt(i * step));
  ring.forEach((miss, i) => {
    if (miss <= ring.at(i - 1)! && miss <= ring[(i + 1) % ROUND]!)
      least = Math.min(least, search(missAt, i * step, step));
  });
  return least;
}

/** A channel this far outside the small-angle band is out of reach by true rotations too; they differ by a hundredth at most. */
const SURELY = 0.05;
const SURELY_BY = 1e-3;

/** @returns whether the beam can be brought within the tolerance */
export function canAlign(channel: Channel, bench: Bench): boolean {
  const lever = bench.distance + bench.exit[0];
  const band = alignable([channel.yaw, channel.tilt], {
    tilt: bench.range,
    tolerance: bench.tolerance / lever,
    slide: bench.slide / lever,
  });
  const error = (channel.error * bench.distance) / lever;
  if (error < (1 - SURELY) * band.from - SURELY_BY || error > (1 + SURELY) * band.to + SURELY_BY) return false;
  return leastMiss(channel, bench) <= bench.tolerance;
}

/** Golden section about a place, `about` either way. */
function search(f: (x: number) => number, middle: number, about: number): number {
  let [a, b] = [middle - about, middle + about];
  let [x, y] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  for (let i = 0; i < STEPS; i += 1) {
    if (fx < fy) {
      [b, y, fy] = [y, x, fx];
      x = b - GOLDEN * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + GOLDEN * (b - a);
      fy = f(y);
    }
  }
  return Math.min(fx, fy);
}

const clamp = (x: number, [low, high]: readonly [number, number]) => Math.max(low, Math.min(high, x));

/** A stream of draws that is the same for the same seed. */
export interface Draws {
  /** Standard normal. */
  readonly normal: () => number;
}

/** @param seed - whole number Source: xoroshiro128+ of the library; normal draws by Marsaglia's polar method. */
export function drawsOf(seed: number): Draws {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  let spare: number | null = null;
  return {
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      for (;;) {
        const [u, v] = [2 * uniform() - 1, 2 * uniform() - 1];
        const r = u * u + v * v;
        if (r >= 1 || r === 0) continue;
        const scale = Math.sqrt((-2 * Math.log(r)) / r);
        spare = v * scale;
        return u * scale;
      }
    },
  };
}

/** How barrels and mounts scatter [rad]. */
export interface Scatter {
  /** Rayleigh parameter of the boresight error, and a lean given to every barrel's seat. */
  readonly boresight: number;
  readonly wedge: number;
  readonly yaw: number;
  readonly tilt: number;
}

/** @returns a channel drawn; `shared` is the yaw of its rail this time */
export function drawChannel(draws: Draws, { boresight, wedge, yaw, tilt }: Scatter, shared = 0): Channel {
  const [x, y] = [wedge + boresight * draws.normal(), boresight * draws.normal()];
  return { error: Math.hypot(x, y), yaw: shared + yaw * draws.normal(), tilt: tilt * draws.normal() };
}

export interface Share {
  readonly share: number;
  /** Standard error of the share: √(p (1 − p)/n). */
  readonly error: number;
}

/**
 * Share of drawn channels that can be aligned.
 *
 * @param count - channels to draw, whole, > 0
 */
export function sampleChannels(
  { draws, scatter, bench }: { readonly draws: Draws; readonly scatter: Scatter; readonly bench: Bench },
  count: number,
): Share {
  requirePositive('sampleChannels', { count, distance: bench.distance });
  requireNotNegative('sampleChannels', { tolerance: bench.tolerance, slide: bench.slide });
  let good = 0;
  for (let i = 0; i < count; i += 1) if (canAlign(drawChannel(draws, scatter), bench)) good += 1;
  return shareOf(good, count);
}

/** @returns a share with its standard error; never 0 or 1 exactly in the error, by Laplace's rule */
export function shareOf(good: number, count: number): Share {
  const p = (good + 1) / (count + 2);
  return { share: good / count, error: Math.sqrt((p * (1 - p)) / count) };
}

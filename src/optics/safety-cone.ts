/**
 * Where a beam can land on the far wall while it is not yet aimed, and once it is. Exact trigonometry, no small angles.
 *
 * Wall coordinates: u across (left to right), v up [mm], in the plane at right angles to the line's own direction; 0, 0 is where
 * a perfect beam would land.
 */
import { requireNotNegative, requirePositive } from '../positive.js';
import type { Rad } from '../units.js';

/** All directions that a beam can have: its body yawed, then tilted about the yawed axis, then off its body by the boresight error. */
export interface AimError {
  /** Yaw of the body either way [rad]. */
  readonly yaw: Rad;
  /** Tilt of the body, lowest and highest: what the screw reaches, with the mount's own error on top [rad]. */
  readonly tilt: readonly [Rad, Rad];
  /** Largest angle between beam and body, in any direction: half angle of the cone [rad]. */
  readonly boresight: Rad;
}

export interface Throw {
  /** From where the beam leaves to the wall, along the line [mm]. */
  readonly distance: number;
  /** Beam's radius at the wall [mm]. */
  readonly radius: number;
  /** How far the point where it leaves can lie off, either way, across and up [mm]. Default 0. */
  readonly play?: readonly [number, number];
}

/** A rectangle in the wall's plane [mm]. */
export interface Patch {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/**
 * The smallest upright rectangle that holds every spot.
 *
 * A cap of half angle ε about a body's direction reaches the slope tan(κ) where κ = α + asin(sin ε / ρ): α is the body's own angle
 * in the plane looked at, ρ the length of its direction's projection on that plane. Across, α is the yaw ψ and ρ = cos τ; up,
 * tan α = tan τ / cos ψ and ρ = √(1 − sin²ψ cos²τ).
 *
 * @param error - yaw and boresight ≥ 0, tilt in order @param to - distance > 0, radius and play ≥ 0
 * @returns the rectangle, or null where some beam runs along the wall's plane or away from it
 * @throws {RangeError} on figures out of order
 * Source: geometry of a cap and a plane, worked out here; tests hold it to beams drawn at random.
 */
export function landing(error: AimError, { distance, radius, play = [0, 0] }: Throw): Patch | null {
  const { yaw, tilt, boresight } = error;
  requirePositive('landing', { distance });
  requireNotNegative('landing', { radius, yaw, boresight, playAcross: play[0], playUp: play[1] });
  if (!(tilt[0] <= tilt[1])) throw new RangeError(`landing: tilt must run from low to high, got ${tilt.join(' to ')}`);

  const steepest = Math.max(Math.abs(tilt[0]), Math.abs(tilt[1]));
  const across = edge(yaw, Math.cos(steepest), boresight);
  // With and without yaw: it lengthens the way, which raises a beam that points up and lowers one that points down.
  const up = Math.max(...[0, yaw].map((psi) => upward(tilt[1], psi, boresight)));
  const down = Math.max(...[0, yaw].map((psi) => upward(-tilt[0], psi, boresight)));
  if (![across, up, down].every((angle) => angle < Math.PI / 2)) return null;

  const u = distance * Math.tan(across) + radius + play[0];
  return {
    left: -u,
    right: u,
    bottom: -(distance * Math.tan(down) + radius + play[1]),
    top: distance * Math.tan(up) + radius + play[1],
  };
}

/** Steepest angle in a plane that a cap about a body reaches; NaN past a quarter turn. */
const edge = (angle: number, projected: number, boresight: number): number =>
  Math.sin(boresight) < projected && boresight < Math.PI / 2 ? angle + Math.asin(Math.sin(boresight) / projected) : NaN;

function upward(tilt: number, yaw: number, boresight: number): number {
  const projected = Math.sqrt(1 - (Math.sin(yaw) * Math.cos(tilt)) ** 2);
  return edge(Math.atan2(Math.sin(tilt), Math.cos(tilt) * Math.cos(yaw)), projected, boresight);
}

/** Walls that meet are not open where only sums of decimals, or a kernel's rounding, part them [mm]. */
const HAIR = 1e-4;

/**
 * What a patch leaves uncovered: the parts of it outside every opaque rectangle.
 *
 * @param patch - where beams can land @param opaque - rectangles of wall, hood and cover, in the same plane; they may overlap
 * @returns pieces that don't overlap, bottom to top and left to right; none when every beam ends in something opaque
 */
export function uncovered(patch: Patch, opaque: readonly Patch[]): readonly Patch[] {
  const us = cuts(patch.left, patch.right, opaque, (r) => [r.left, r.right]);
  const vs = cuts(patch.bottom, patch.top, opaque, (r) => [r.bottom, r.top]);
  const pieces: Patch[] = [];
  for (const [bottom, top] of pairs(vs))
    for (const [left, right] of pairs(us)) {
      if (right - left < HAIR || top - bottom < HAIR) continue;
      const covered = opaque.some((r) => r.left <= left && right <= r.right && r.bottom <= bottom && top <= r.top);
      if (!covered) pieces.push({ left, right, bottom, top });
    }
  return pieces;
}

/** @returns from, every edge strictly between, and to: rising */
function cuts(from: number, to: number, opaque: readonly Patch[], of: (r: Patch) => readonly number[]): number[] {
  const inside = opaque.flatMap(of).filter((v) => from < v && v < to);
  return [...new Set([from, ...inside, to])].sort((a, b) => a - b);
}

const pairs = (values: readonly number[]): (readonly [number, number])[] =>
  values.slice(1).map((v, i) => [values[i]!, v]);

export interface StopCondition {
  /** Before a line is aimed: everything that screw, body and boresight allow; with the hood on. */
  readonly before: { readonly error: AimError; readonly opaque: readonly Patch[] };
  /** Once it is aimed: what is left; the hood is off. */
  readonly after: { readonly error: AimError; readonly opaque: readonly Patch[] };
}

export interface StopAnswer {
  /** Where the beam can land; null where it can miss the wall's plane altogether. */
  readonly patch: Patch | null;
  /** What of that is not opaque; `null` patch: unknown, so not stopped. */
  readonly uncovered: readonly Patch[];
  readonly stopped: boolean;
}

/** @returns whether a beam ends in something opaque, before and after it is aimed @throws {RangeError} as `landing` */
export function stopCondition(
  { before, after }: StopCondition,
  to: Throw,
): { readonly before: StopAnswer; readonly after: StopAnswer } {
  const answer = ({ error, opaque }: StopCondition['before']): StopAnswer => {
    const patch = landing(error, to);
    const open = patch === null ? [] : uncovered(patch, opaque);
    return { patch, uncovered: open, stopped: patch !== null && open.length === 0 };
  };
  return { before: answer(before), after: answer(after) };
}

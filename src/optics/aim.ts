/**
 * Can a beam be brought onto its receiver, and how? Angles at the receiver in one unit of the caller's choice (small angles),
 * x across the beam in its plane (yaw), y out of it (tilt).
 *
 * Where the beam lands: m + ε e^{iφ} + i t + s, m the mount's own error, ε the barrel's boresight error turned by the roll φ, t the
 * tilt that the screw gives, s the receiver's slide. Roll and screw are the maker's; together they must reach a spot of radius α.
 */
import { requireNotNegative, requirePositive } from '../positive.js';

export interface AimReach {
  /** Least and greatest tilt, T0 ≤ T1. */
  readonly tilt: readonly [number, number];
  /** Radius about the receiver's middle within which the beam counts as arrived, α ≥ 0. */
  readonly tolerance: number;
  /** How far the receiver slides either way across the beam, S ≥ 0. Default 0. */
  readonly slide?: number;
}

/** Boresight errors that can be aligned: from, to. Below `from` the error is too small to undo the mount's yaw by rolling. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/**
 * The barrel's error must reach some point of a rounded rectangle: what slide and tilt can make good, grown by the tolerance, about −m.
 * That figure is connected, so it has points at every distance between its nearest and its farthest: a circle of radius ε about 0
 * meets it exactly when ε is between them.
 *
 * @param mount - the mount's error, yaw and tilt
 * @throws {RangeError} on figures out of range
 * Source: derived for this project; for S = 0 it reads hypot(|mx|, max(0, |my| − T)) − α ≤ ε ≤ hypot(|mx|, |my| + T) + α. Tests
 * compare with a search over roll, tilt and slide.
 */
export function alignable([mx, my]: readonly [number, number], reach: AimReach): Band {
  const { tolerance, slide = 0 } = reach;
  const [t0, t1] = reach.tilt;
  requireNotNegative('alignable', { tolerance, slide });
  if (!(t0 <= t1)) throw new RangeError(`alignable: the tilt must run upward, got ${t0} to ${t1}`);
  const near = (low: number, high: number) => (low > 0 ? low : high < 0 ? -high : 0);
  const far = (low: number, high: number) => Math.max(Math.abs(low), Math.abs(high));
  const x = [mx - slide, mx + slide] as const;
  const y = [my + t0, my + t1] as const;
  return {
    from: Math.max(0, Math.hypot(near(...x), near(...y)) - tolerance),
    to: Math.hypot(far(...x), far(...y)) + tolerance,
  };
}

export interface Setting {
  /** Roll of the barrel from where its error points along +x [rad]. */
  readonly roll: number;
  /** Tilt to give, in the caller's unit. */
  readonly tilt: number;
}

/**
 * The two ways to cancel yaw by rolling, cos φ = −mx/ε, and the tilt each leaves to be given: t = −(my ± h), h = √(ε² − mx²).
 * The smaller tilt first.
 *
 * @returns none where |mx| > ε: then `missBy` is left over
 */
export function settings(error: number, [mx, my]: readonly [number, number]): readonly Setting[] {
  requirePositive('settings', { error });
  if (Math.abs(mx) > error) return [];
  const h = Math.sqrt(error ** 2 - mx ** 2);
  const roll = Math.acos(-mx / error);
  return [
    { roll, tilt: -(my + h) },
    { roll: -roll, tilt: -(my - h) },
  ].sort((a, b) => Math.abs(a.tilt) - Math.abs(b.tilt));
}

/** @returns what roll and tilt leave of the yaw at best, |mx| − ε, or 0: times the distance it is the miss */
export function missBy(error: number, [mx]: readonly [number, number]): number {
  requireNotNegative('missBy', { error });
  return Math.max(0, Math.abs(mx) - error);
}

/**
 * Boresight error with the barrel's decentre in its seat folded in: both turn with the roll.
 *
 * @param error - [rad] @param decentre - of the beam's origin off the seat's axis [mm], pointing `turn` [rad] from the error
 * @param distance - to the receiver [mm], > 0 @returns |L ε + δ e^{iψ}| / L [rad]
 */
export function effectiveError(
  error: number,
  { decentre, turn, distance }: { readonly decentre: number; readonly turn: number; readonly distance: number },
): number {
  requirePositive('effectiveError', { distance });
  return Math.hypot(distance * error + decentre * Math.cos(turn), decentre * Math.sin(turn)) / distance;
}

/** @returns the tilt that meets every error up to the worst ones: max(ε, |my|), not their sum */
export const worstTilt = (error: number, my: number): number => Math.max(error, Math.abs(my));

/**
 * @param clearance - of the bore over the barrel, on the diameter [mm] @param length - of the bore [mm]
 * @returns how far a loose barrel can lean, atan(c/l) [rad]
 */
export function borePlay(clearance: number, length: number): number {
  requireNotNegative('borePlay', { clearance });
  requirePositive('borePlay', { length });
  return Math.atan(clearance / length);
}

/** What one turn of the adjusting screw, or one degree of it, does. */
export interface ScrewStep {
  /** Beam's turn for one turn of the screw [rad]. */
  readonly angle: number;
  /** At the receiver [mm], for a turn and for a degree of the screw. */
  readonly perTurn: number;
  readonly perDegree: number;
}

/** @param pitch - of the thread [mm] @param arm - from the leaf's middle to the screw [mm] @param distance - to the receiver [mm] */
export function screwStep({
  pitch,
  arm,
  distance,
}: {
  readonly pitch: number;
  readonly arm: number;
  readonly distance: number;
}): ScrewStep {
  requirePositive('screwStep', { pitch, arm, distance });
  const perTurn = (distance * pitch) / arm;
  return { angle: Math.atan(pitch / arm), perTurn, perDegree: perTurn / 360 };
}

/**
 * Rolling a barrel draws a ring at the receiver.
 *
 * @param error - boresight [rad] @returns the ring's radius L tan ε [mm], and the way along it for a degree of roll [mm]
 */
export function rollRing(error: number, distance: number): { readonly radius: number; readonly perDegree: number } {
  requireNotNegative('rollRing', { error });
  requirePositive('rollRing', { distance });
  const radius = distance * Math.tan(error);
  return { radius, perDegree: (radius * Math.PI) / 180 };
}

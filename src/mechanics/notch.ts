/** Right-circular notch hinge: two half circles of radius R leave the least thickness t between them. */
import { requirePositive } from '../positive.js';

export interface Notch {
  /** R [mm]. */
  readonly radius: number;
  /** t, at the thinnest [mm]. */
  readonly thickness: number;
  /** b, along the hinge's axis [mm]. */
  readonly width: number;
}

/**
 * Rotational stiffness, with β = t/2R, γ = 1 + β, q = 2β + β², s = √(1 − (1 + β − γ)²):
 * 1/K = 3 / (2 E b R² q) · {[(1+β)/γ² + (3+2β+β²)/(γ q)] s + 6 (1+β)/q^1.5 · atan(√((2+β)/β) (γ−β)/s)}.
 *
 * Bending only, equal to ∫ 12 / (E b h³) ds over the notch.
 *
 * @param notch - [mm] @param modulus - E [MPa] @returns K [N·mm/rad]
 * @throws {RangeError} unless every figure is finite and > 0
 * Source: Paros & Weisbord, How to design flexure hinges, Machine Design 37 (25 November 1965), 151–156 (equation from memory).
 */
export function notchStiffness({ radius, thickness, width }: Notch, modulus: number): number {
  requirePositive('notchStiffness', { radius, thickness, width, modulus });
  const beta = thickness / (2 * radius);
  const gamma = 1 + beta;
  const q = 2 * beta + beta ** 2;
  const s = Math.sqrt(1 - (1 + beta - gamma) ** 2);
  const ends = ((1 + beta) / gamma ** 2 + (3 + 2 * beta + beta ** 2) / (gamma * q)) * s;
  const middle = ((6 * (1 + beta)) / q ** 1.5) * Math.atan((Math.sqrt((2 + beta) / beta) * (gamma - beta)) / s);
  return (2 * modulus * width * radius ** 2 * q) / (3 * (ends + middle));
}

/**
 * Simplified form for t ≪ R: K ≈ 2 E b t^2.5 / (9 π √R). At t = R/3 it is 4 % low.
 *
 * @returns K [N·mm/rad] @throws {RangeError} unless every figure is finite and > 0
 * Source: Paros & Weisbord (1965), simplified form (from memory).
 */
export function thinNotchStiffness({ radius, thickness, width }: Notch, modulus: number): number {
  requirePositive('thinNotchStiffness', { radius, thickness, width, modulus });
  return (2 * modulus * width * thickness ** 2.5) / (9 * Math.PI * Math.sqrt(radius));
}

/**
 * Surface strain at the thinnest place of a notch turned by `flex`: ε = 6 K θ / (E b t²), nominal.
 *
 * @param flex - θ [rad] @returns strain as a fraction @throws {RangeError} unless dimensions are > 0
 * Source: Euler–Bernoulli bending, σ = 6 M / (b t²).
 */
export function notchStrain(notch: Notch, flex: number): number {
  // The modulus cancels.
  return (6 * notchStiffness(notch, 1) * Math.abs(flex)) / (notch.width * notch.thickness ** 2);
}

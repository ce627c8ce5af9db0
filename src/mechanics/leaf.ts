/** A straight leaf as a hinge: constant rectangular section between two stiff arms. Small strain, t ≪ l. */
import { requirePositive } from '../positive.js';

/** All [mm]. */
export interface Leaf {
  /** Free length between the arms. */
  readonly length: number;
  /** Along the hinge's axis. */
  readonly width: number;
  /** In the bending plane. */
  readonly thickness: number;
}

/** @returns second moment of area of the leaf's section, I = w t³ / 12 [mm⁴] @throws {RangeError} unless all > 0 */
export function leafInertia({ width, thickness }: Omit<Leaf, 'length'>): number {
  requirePositive('leafInertia', { width, thickness });
  return (width * thickness ** 3) / 12;
}

/**
 * Rotational stiffness of a leaf whose moving end carries a pure moment: K = E I / l. It turns about the leaf's middle.
 *
 * The curvature M / (E I) is the same all along, so the end turns by M l / (E I). Linear strain, any angle; a wide leaf is up
 * to 1 / (1 − ν²) stiffer (`end-correction.ts`).
 *
 * @param leaf - dimensions [mm]
 * @param modulus - flexural modulus E as printed [MPa]
 * @returns K [N·mm/rad]
 * @throws {RangeError} unless every figure is finite and > 0
 * Source: Howell, Compliant Mechanisms (2001), small-length flexural pivot (from memory).
 */
export function leafStiffness(leaf: Leaf, modulus: number): number {
  requirePositive('leafStiffness', { ...leaf, modulus });
  return (modulus * leafInertia(leaf)) / leaf.length;
}

/**
 * Stiffness felt at the screw, force per advance, of a leaf that lies across the force (in-line):
 * k = E I / [l (a² + l²/12)]; the moment varies along the leaf.
 *
 * @param lever - a, from the leaf's middle to the screw's axis [mm], ≥ l/2
 * @param modulus - E [MPa]
 * @returns k [N/mm]
 * @throws {RangeError} unless every figure is finite and > 0, and a ≥ l/2
 * Source: Castigliano's theorem on a cantilever with a stiff extension (Timoshenko & Gere, Mechanics of Materials).
 */
export function inLineScrewStiffness(leaf: Leaf, lever: number, modulus: number): number {
  requirePositive('inLineScrewStiffness', { ...leaf, lever, modulus });
  if (lever < leaf.length / 2) throw new RangeError(`inLineScrewStiffness: lever must be ≥ l/2, got ${lever}`);
  return leafStiffness(leaf, modulus) / (lever ** 2 + leaf.length ** 2 / 12);
}

/**
 * The same for a leaf parallel to the force (upright), which sees an even moment: k = E I / (l a²).
 *
 * @param lever - a [mm] @param modulus - E [MPa] @returns k [N/mm] @throws {RangeError} unless every figure is finite and > 0
 * Source: Castigliano's theorem, as above.
 */
export function uprightScrewStiffness(leaf: Leaf, lever: number, modulus: number): number {
  requirePositive('uprightScrewStiffness', { ...leaf, lever, modulus });
  return leafStiffness(leaf, modulus) / lever ** 2;
}

/**
 * Surface strain at the root of a straight leaf turned by `flex` by a force at the lever a:
 * ε = t θ / (2 l) · (1 + l / (2 a)) in line, without the bracket when upright (a = Infinity gives that).
 *
 * @param flex - θ [rad] @param lever - a [mm]; Infinity: even moment
 * @returns strain as a fraction, nominal: no fillet factor
 * @throws {RangeError} unless dimensions and lever are > 0 and flex ≥ 0
 * Source: Euler–Bernoulli bending, ε = κ t / 2.
 */
export function leafStrain({ length, thickness }: Omit<Leaf, 'width'>, flex: number, lever: number): number {
  requirePositive('leafStrain', { length, thickness });
  if (!(lever > 0 && flex >= 0 && flex < Infinity))
    throw new RangeError(`leafStrain: lever must be > 0 and flex ≥ 0, got ${lever} and ${flex}`);
  return ((thickness * flex) / (2 * length)) * (1 + length / (2 * lever));
}

/** Properties of sections made of upright rectangles, and of thin-walled ones in torsion. */
import { requirePositive } from '../positive.js';

/** Axis-parallel rectangle by its centre and size [mm]. */
export interface Rectangle {
  readonly y: number;
  readonly z: number;
  readonly breadth: number;
  readonly height: number;
}

export interface SectionFigures {
  /** [mm²] */
  readonly area: number;
  /** Centroid [mm]. */
  readonly y: number;
  readonly z: number;
  /** Second moments [mm⁴] about the centroid's axes: bending in z (about y) and in y (about z). */
  readonly bendingInZ: number;
  readonly bendingInY: number;
}

/**
 * Area, centroid and second moments of rectangles that don't overlap.
 *
 * @throws {RangeError} on an empty list or a size that is not > 0
 * Source: parallel-axis theorem; b h³/12.
 */
export function sectionFigures(rectangles: readonly Rectangle[]): SectionFigures {
  if (rectangles.length === 0) throw new RangeError('sectionFigures: at least one rectangle');
  for (const { breadth, height } of rectangles) requirePositive('sectionFigures', { breadth, height });
  const sum = (f: (r: Rectangle, area: number) => number) =>
    rectangles.reduce((total, r) => total + f(r, r.breadth * r.height), 0);
  const area = sum((_r, a) => a);
  const y = sum((r, a) => a * r.y) / area;
  const z = sum((r, a) => a * r.z) / area;
  return {
    area,
    y,
    z,
    bendingInZ: sum((r, a) => a * (r.height ** 2 / 12 + (r.z - z) ** 2)),
    bendingInY: sum((r, a) => a * (r.breadth ** 2 / 12 + (r.y - y) ** 2)),
  };
}

/** A wall of a thin-walled section: length along the wall's middle and thickness [mm]. */
export interface Wall {
  readonly length: number;
  readonly thickness: number;
}

/**
 * Torsion constant of an open section of thin walls: J = Σ l t³ / 3. Warping free; t well under l.
 *
 * @returns J [mm⁴] @throws {RangeError} unless all > 0
 * Source: Timoshenko & Goodier, Theory of Elasticity, thin open sections.
 */
export function openTorsion(walls: readonly Wall[]): number {
  for (const wall of walls) requirePositive('openTorsion', { ...wall });
  return walls.reduce((sum, { length, thickness }) => sum + (length * thickness ** 3) / 3, 0);
}

/**
 * Torsion constant of one closed cell: J = 4 A² / Σ (l / t).
 *
 * @param enclosed - area A within the walls' middle line [mm²] @returns J [mm⁴] @throws {RangeError} unless all > 0
 * Source: Bredt's second formula.
 */
export function closedTorsion(enclosed: number, walls: readonly Wall[]): number {
  requirePositive('closedTorsion', { enclosed, walls: walls.length });
  for (const wall of walls) requirePositive('closedTorsion', { ...wall });
  return (4 * enclosed ** 2) / walls.reduce((sum, { length, thickness }) => sum + length / thickness, 0);
}

/** @returns shear modulus G = E / (2 (1 + ν)) [MPa], isotropic; printed plastics only roughly so. @throws {RangeError} unless E > 0, ν > −1 */
export function shearModulus(modulus: number, poisson: number): number {
  requirePositive('shearModulus', { modulus, onePlusPoisson: 1 + poisson });
  return modulus / (2 * (1 + poisson));
}

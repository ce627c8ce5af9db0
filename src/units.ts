/**
 * Units. Inside the program: mm, rad, N, MPa, N·mm, s and t (1 t·mm/s² = 1 N), without suffix.
 * Everything else carries its unit in its name; angles are branded, because the kernels disagree on them.
 */
export type Rad = number & { readonly __unit: 'rad' };
export type Deg = number & { readonly __unit: 'deg' };

/** @param degrees - angle [°] @returns angle [rad] */
export const rad = (degrees: number): Rad => ((degrees * Math.PI) / 180) as Rad;

/** @param radians - angle [rad] @returns angle [°] */
export const deg = (radians: number): Deg => ((radians * 180) / Math.PI) as Deg;

/** Standard acceleration of free fall [mm/s²]. Source: ISO 80000-3 (9.806 65 m/s²). */
export const GRAVITY = 9806.65;

/** Tonnes per gram: mass in mechanics is in t. */
export const TONNES_PER_GRAM = 1e-6;

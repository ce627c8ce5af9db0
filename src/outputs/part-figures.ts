/** What the lists say of a part. */
import type { Kit, Part } from '../kit/types.js';
import type { LightBudget } from '../layout/light/budget.js';
import type { MeasuringKernel } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';

export interface PartFigures {
  /** Of the solid as printed (bought parts: of their simple solid) [mm³]. */
  readonly volume: number;
  readonly massG: number;
  /** Edges of its box, as printed [mm]. */
  readonly size: Vec3;
  readonly triangles: number;
}

/** mass = volume · density, solid through: infill makes a printed part lighter. */
export function partFigures(part: Part, kernel: MeasuringKernel): PartFigures {
  const volume = kernel.volume(part.solid);
  const { min, max } = kernel.box(part.solid);
  return {
    volume,
    massG: (volume / 1000) * part.densityGcm3,
    size: [max[0] - min[0], max[1] - min[1], max[2] - min[2]],
    triangles: kernel.triangleCount(part.solid),
  };
}

/** @returns how often each part is placed */
export function quantities(kit: Pick<Kit, 'placements'>): ReadonlyMap<string, number> {
  const count = new Map<string, number>();
  for (const { part } of kit.placements) count.set(part, (count.get(part) ?? 0) + 1);
  return count;
}

/** @returns how many emitters to buy beyond those placed, for the confidence wanted; null where no number helps */
export const spareEmitters = ({ aim }: Pick<LightBudget, 'aim'>, placed: number): number | null =>
  aim.buy === null ? null : Math.max(0, aim.buy - placed);

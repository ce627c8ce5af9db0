/** Which way each placement goes when the kit is taken apart: back along the way it came, the later the farther. */
import type { Kit, Step } from '../kit/types.js';
import { applyDirection } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';

const FIRST = 8;
const PER_STEP = 6;
/** What is put in last within its step, screws after plates or a lid after what it covers, stands farther out. */
const LAST = 8;

export interface Apart {
  /** [mm] */
  readonly by: Vec3;
  /** The placement that it rides with, until that is placed itself. */
  readonly ridesOn: string | null;
  /** Number of the step in which it first appears. */
  readonly step: number;
  /** Number of the step from which on it stands in the kit itself, and not on the bench. */
  readonly inKit: number;
}

/** @returns by placement; what never moves stays */
export function takenApart({ placements, assembly }: Pick<Kit, 'placements' | 'assembly'>): ReadonlyMap<string, Apart> {
  const matrices = new Map(placements.map(({ name, matrix }) => [name, matrix]));
  const own = new Map<string, Apart>();
  for (const step of assembly) {
    const hardware = new Set(step.hardware);
    const hardwareFirst = step.moves.length > 0 && hardware.has(step.moves[0]!.placement);
    for (const name of [...step.joins, ...step.hardware]) note(name, step, null, [0, 0, 0]);
    for (const { placement, direction, inFrameOf } of step.moves) {
      const far = FIRST + PER_STEP * step.step + (hardware.has(placement) !== hardwareFirst ? LAST : 0);
      const way = inFrameOf === null ? direction : applyDirection(matrices.get(inFrameOf)!, direction);
      note(placement, step, inFrameOf, [-far * way[0], -far * way[1], -far * way[2]]);
    }
  }
  const whole = (name: string): Vec3 => {
    const one = own.get(name);
    if (!one) return [0, 0, 0];
    const below = one.ridesOn === null ? ([0, 0, 0] as const) : whole(one.ridesOn);
    return [one.by[0] + below[0], one.by[1] + below[1], one.by[2] + below[2]];
  };
  return new Map(
    placements.map(({ name }) => [
      name,
      {
        by: whole(name),
        ridesOn: own.get(name)?.ridesOn ?? null,
        step: own.get(name)?.step ?? 0,
        inKit: own.get(name)?.inKit ?? 0,
      },
    ]),
  );

  function note(name: string, { step, moves }: Step, ridesOn: string | null, by: Vec3): void {
    const before = own.get(name);
    own.set(name, {
      // Each way that a placement goes by itself adds up; what it rides on is said once.
      by: before ? [before.by[0] + by[0], before.by[1] + by[1], before.by[2] + by[2]] : by,
      ridesOn: before?.ridesOn ?? ridesOn,
      step: before?.step ?? step,
      // A move along the kit's own axes brings it there; what makes none is there from the first.
      inKit: moves.some((move) => move.placement === name && move.inFrameOf === null) ? step : (before?.inKit ?? step),
    });
  }
}

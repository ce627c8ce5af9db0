/** A small picture of each step of the assembly. */
import type { Step } from '../kit/types.js';
import { multiply, translation } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';
import type { ShownContext } from './context.js';
import { type Apart, takenApart } from './explode.js';
import { type Item, picture } from './picture/picture.js';
import { png } from './picture/png.js';
import { type Standing, standing } from './standing.js';

export const STEP_SIZE = [320, 226] as const;
/** Of what stands already, mixed with paper. */
const PALE = 0.62;
/** How far what is new stands off its place, of the way it comes. */
const OFF = 0.5;

/** @returns PNG by step; null where a step shows nothing */
export function stepPictures(context: ShownContext): readonly (Uint8Array | null)[] {
  const items = standing(context);
  const apart = takenApart(context.kit);
  return context.kit.assembly.map((step) => {
    const shown = stepItems(step, { items, apart });
    return shown.length === 0 ? null : png(picture(shown, { size: STEP_SIZE }), context.compression);
  });
}

/** The step's own pieces in full colour; around them what stands already, or only their sub-assembly. */
export function stepItems(
  step: Step,
  { items, apart }: { readonly items: readonly Standing[]; readonly apart: ReadonlyMap<string, Apart> },
): Item[] {
  const named = new Set([...step.joins, ...step.hardware, ...step.moves.map(({ placement }) => placement)]);
  const frame = step.moves.find(({ inFrameOf }) => inFrameOf !== null)?.inFrameOf;
  const inWhole = step.moves.length === 0 || step.moves.some(({ inFrameOf }) => inFrameOf === null);
  if (frame !== undefined && frame !== null && !inWhole) {
    const own = items.filter(({ name }) => name === frame || apart.get(name)?.ridesOn === frame);
    return own
      .filter(({ name }) => name === frame || apart.get(name)!.step <= step.step)
      .map((item) =>
        drawn(
          item,
          named.has(item.name) && item.name !== frame ? less(by(item.name), by(frame)) : null,
          item.name === frame,
        ),
      );
  }
  return items
    .filter(({ name }) => named.has(name) || standsBefore(name))
    .map((item) => drawn(item, isNew(item.name) ? by(rootOf(item.name)) : null, !isNew(item.name)));

  function by(name: string): Vec3 {
    return apart.get(name)?.by ?? [0, 0, 0];
  }
  function rootOf(name: string): string {
    const on = apart.get(name)?.ridesOn;
    return on === null || on === undefined ? name : rootOf(on);
  }
  /** What rides on a piece of this step is new with it. */
  function isNew(name: string): boolean {
    return named.has(name) || (rootOf(name) !== name && named.has(rootOf(name)) && apart.get(name)!.step <= step.step);
  }
  /** A sub-assembly stands in the whole from the step on in which it is lowered in: that is its root's last move. */
  function standsBefore(name: string): boolean {
    const root = rootOf(name);
    const lowered = apart.get(root)?.inKit ?? 0;
    return lowered <= step.step && (apart.get(name)?.step ?? 0) <= step.step;
  }
}

function drawn(item: Standing, off: Vec3 | null, pale: boolean): Item {
  const colour = pale ? (item.colour.map((c) => c + PALE * (244 - c)) as unknown as Vec3) : item.colour;
  const matrix =
    off === null ? item.matrix : multiply(translation([OFF * off[0], OFF * off[1], OFF * off[2]]), item.matrix);
  return { mesh: item.mesh, matrix, colour };
}

const less = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

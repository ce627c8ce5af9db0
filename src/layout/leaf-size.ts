/** What no leaf may be, whatever its figures: thinner than two print lines, or longer than the mount it is to sit in. */
import type { Mistake } from '../errors.js';
import { printedThickness } from '../mechanics/printed-thickness.js';
import type { LeafLayout, Spec } from '../spec/spec.js';
import { type Baseline, baselineOf } from './baseline.js';

/** Numbers of print lines that are named where a thickness is refused. */
const LINES = [2, 3, 4] as const;

/** Thickness of a wall of so many lines, in the hundredths in which a preset gives it [mm]. */
export const thicknessOf = ({ printer: { machine } }: Spec, lines: number): number =>
  Math.round(100 * printedThickness(lines, machine.lineWidth.value, machine.layer.value)) / 100;

/**
 * Length of the mount when its leaf may be as long as the solver likes [mm]: a longer leaf would stick out of it.
 *
 * @param baseline - the preset's own, where it is known already
 */
export function leafRoom(spec: Spec, baseline?: Baseline): number {
  const open =
    spec.leaf.length === undefined
      ? (baseline ?? baselineOf(spec))
      : baselineOf({ ...spec, leaf: { ...spec.leaf, length: undefined } });
  return open?.mount.length ?? Infinity;
}

export interface LeafSizes {
  readonly room: number;
  readonly lengths: readonly number[];
  readonly thicknesses: readonly number[];
  readonly layout: LeafLayout | undefined;
}

export function leafSizeMistakes(spec: Spec, { room, lengths, thicknesses, layout }: LeafSizes): readonly Mistake[] {
  const mistakes: Mistake[] = [];
  const { lineWidth, layer } = spec.printer.machine;
  const least = thicknessOf(spec, 2);
  const thinnest = Math.min(...thicknesses);
  if (thinnest < least - 1e-9)
    mistakes.push({
      code: 'leaf/too-thin',
      path: 'leaf.thickness',
      message: `a leaf ${thinnest} mm thick is under two print lines, ${least} mm with lines ${lineWidth.value} mm wide in layers of ${layer.value} mm`,
      hint: `at least ${least} mm; whole lines are ${LINES.map((lines) => thicknessOf(spec, lines)).join(', ')}`,
    });
  // A notch's length is its radius: it takes twice that.
  const longest = Math.max(...lengths);
  const [span, what] =
    layout === 'notch' ? [2 * longest, `notch of radius ${longest}`] : [longest, `leaf of ${longest}`];
  if (span > room)
    mistakes.push({
      code: 'leaf/too-long',
      path: 'leaf.length',
      message: `a ${what} mm is longer than the whole mount, ${room} mm`,
      hint: layout === 'notch' ? `less than ${room / 2} mm` : `less than ${room} mm; folded, its legs share the length`,
    });
  return mistakes;
}

/** What the preset itself pins, judged before a mount is solved around it: the same for every command. */
export function pinnedMistakes(spec: Spec): readonly Mistake[] {
  const { length, thickness, layout } = spec.leaf;
  if (length === undefined && thickness === undefined) return [];
  return leafSizeMistakes(spec, {
    room: length === undefined ? Infinity : leafRoom(spec),
    lengths: length === undefined ? [] : [length],
    thicknesses: thickness === undefined ? [] : [thickness],
    layout,
  });
}

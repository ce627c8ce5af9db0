/** Dimension lines after ISO 129-1: line with closed arrows, extension lines, the figure above the line or left of it. */
import type { Vec2 } from '../../solid/mesh.js';
import type { Mark } from './marks.js';

const ARROW = 2.5;
const BEYOND = 1.5;
const GAP = 1;
const TEXT = 2.5;
/** A shorter line has no room for its arrows: they point at it from outside, the figure beside them. */
const TIGHT = 3 * ARROW;

/** @returns at most two decimals, none where they are nothing */
export const dimensionText = (value: number): string => String(Math.round(value * 100) / 100);

/** Between two points of one height, the left one first, the line at `y`; figures in mm of the thing. */
export function across(
  from: number,
  to: number,
  { y, edge, value }: { readonly y: number; readonly edge: number; readonly value: number },
): Mark[] {
  const text = { kind: 'text', text: dimensionText(value), size: TEXT } as const;
  return [
    ...lines(from, to, { line: y, edge, put: (along, off) => [along, off] }),
    to - from < TIGHT
      ? { ...text, at: [to + 2 * ARROW + 1, y + TEXT / 2] }
      : { ...text, at: [(from + to) / 2, y - 1], anchor: 'middle' },
  ];
}

/** Between two points of one x, the upper one first, the line at `x`. */
export function upright(
  from: number,
  to: number,
  { x, edge, value }: { readonly x: number; readonly edge: number; readonly value: number },
): Mark[] {
  const text = { kind: 'text', text: dimensionText(value), size: TEXT } as const;
  return [
    ...lines(from, to, { line: x, edge, put: (along, off) => [off, along] }),
    to - from < TIGHT
      ? { ...text, at: [x + 1, from - ARROW] }
      : { ...text, at: [x - 1, (from + to) / 2], anchor: 'middle', turn: 90 },
  ];
}

/** Extension lines, and the dimension line with its arrows: within where they have room, else pointing at it from outside. */
function lines(
  from: number,
  to: number,
  {
    line,
    edge,
    put,
  }: { readonly line: number; readonly edge: number; readonly put: (along: number, off: number) => Vec2 },
): Mark[] {
  const way = Math.sign(line - edge);
  const tight = to - from < TIGHT;
  const inward = tight ? -1 : 1;
  const beyond = tight ? 2 * ARROW : 0;
  return [
    ...[from, to].map((end) => thin(put(end, edge + way * GAP), put(end, line + way * BEYOND))),
    thin(put(from - beyond, line), put(to + beyond, line)),
    ...arrow(put(from, line), put(inward, 0)),
    ...arrow(put(to, line), put(-inward, 0)),
  ];
}

const thin = (a: Vec2, b: Vec2): Mark => ({ kind: 'line', points: [a, b], pen: 'thin' });

/** Tip at a point, its barbs along a direction. */
export function arrow([x, y]: Vec2, [dx, dy]: Vec2): Mark[] {
  const barb = (side: number): Vec2 => [
    x + ARROW * dx - side * (ARROW / 6) * dy,
    y + ARROW * dy + side * (ARROW / 6) * dx,
  ];
  return [{ kind: 'line', points: [barb(1), [x, y], barb(-1), barb(1)], pen: 'thin' }];
}

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
  const way = Math.sign(y - edge);
  const text = dimensionText(value);
  const tight = to - from < TIGHT;
  return [
    thin([from, edge + way * GAP], [from, y + way * BEYOND]),
    thin([to, edge + way * GAP], [to, y + way * BEYOND]),
    ...(tight
      ? [
          thin([from - 2 * ARROW, y], [to + 2 * ARROW, y]),
          ...arrow([from, y], [-1, 0]),
          ...arrow([to, y], [1, 0]),
          { kind: 'text', at: [to + 2 * ARROW + 1, y + TEXT / 2], text, size: TEXT } as const,
        ]
      : [
          thin([from, y], [to, y]),
          ...arrow([from, y], [1, 0]),
          ...arrow([to, y], [-1, 0]),
          { kind: 'text', at: [(from + to) / 2, y - 1], text, size: TEXT, anchor: 'middle' } as const,
        ]),
  ];
}

/** Between two points of one x, the upper one first, the line at `x`. */
export function upright(
  from: number,
  to: number,
  { x, edge, value }: { readonly x: number; readonly edge: number; readonly value: number },
): Mark[] {
  const way = Math.sign(x - edge);
  const text = dimensionText(value);
  const tight = to - from < TIGHT;
  return [
    thin([edge + way * GAP, from], [x + way * BEYOND, from]),
    thin([edge + way * GAP, to], [x + way * BEYOND, to]),
    ...(tight
      ? [
          thin([x, from - 2 * ARROW], [x, to + 2 * ARROW]),
          ...arrow([x, from], [0, -1]),
          ...arrow([x, to], [0, 1]),
          { kind: 'text', at: [x + 1, from - ARROW], text, size: TEXT } as const,
        ]
      : [
          thin([x, from], [x, to]),
          ...arrow([x, from], [0, 1]),
          ...arrow([x, to], [0, -1]),
          { kind: 'text', at: [x - 1, (from + to) / 2], text, size: TEXT, anchor: 'middle', turn: 90 } as const,
        ]),
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

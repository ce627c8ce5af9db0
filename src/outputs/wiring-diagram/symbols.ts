/** Symbols by the usual conventions of circuit diagrams (IEC 60617 in their simple forms), and flags that name what a wire goes on to. */
import type { Vec2 } from '../../solid/mesh.js';
import { breadth, FONT, type Ink, line, words } from './ink.js';

/** From a wire's end upwards to the supply's bar. */
export const RISE = 8;
/** From a wire's end down to the last stroke of ground. */
export const FALL = 15;
/** Letters stand so far above their wire. */
const ABOVE = 4;
/** A resistor, along its wire and across. */
export const RESISTOR: Vec2 = [32, 10];

export const box = ([x, y]: Vec2, [width, height]: Vec2): Ink =>
  line([x, y], [x + width, y], [x + width, y + height], [x, y + height], [x, y]);

/** The panel's supply: a bar over a stub. */
export const supplyPlus = ([x, y]: Vec2): readonly Ink[] => [
  line([x, y], [x, y - RISE]),
  line([x - 7, y - RISE], [x + 7, y - RISE]),
];

/** Its other pole: three strokes under a stub. */
export const ground = ([x, y]: Vec2): readonly Ink[] => [
  line([x, y], [x, y + FALL - 8]),
  ...[8, 5, 2].map((half, i) => line([x - half, y + FALL - 8 + 4 * i], [x + half, y + FALL - 8 + 4 * i])),
];

/** @param at - its left end */
export const resistorAlong = ([x, y]: Vec2, value: string): readonly Ink[] => [
  box([x, y - RESISTOR[1] / 2], RESISTOR),
  words([x + RESISTOR[0] / 2, y + RESISTOR[1] / 2 + FONT], value, { anchor: 'middle' }),
];

/** @param at - its lower end, where a wire is joined; the supply stands above, `high` higher than that */
export function pullUp(
  [x, y]: Vec2,
  { value, high }: { readonly value: string; readonly high: number },
): readonly Ink[] {
  const [long, across] = [18, RESISTOR[1]];
  const low = y - 6;
  return [
    { kind: 'dot', at: [x, y] },
    line([x, y], [x, low]),
    box([x - across / 2, low - long], [across, long]),
    line([x, low - long], [x, y - high + RISE]),
    ...supplyPlus([x, y - high + RISE]),
    words([x + across / 2 + 5, low - long / 2 + 5], value),
  ];
}

/** Two plates between an upper and a lower wire. */
export function capacitor(
  x: number,
  { from, to, value }: { readonly from: number; readonly to: number; readonly value: string },
): readonly Ink[] {
  const middle = (from + to) / 2;
  return [
    { kind: 'dot', at: [x, from] },
    { kind: 'dot', at: [x, to] },
    line([x, from], [x, middle - 3]),
    line([x - 12, middle - 3], [x + 12, middle - 3]),
    line([x - 12, middle + 3], [x + 12, middle + 3]),
    line([x, middle + 3], [x, to]),
    words([x + 18, middle + 5], value),
  ];
}

/** A rectangle that the wire goes through. @param at - its left end on the wire */
export const fuse = ([x, y]: Vec2): readonly Ink[] => [
  box([x, y - 6], [34, 12]),
  line([x, y], [x + 34, y]),
  words([x + 17, y - 10], 'fuse', { anchor: 'middle' }),
];

/** Cells between an upper and a lower wire, the long plate plus. */
export function battery(x: number, { from, to }: { readonly from: number; readonly to: number }): readonly Ink[] {
  const middle = (from + to) / 2;
  const plates = [-9, -3, 3, 9].map((up, i) => {
    const half = i % 2 === 0 ? 14 : 7;
    return line([x - half, middle + up], [x + half, middle + up]);
  });
  return [
    line([x, from], [x, middle - 9]),
    ...plates,
    line([x, middle + 9], [x, to]),
    words([x + 18, middle - 8], '+'),
  ];
}

export const flagBreadth = (text: string): number => breadth(text) + 22;

/** A flag in which a wire ends that goes on elsewhere. @param at - the wire's end @param side - where the flag lies from there */
export function flag(
  [x, y]: Vec2,
  { text, side }: { readonly text: string; readonly side: 'left' | 'right' },
): readonly Ink[] {
  const way = side === 'left' ? -1 : 1;
  const long = flagBreadth(text);
  const half = FONT / 2 + 2.5;
  return [
    line(
      [x, y],
      [x + way * 7, y - half],
      [x + way * long, y - half],
      [x + way * long, y + half],
      [x + way * 7, y + half],
      [x, y],
    ),
    words([x + way * (long / 2 + 3), y + FONT / 2 - 2], text, { anchor: 'middle' }),
  ];
}

/** The number of a wire, beside the pin where it starts. */
export const wireLabel = ([x, y]: Vec2, id: string, side: 'left' | 'right'): Ink =>
  words([x + (side === 'left' ? -6 : 6), y - ABOVE], id, { anchor: side === 'left' ? 'end' : 'start' });

/** A box with pins on both sides: what stands at each pin's wire is drawn by the pin's kind. */
import type { Vec2 } from '../../solid/mesh.js';
import { type Ink, line, words } from './ink.js';
import { box, flag, ground, supplyPlus, wireLabel } from './symbols.js';

export const CHIP_WIDTH = 100;
/** Between pins, one under the other. */
export const PIN = 22;
/** From a pin to its symbol or flag: a wire's number stands on it. */
export const STUB = 58;

export interface Pin {
  readonly name: string;
  /** Wire's number; null: joined on the board, no wire. */
  readonly wire: string | null;
  readonly on:
    | { readonly kind: 'plus' }
    | { readonly kind: 'minus' }
    | { readonly kind: 'flag'; readonly text: string }
    /** Led to the left to a wire that runs down beside the boxes. */
    | { readonly kind: 'bus'; readonly net: string };
}

/** @param at - where the pin meets its box @returns the wire with its number and what it ends in */
export function pinMarks(
  [x, y]: Vec2,
  { pin, side, busX }: { readonly pin: Pin; readonly side: 'left' | 'right'; readonly busX?: (net: string) => number },
): readonly Ink[] {
  const way = side === 'left' ? -1 : 1;
  const { on, wire } = pin;
  const end: Vec2 = on.kind === 'bus' && busX ? [busX(on.net), y] : [x + way * STUB, y];
  return [
    words([x - way * 6, y + 4.5], pin.name, { anchor: side === 'left' ? 'start' : 'end' }),
    line([x, y], end),
    ...(wire === null ? [] : [wireLabel([x, y], wire, side)]),
    ...(on.kind === 'plus' ? supplyPlus(end) : on.kind === 'minus' ? ground(end) : []),
    ...(on.kind === 'flag' ? flag(end, { text: on.text, side }) : []),
  ];
}

export interface Chip {
  readonly title: string;
  /** One under the other from the top. */
  readonly left: readonly Pin[];
  readonly right: readonly Pin[];
  /** The box is at least so high. */
  readonly least: number;
  /** Where the wire of a net runs down. */
  readonly busX: (net: string) => number;
}

/** Above the box, for its title; below it, before the next one. */
export const CHIP_HEAD = 26;
export const CHIP_FOOT = 34;

/** @returns the box, and where the pins of its left side stand */
export function chip(
  [x, y]: Vec2,
  { title, left, right, least, busX }: Chip,
): { readonly marks: readonly Ink[]; readonly pins: readonly number[]; readonly bottom: number } {
  const pins = left.map((_, i) => y + CHIP_HEAD + PIN * (i + 1));
  const high = Math.max(least, PIN * (Math.max(left.length, right.length) + 1));
  return {
    marks: [
      words([x, y + CHIP_HEAD - 8], title, { bold: true }),
      box([x, y + CHIP_HEAD], [CHIP_WIDTH, high]),
      ...left.flatMap((pin, i) => pinMarks([x, pins[i]!], { pin, side: 'left', busX })),
      ...right.flatMap((pin, i) => pinMarks([x + CHIP_WIDTH, y + CHIP_HEAD + PIN * (i + 1)], { pin, side: 'right' })),
    ],
    pins,
    bottom: y + CHIP_HEAD + high + CHIP_FOOT,
  };
}

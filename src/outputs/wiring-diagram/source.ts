/** Where the current comes from: battery and converter or a power supply, the capacitor, the two poles of the panel's supply. */
import type { Vec2 } from '../../solid/mesh.js';
import { breadth, FONT, type Ink, line, words } from './ink.js';
import { battery, box, capacitor, fuse, ground, supplyPlus, wireLabel } from './symbols.js';

export interface Source {
  /** `converter` or `power supply`. */
  readonly name: string;
  readonly volts: string;
  readonly plus: string;
  readonly minus: string;
  readonly capacitor: string;
  /** Null: none. */
  readonly battery: { readonly says: string; readonly plus: string; readonly minus: string } | null;
}

/** Between the two poles' wires. */
const APART = 70;
/** From the top to the upper wire. */
const HEAD = 58;
export const SOURCE_HIGH = HEAD + APART + 60;

export function sourceMarks([x, y]: Vec2, source: Source): readonly Ink[] {
  const [plus, minus] = [y + HEAD, y + HEAD + APART];
  const cells = source.battery;
  const left = cells === null ? x : x + 210;
  const wide = Math.max(breadth(source.name), breadth(source.volts)) + 60;
  const right = left + wide;
  const [caps, end] = [right + 86, right + 220];
  return [
    words([x, y + 20], 'Supply', { bold: true }),
    ...(cells === null ? [] : batteryMarks([x + 16, plus, minus], { ...cells, to: left })),
    box([left, plus - 20], [wide, APART + 40]),
    words([left + wide / 2, (plus + minus) / 2 - 3], source.name, { anchor: 'middle' }),
    words([left + wide / 2, (plus + minus) / 2 + FONT + 3], source.volts, { anchor: 'middle' }),
    ...(
      [
        [plus, '+', source.plus],
        [minus, '−', source.minus],
      ] as const
    ).flatMap(([at, pole, wire]) => [
      ...(cells === null ? [] : [words([left + 6, at + 4.5], pole)]),
      words([right - 6, at + 4.5], pole, { anchor: 'end' }),
      line([right, at], [end, at]),
      wireLabel([right, at], wire, 'right'),
    ]),
    ...capacitor(caps, { from: plus, to: minus, value: source.capacitor }),
    ...supplyPlus([end, plus]),
    ...ground([end, minus]),
    words([end + 16, plus + 4.5], `supply plus, ${source.volts}, wherever this sign stands`),
    words([end + 16, minus + 4.5], 'supply minus, 0 V, wherever this sign stands'),
  ];
}

function batteryMarks(
  [x, plus, minus]: readonly [number, number, number],
  { says, plus: plusWire, minus: minusWire, to }: NonNullable<Source['battery']> & { readonly to: number },
): readonly Ink[] {
  const from = x + 100;
  return [
    ...battery(x, { from: plus, to: minus }),
    line([x, plus], [from, plus]),
    wireLabel([x, plus], plusWire, 'right'),
    ...fuse([from, plus]),
    line([from + 34, plus], [to, plus]),
    line([x, minus], [to, minus]),
    wireLabel([x, minus], minusWire, 'right'),
    words([x - 16, minus + FONT + 12], says),
  ];
}

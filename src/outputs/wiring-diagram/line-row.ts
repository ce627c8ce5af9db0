/** A line of the grid: from the pin where it is read over its receiver and its light to its emitter. */
import type { Vec2 } from '../../solid/mesh.js';
import { pinMarks } from './chip.js';
import { type Ink, line, words } from './ink.js';
import { box, flag, ground, pullUp, RESISTOR, resistorAlong, supplyPlus, wireLabel } from './symbols.js';

export interface LineRow {
  /** `column-3`, over its light. */
  readonly name: string;
  /** Where it is read: `Y3`, `P0`. */
  readonly pin: string;
  readonly pullUp: string;
  /** Wires' numbers; `plus` is null for a receiver on two legs. */
  readonly receiver: { readonly signal: string; readonly plus: string | null; readonly minus: string };
  readonly emitter: {
    readonly plus: string;
    readonly minus: string;
    /** In front of it; null: none. */
    readonly resistor: string | null;
    /** The switch that takes its current; null: ground. */
    readonly onto: string | null;
  };
}

/** From one line to the next. */
export const LINE_HIGH = 86;
/** Of plus, signal and minus, from the row's top. */
const [PLUS, SIGNAL, MINUS] = [24, 44, 64];
const TO_RECEIVER = 204;
const RECEIVER = 112;
const LIGHT = 112;
const EMITTER = 92;
const STUB = 56;

/** @param at - right side of the box in which the line is read, top of the row */
export function lineRow([x, y]: Vec2, row: LineRow): readonly Ink[] {
  const [plus, signal, minus] = [y + PLUS, y + SIGNAL, y + MINUS];
  const left = x + TO_RECEIVER;
  const lit = left + RECEIVER;
  const emitter = lit + LIGHT;
  const right = emitter + EMITTER;
  const { receiver } = row;
  const high = MINUS - PLUS + 24;
  const top = y + PLUS - 12;
  return [
    words([x - 6, signal + 4.5], row.pin, { anchor: 'end' }),
    line([x, signal], [left, signal]),
    wireLabel([x, signal], receiver.signal, 'right'),
    ...pullUp([x + 68, signal], { value: row.pullUp, high: SIGNAL - 6 }),
    box([left, top], [RECEIVER, high]),
    words([left + RECEIVER - 8, signal + 4.5], 'receiver', { anchor: 'end' }),
    words([left + 6, signal + 4.5], 'out'),
    ...(receiver.plus === null
      ? []
      : pinMarks([left, plus], { pin: { name: '+', wire: receiver.plus, on: { kind: 'plus' } }, side: 'left' })),
    ...pinMarks([left, minus], { pin: { name: '−', wire: receiver.minus, on: { kind: 'minus' } }, side: 'left' }),
    {
      kind: 'beam',
      points: [
        [emitter, signal],
        [lit + 9, signal],
      ],
    },
    line([lit + 11, signal - 5], [lit + 2, signal], [lit + 11, signal + 5]),
    words([(lit + emitter) / 2, signal - 8], row.name, { anchor: 'middle', bold: true }),
    box([emitter, top], [EMITTER, high]),
    words([emitter + 8, signal + 4.5], 'emitter'),
    ...emitterMarks([right, plus, minus], row.emitter),
  ];
}

function emitterMarks(
  [x, plus, minus]: readonly [number, number, number],
  { plus: plusWire, minus: minusWire, resistor, onto }: LineRow['emitter'],
): readonly Ink[] {
  const end = x + STUB;
  const after = end + RESISTOR[0];
  return [
    words([x - 6, plus + 4.5], '+', { anchor: 'end' }),
    words([x - 6, minus + 4.5], '−', { anchor: 'end' }),
    line([x, plus], [end, plus]),
    wireLabel([x, plus], plusWire, 'right'),
    ...(resistor === null
      ? supplyPlus([end, plus])
      : [
          ...resistorAlong([end, plus], resistor),
          line([after, plus], [after + 22, plus]),
          ...supplyPlus([after + 22, plus]),
        ]),
    line([x, minus], [end, minus]),
    wireLabel([x, minus], minusWire, 'right'),
    ...(onto === null ? ground([end, minus]) : flag([end, minus], { text: onto, side: 'right' })),
  ];
}

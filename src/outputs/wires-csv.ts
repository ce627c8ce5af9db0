/** `wires.csv`: every wire, from where to where, how long. `crossings.json`: which pair of lines is which key. */
import { cutLength, wireRuns } from '../kit/wire-lengths.js';
import { layScan } from '../layout/scan.js';
import type { Output, OutputContext } from './context.js';
import { type Json, jsonText } from './json-text.js';
import { csvText } from './parts-csv.js';

export interface Wire {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** American wire gauge; lengths are cut to a whole centimetre [mm]. */
  readonly gauge: number;
  readonly length: number;
}

const HEADER = ['name', 'from', 'to', 'gauge_awg', 'length_mm', 'colour'];

export const wiresCsv: Output = (context) => [
  {
    path: 'wires.csv',
    // The colour is the builder's: an empty column to note it in.
    bytes: encode(
      csvText([
        HEADER,
        ...wiresOf(context).map(({ name, from, to, gauge, length }) => [name, from, to, gauge, length, null]),
      ]),
    ),
  },
];

const encode = (text: string) => new TextEncoder().encode(text);

/** @returns emitters' wires, then receivers'; a receiver's signal goes where `channels.csv` says it is read */
export function wiresOf({ kit, spec }: Pick<OutputContext, 'kit' | 'spec'>): readonly Wire[] {
  const { gauge } = spec.supply;
  const channels = new Map(
    layScan(spec).table.map(({ line, place }) => [line.name, { board: line.board, place }] as const),
  );
  // Three legs: supply, ground, signal; two: ground and signal.
  const third = spec.receivers.part.legs.value > 2;
  return wireRuns(kit).flatMap(({ beam, end, length: exact }): Wire[] => {
    const length = cutLength(exact);
    const wire = (what: string, to: string): Wire => ({
      name: `${beam} ${end} ${what}`,
      from: `${beam} ${end}`,
      to,
      gauge,
      length,
    });
    if (end === 'emitter') return [wire('plus', 'supply plus'), wire('minus', 'supply minus')];
    const channel = channels.get(beam);
    const to =
      channel === undefined
        ? 'controller'
        : channel.place.kind === 'pin'
          ? `board ${channel.board}, pin ${channel.place.pin}`
          : `board ${channel.board}, multiplexer ${channel.place.multiplexer}, address ${channel.place.address}`;
    return [...(third ? [wire('plus', 'supply plus')] : []), wire('minus', 'supply minus'), wire('signal', to)];
  });
}

export const crossingsJson: Output = (context) => [
  { path: 'crossings.json', bytes: encode(jsonText(crossings(context))) },
];

/** Neutral: for whatever program reads the panel. Rows count from the near side, columns from the left. */
function crossings({ spec }: OutputContext): Json {
  const { rows, columns, labels } = spec.grid;
  return {
    format: 'beamloom-crossings/1',
    kit: spec.name,
    keys: rows.flatMap((_, row) =>
      columns.map((__, column) => ({
        row,
        column,
        beams: [`column-${column}`, `row-${row}`],
        label: labels?.[row]?.[column] ?? '',
      })),
    ),
  };
}

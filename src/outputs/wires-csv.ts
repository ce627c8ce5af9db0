/** `wires.csv`: every wire, from where to where, how long. */
import type { Wire } from '../kit/net.js';
import { wiresOf } from '../kit/wires.js';
import type { Output } from './context.js';
import type { Json } from './json-text.js';
import { csvText } from './parts-csv.js';

const HEADER = ['wire', 'from', 'to', 'gauge_awg', 'length_mm', 'colour'];

export const wiresCsv: Output = (context) => [
  {
    path: 'wires.csv',
    // The colour is the builder's: an empty column to note it in.
    bytes: new TextEncoder().encode(csvText([HEADER, ...wiresOf(context).map((wire) => [...cells(wire), null])])),
  },
];

const cells = ({ id, from, to, gauge, length }: Wire) => [id, from, to, gauge, length];

/** @returns the wires as `kit.json` shows them */
export const wiresJson = (wires: readonly Wire[]): Json =>
  wires.map(({ id, from, to, gauge, length }) => ({ wire: id, from, to, gauge_awg: gauge, length_mm: length }));

/** `channels.csv`: which line is read on which channel, for whoever wires and programs the controller. */
import { servedBy } from '../kit/board-wires.js';
import type { Net } from '../kit/net.js';
import type { BoardsOfKit } from '../kit/types.js';
import { netsOf, wireNamed } from '../kit/wires.js';
import { layScan } from '../layout/scan.js';
import type { ChannelRow } from '../optics/scan-plan.js';
import type { Spec } from '../spec/spec.js';
import type { Output } from './context.js';
import { type Json, tidy } from './json-text.js';
import { csvText } from './parts-csv.js';

const HEADER = [
  'beam',
  'line',
  'index',
  'board',
  'multiplexer',
  'address',
  'pin',
  'read_at_us',
  'pull_up_ohm',
  'lit_level',
  'signal_wire',
  'receiver_wires',
  'emitter_wires',
] as const;

/** One row a line, columns first; multiplexers, addresses, pins and lines count from 0. */
export const channelsCsv: Output = ({ spec, kit: { boards } }) => [
  {
    path: 'channels.csv',
    bytes: new TextEncoder().encode(csvText([HEADER, ...tableOf(spec, boards).map((row) => Object.values(row))])),
  },
];

type Cells = Readonly<Record<(typeof HEADER)[number], string | number | null>>;

function tableOf(spec: Spec, boards: BoardsOfKit | undefined): readonly Cells[] {
  const nets = netsOf(spec);
  const [named, served] = [wireNamed(nets), servedBy(boards)];
  return layScan(spec).table.map((row) =>
    cells(
      row,
      nets.filter(({ along }) => along?.beam === row.line.name),
      (net) => named(served(net.name)).id,
    ),
  );
}

/** A line's row; `multiplexer` and `address`, or `pin`: the others are null. */
function cells(
  { line, place, readAt, pullUp, lowWhileLit }: ChannelRow,
  own: readonly Net[],
  idOf: (net: Net) => string,
): Cells {
  const wires = (end: 'emitter' | 'receiver') => own.filter(({ along }) => along?.end === end);
  const signal = (net: Net) => net.name.endsWith(' signal');
  const ids = (nets: readonly Net[]) => nets.map(idOf).join(' ');
  const through = place.kind === 'multiplexer' ? place : null;
  return {
    beam: line.name,
    line: line.line,
    index: line.index,
    board: line.board,
    multiplexer: through?.multiplexer ?? null,
    address: through?.address ?? null,
    pin: place.kind === 'pin' ? place.pin : null,
    read_at_us: tidy(1e6 * readAt, 3),
    pull_up_ohm: pullUp,
    lit_level: lowWhileLit ? 'low' : 'high',
    signal_wire: ids(own.filter(signal)),
    receiver_wires: ids(wires('receiver').filter((net) => !signal(net))),
    emitter_wires: ids(wires('emitter')),
  };
}

/** @returns the table, and the scan's figures, as `kit.json` shows them */
export function channelsJson(
  spec: Spec,
  boards: BoardsOfKit | undefined,
): { readonly channels: Json; readonly scan: Json } {
  const plan = layScan(spec);
  return {
    channels: tableOf(spec, boards),
    scan: {
      time_us: tidy(1e6 * plan.scanTime, 3),
      rate_hz: tidy(plan.rate, 3),
      latency_mean_ms: tidy(1e3 * plan.latency.mean),
      latency_worst_ms: tidy(1e3 * plan.latency.worst),
      addresses: plan.addresses,
      multiplexers: [...plan.multiplexers],
      pins: { ...plan.pins },
      pull_up_ma: tidy(1e3 * plan.pullUpCurrent),
    },
  };
}

/** One pass over all receivers: in what order, how long it takes, and how long a finger waits for its key. All times in s. */
import { requireNotNegative, requirePositive } from '../positive.js';
import { type Channel, type ChannelPlan, type ScanLine, shareOut } from './scan-channels.js';
import { pullUpCurrent } from './scan-electric.js';

export interface ScanAsk {
  readonly lines: readonly ScanLine[];
  /** Channels of a multiplexer. */
  readonly channels: 8 | 16;
  /** `shared`: all multiplexers get one address, and each has an input pin. `single`: one common input, one multiplexer enabled at a time. */
  readonly address: 'shared' | 'single';
  /** Input pins left over for lines that would otherwise need a multiplexer of their own. */
  readonly sparePins: number;
  /** Setting an address; until the node has settled; one reading [s]. */
  readonly addressTime: number;
  readonly settleTime: number;
  readonly readTime: number;
  /** For emitters that are lit line by line: until a receiver follows its light [s]; 0 where they are always lit. */
  readonly lightTime: number;
  /** Equal scans in a row that make a change count, 1 or more. */
  readonly debounce: number;
  readonly pullUp: { readonly resistance: number; readonly supply: number; readonly low: number };
  /** The receiver pulls its line low while it is lit, as a phototransistor with a pull-up does: dark reads high. */
  readonly lowWhileLit: boolean;
}

/** A row of the channel table. */
export interface ChannelRow extends Channel {
  /** When in a scan the line is read: the end of its reading [s]. */
  readonly readAt: number;
  readonly pullUp: number;
  readonly lowWhileLit: boolean;
}

export interface ScanPlan {
  readonly table: readonly ChannelRow[];
  readonly multiplexers: ChannelPlan['multiplexers'];
  /** Addresses stepped through in a scan. */
  readonly addresses: number;
  /** Pins of the controller: address lines, enables, inputs of multiplexers, direct lines. */
  readonly pins: {
    readonly address: number;
    readonly enable: number;
    readonly input: number;
    readonly direct: number;
    readonly all: number;
  };
  /** Lines that are read under one light, where emitters are lit line by line: so many are lit at once. */
  readonly litTogether: number;
  /** Of one scan [s], and scans a second [1/s]. */
  readonly scanTime: number;
  readonly rate: number;
  /** From a finger's arrival to its key being known, at the end of a scan [s]. Mean over all moments and keys. */
  readonly latency: { readonly mean: number; readonly worst: number };
  /** What each lit receiver has to sink [A]. */
  readonly pullUpCurrent: number;
}

/**
 * Plans a scan.
 *
 * Shared address: T = Σ over addresses (t_addr + t_light + t_settle + reads · t_read), reads being the multiplexers that have a line
 * there; with B full ones of n channels that is n (t_addr + t_settle + B t_read). Single: each line pays for its own address.
 * Direct lines need no address: t_light + t_read, once for all of them the former.
 *
 * Latency: a key counts once both its lines have been dark in `debounce` scans k in a row, and is known at the end of the last. A
 * finger that arrives just after the first of its two lines was read waits for the next scan: with τ the earlier reading's time, the
 * worst is k T + T − τ, the mean k T + T/2 − τ.
 *
 * @throws {RangeError} without lines, and on figures out of range
 * Source: sums, worked out here; tests hold them to a simulation.
 */
export function planScan(ask: ScanAsk): ScanPlan {
  const { addressTime, settleTime, readTime, lightTime, debounce } = ask;
  requirePositive('planScan', { readTime, lines: ask.lines.length, debounce });
  requireNotNegative('planScan', { addressTime, settleTime, lightTime });
  if (!Number.isInteger(debounce)) throw new RangeError(`planScan: debounce must be whole, got ${debounce}`);
  const plan = shareOut(ask.lines, ask.channels, ask.sparePins);
  const visits = order(plan.channels, ask.address);

  const readAt = new Map<string, number>();
  let now = 0;
  for (const { direct, lines } of visits) {
    now += lightTime + (direct ? 0 : addressTime + settleTime);
    for (const { line } of lines) {
      now += readTime;
      readAt.set(line.name, now);
    }
  }
  const scanTime = now;
  const steps = visits.filter(({ direct }) => !direct);
  const chips = plan.multiplexers.length;
  const pins = {
    address: chips === 0 ? 0 : Math.log2(ask.channels),
    enable: ask.address === 'single' && chips > 1 ? chips : 0,
    input: ask.address === 'shared' ? chips : Math.min(1, chips),
    direct: plan.pins,
  };
  return {
    table: plan.channels.map((channel) => ({
      ...channel,
      readAt: readAt.get(channel.line.name)!,
      pullUp: ask.pullUp.resistance,
      lowWhileLit: ask.lowWhileLit,
    })),
    multiplexers: plan.multiplexers,
    addresses: steps.length,
    litTogether: Math.max(...visits.map(({ lines }) => lines.length)),
    pins: { ...pins, all: pins.address + pins.enable + pins.input + pins.direct },
    scanTime,
    rate: 1 / scanTime,
    latency: latency(plan.channels, { readAt, scanTime, readTime, debounce }),
    pullUpCurrent: pullUpCurrent(ask.pullUp),
  };
}

/** What is read together: one address of all multiplexers, one channel of one, or all direct lines. */
interface Visit {
  readonly direct: boolean;
  readonly lines: readonly Channel[];
}

function order(channels: readonly Channel[], address: 'shared' | 'single'): readonly Visit[] {
  const at = new Map<number, Channel[]>();
  const direct: Channel[] = [];
  for (const channel of channels) {
    const { place } = channel;
    if (place.kind === 'pin') direct.push(channel);
    else {
      // One multiplexer after the other, or all of them side by side.
      const key = address === 'shared' ? place.address : 16 * place.multiplexer + place.address;
      at.set(key, [...(at.get(key) ?? []), channel]);
    }
  }
  const visits = [...at].sort(([a], [b]) => a - b).map(([, lines]): Visit => ({ direct: false, lines }));
  return direct.length > 0 ? [...visits, { direct: true, lines: direct }] : visits;
}

/** A line is sampled at the start of its reading. */
function latency(
  channels: readonly Channel[],
  scan: {
    readonly readAt: ReadonlyMap<string, number>;
    readonly scanTime: number;
    readonly readTime: number;
    readonly debounce: number;
  },
): ScanPlan['latency'] {
  const { scanTime, debounce } = scan;
  const sampled = (line: 'row' | 'column') =>
    channels
      .filter((channel) => channel.line.line === line)
      .map(({ line: { name } }) => scan.readAt.get(name)! - scan.readTime);
  const rows = sampled('row');
  const columns = sampled('column');
  // Where one kind is missing, a line is a key by itself.
  const earlier =
    rows.length === 0 || columns.length === 0
      ? [...rows, ...columns]
      : rows.flatMap((r) => columns.map((c) => Math.min(r, c)));
  const mean = earlier.reduce((sum, t) => sum + t, 0) / earlier.length;
  return {
    mean: debounce * scanTime + scanTime / 2 - mean,
    worst: debounce * scanTime + scanTime - Math.min(...earlier),
  };
}

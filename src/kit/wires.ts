/** Every wire of a panel with its number: the net list that lists, tables and the diagram share. */
import { mainGauge } from '../layout/main-gauge.js';
import { layScan } from '../layout/scan.js';
import { supplyFigures } from '../layout/supply.js';
import type { ChannelRow } from '../optics/scan-plan.js';
import type { Spec } from '../spec/spec.js';
import { fromBoards } from './board-wires.js';
import type { Net, Wire } from './net.js';
import type { Kit } from './types.js';
import { cutLength, routeLength, wireRuns } from './wire-lengths.js';

/** Emitters that are lit line by line: outputs of a switch, each of which takes one emitter's current to ground. Source: common practice. */
export const SWITCHED = 8;
/** How such a switch is told: a shift register's lines, led on from one to the next. Source: common practice. */
export const SERIAL = ['data', 'clock', 'latch'] as const;

/** Are the emitters lit line by line? */
export const isSwitched = ({ scan }: Pick<Spec, 'scan'>): boolean => scan.lightUs > 0;

/** @returns where a receiver is read: the other end of its signal's wire */
export const channelEnd = ({ place }: Pick<ChannelRow, 'place'>): string =>
  place.kind === 'pin' ? `controller P${place.pin}` : `multiplexer ${place.multiplexer} Y${place.address}`;

/** @returns all wires in the order of their numbers */
export function netsOf(spec: Spec): readonly Net[] {
  const { gauge } = spec.supply;
  const main = mainGauge(spec, routeLength(null, { posts: [] }));
  const net = (name: string, to: string, more: Partial<Pick<Net, 'from' | 'gauge' | 'along'>> = {}) => ({
    name,
    from: name,
    to,
    gauge,
    along: null,
    ...more,
  });
  const plan = layScan(spec);
  const chips = plan.multiplexers.map((_, chip) => chip);
  const switches = isSwitched(spec) ? Math.ceil(plan.table.length / SWITCHED) : 0;
  const resistor = Math.ceil(supplyFigures(spec, 0).resistor);
  // Three legs: supply, ground, signal; two: ground and signal.
  const third = spec.receivers.part.legs.value > 2;
  const supplied = (what: string) => [net(`${what} plus`, 'supply plus'), net(`${what} minus`, 'supply minus')];
  /** From the controller to the first, and on from each to the next. */
  const chain = (kind: string, index: number, { pin, at = pin, on = pin }: Chained) =>
    net(`${kind} ${index} ${pin}`, `${kind} ${index} ${pin}`, {
      from: index === 0 ? `controller ${at}` : `${kind} ${index - 1} ${on}`,
    });

  const nets = [
    ...plan.table.flatMap(({ line: { name: beam } }, i) => {
      const along = { beam, end: 'emitter' } as const;
      return [
        net(`${beam} emitter plus`, resistor > 0 ? `supply plus through ${resistor} Ω` : 'supply plus', { along }),
        net(
          `${beam} emitter minus`,
          switches > 0 ? `switch ${Math.floor(i / SWITCHED)} Q${i % SWITCHED}` : 'supply minus',
          { along },
        ),
      ];
    }),
    ...plan.table.flatMap((row) => {
      const beam = row.line.name;
      const along = { beam, end: 'receiver' } as const;
      return [
        ...(third ? [net(`${beam} receiver plus`, 'supply plus', { along })] : []),
        net(`${beam} receiver minus`, 'supply minus', { along }),
        net(`${beam} receiver signal`, channelEnd(row), { along }),
      ];
    }),
    ...chips.flatMap((chip) => [
      ...addressPins(plan.pins.address).map((pin) => chain('multiplexer', chip, { pin })),
      ...(plan.pins.enable > 0 ? [net(`multiplexer ${chip} EN`, `controller EN${chip}`)] : []),
      plan.pins.input === chips.length
        ? net(`multiplexer ${chip} Z`, `controller IN${chip}`)
        : chain('multiplexer', chip, { pin: 'Z', at: 'IN0' }),
      ...supplied(`multiplexer ${chip}`),
    ]),
    ...Array.from({ length: switches }, (_, index) => [
      ...SERIAL.map((pin) => chain('switch', index, { pin, ...(pin === 'data' && { on: 'data on' }) })),
      ...supplied(`switch ${index}`),
    ]).flat(),
    ...supplied('controller'),
    ...(spec.supply.batteryMah === undefined
      ? []
      : [
          net('battery plus', 'converter in plus, through a fuse', { gauge: main }),
          net('battery minus', 'converter in minus', { gauge: main }),
        ]),
    ...supplied(sourceOf(spec)).map((one) => ({ ...one, gauge: main })),
  ];
  return nets.map((one, i) => ({ id: `W${i + 1}`, ...one }));
}

interface Chained {
  readonly pin: string;
  /** The controller's pin, and the pin from which it goes on to the next one; both named alike unless given. */
  readonly at?: string;
  readonly on?: string;
}

/** What feeds the panel's supply. */
export const sourceOf = ({ supply }: Pick<Spec, 'supply'>): 'converter' | 'power supply' =>
  supply.batteryMah === undefined ? 'power supply' : 'converter';

export const addressPins = (count: number): readonly string[] => Array.from({ length: count }, (_, bit) => `A${bit}`);

/** @returns the wires with their lengths by the kit's routes */
export function wiresOf({
  kit,
  spec,
}: {
  readonly kit: Parameters<typeof wireRuns>[0] & Pick<Kit, 'boards'>;
  readonly spec: Spec;
}): readonly Wire[] {
  const runs = new Map(wireRuns(kit).map(({ beam, end, length }) => [`${beam} ${end}`, length] as const));
  const inside = routeLength(null, { posts: [] });
  const wires = netsOf(spec).map((net): Wire => {
    const exact = net.along === null ? inside : runs.get(`${net.along.beam} ${net.along.end}`);
    return { ...net, length: exact === undefined ? null : cutLength(exact) };
  });
  return fromBoards(wires, kit.boards);
}

/** @returns the wire of a name @throws {Error} where there is none */
export function wireNamed<T extends Net>(wires: readonly T[]): (name: string) => T {
  const byName = new Map(wires.map((wire) => [wire.name, wire] as const));
  return (name) => {
    const wire = byName.get(name);
    if (wire === undefined) throw new Error(`there is no wire ${name}`);
    return wire;
  };
}

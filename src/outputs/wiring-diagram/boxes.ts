/** What the diagram's boxes are, from the top: controller, multiplexers with their lines, lines on pins of their own, switches. */
import { servedBy } from '../../kit/board-wires.js';
import type { Net } from '../../kit/net.js';
import type { BoardsOfKit } from '../../kit/types.js';
import { addressPins, isSwitched, netsOf, SERIAL, SWITCHED, wireNamed } from '../../kit/wires.js';
import { layScan } from '../../layout/scan.js';
import { supplyFigures } from '../../layout/supply.js';
import type { ChannelRow } from '../../optics/scan-plan.js';
import type { Spec } from '../../spec/spec.js';
import type { Chip, Pin } from './chip.js';
import type { LineRow } from './line-row.js';

export interface Box extends Pick<Chip, 'title' | 'left' | 'right'> {
  /** Lines that are read at its right side; where there are some, it has no other pins there. */
  readonly lines: readonly LineRow[];
}

/** @returns the boxes, and the wires that run down beside them from the controller, by the controller's pin */
export function boxesOf(
  spec: Spec,
  boards?: BoardsOfKit,
): { readonly buses: readonly string[]; readonly boxes: readonly Box[] } {
  const plan = layScan(spec);
  const named = wireNamed(netsOf(spec));
  const served = servedBy(boards);
  const wire = (name: string) => named(served(name));
  const id = (name: string) => wire(name).id;
  const chips = plan.multiplexers.length;
  const switches = isSwitched(spec) ? Math.ceil(plan.table.length / SWITCHED) : 0;
  // One output line for all, of which one multiplexer at a time has the use.
  const common = plan.pins.input < chips;
  const enabled = plan.pins.enable > 0;
  const addresses = addressPins(plan.pins.address);
  const buses = [...addresses, ...(common ? ['IN0'] : []), ...(switches > 0 ? SERIAL : [])];
  const poles = (what: string): readonly Pin[] => [
    { name: '+', wire: id(`${what} plus`), on: { kind: 'plus' } },
    { name: '−', wire: id(`${what} minus`), on: { kind: 'minus' } },
  ];
  const ohms = Math.ceil(supplyFigures(spec, 0).resistor);
  const resistor = ohms > 0 ? ohm(ohms) : null;
  const rows = (own: readonly ChannelRow[]) => own.map((row) => lineOf(row, { spec, wire, resistor }));

  const controller: Box = {
    title: 'Controller',
    left: [...buses.map((net) => bus(net, { net, wire: null })), ...poles('controller')],
    right: plan.multiplexers.flatMap((_, k) => [
      ...(common ? [] : [flag(`IN${k}`, id(`multiplexer ${k} Z`), `multiplexer ${k} Z`)]),
      ...(enabled ? [flag(`EN${k}`, id(`multiplexer ${k} EN`), `multiplexer ${k} EN`)] : []),
    ]),
    lines: [],
  };
  const multiplexers = plan.multiplexers.map((board, k): Box => {
    const own = plan.table.filter(({ place }) => place.kind === 'multiplexer' && place.multiplexer === k);
    const out = id(`multiplexer ${k} Z`);
    return {
      title: `Multiplexer ${k}: ${own.length} of ${spec.scan.channels} channels, receivers on the ${board} side`,
      left: [
        ...addresses.map((net) => bus(net, { net, wire: id(`multiplexer ${k} ${net}`) })),
        ...(enabled ? [flag('EN', id(`multiplexer ${k} EN`), `EN${k}`)] : []),
        common ? bus('Z', { net: 'IN0', wire: out }) : flag('Z', out, `IN${k}`),
        ...poles(`multiplexer ${k}`),
        // Always enabled: joined to ground where it stands, by no wire.
        ...(enabled ? [] : [{ name: 'EN', wire: null, on: { kind: 'minus' } } as const]),
      ],
      right: [],
      lines: rows(own),
    };
  });
  const direct = plan.table.filter(({ place }) => place.kind === 'pin');
  const own: readonly Box[] =
    direct.length === 0
      ? []
      : [{ title: 'Controller again: lines on pins of their own', left: [], right: [], lines: rows(direct) }];
  const drivers = Array.from(
    { length: switches },
    (_, k): Box => ({
      title: `Switch ${k}: a shift register whose outputs take the emitters’ currents to ground`,
      left: [
        ...SERIAL.map((net) => bus(net, { net, wire: id(`switch ${k} ${net}`) })),
        ...(k < switches - 1 ? [bus('data on', { net: 'data', wire: null })] : []),
        ...poles(`switch ${k}`),
      ],
      right: plan.table
        .slice(SWITCHED * k, SWITCHED * (k + 1))
        .map(({ line: { name } }, q) => flag(`Q${q}`, id(`${name} emitter minus`), `${name} emitter`)),
      lines: [],
    }),
  );
  return { buses, boxes: [controller, ...multiplexers, ...own, ...drivers] };
}

const bus = (name: string, { net, wire }: { readonly net: string; readonly wire: string | null }): Pin => ({
  name,
  wire,
  on: { kind: 'bus', net },
});

const flag = (name: string, wire: string, to: string): Pin => ({ name, wire, on: { kind: 'flag', text: to } });

function lineOf(
  { line: { name }, place, pullUp }: ChannelRow,
  {
    spec,
    wire,
    resistor,
  }: { readonly spec: Spec; readonly wire: (name: string) => Net; readonly resistor: string | null },
): LineRow {
  const id = (what: string) => wire(`${name} ${what}`).id;
  return {
    name,
    pin: place.kind === 'pin' ? `P${place.pin}` : `Y${place.address}`,
    pullUp: ohm(pullUp),
    receiver: {
      signal: id('receiver signal'),
      plus: spec.receivers.part.legs.value > 2 ? id('receiver plus') : null,
      minus: id('receiver minus'),
    },
    emitter: {
      plus: id('emitter plus'),
      minus: id('emitter minus'),
      resistor,
      onto: isSwitched(spec) ? wire(`${name} emitter minus`).to : null,
    },
  };
}

/** Whole ohms as they are, thousands and millions by their sign. */
const ohm = (value: number): string =>
  value >= 1e6 ? `${value / 1e6} MΩ` : value >= 1e3 ? `${value / 1e3} kΩ` : `${value} Ω`;

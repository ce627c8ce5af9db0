/** `wiring.svg`: the whole panel's circuit, a box for each multiplexer with its lines beside it, one under the other. */
import type { BoardsOfKit } from '../../kit/types.js';
import { netsOf, sourceOf, wireNamed } from '../../kit/wires.js';
import { layScan } from '../../layout/scan.js';
import { supplyFigures } from '../../layout/supply.js';
import type { Vec2 } from '../../solid/mesh.js';
import type { Spec } from '../../spec/spec.js';
import type { Output } from '../context.js';
import { tag, text } from '../report/html.js';
import { type Box, boxesOf } from './boxes.js';
import { CHIP_FOOT, CHIP_HEAD, CHIP_WIDTH, chip } from './chip.js';
import { FONT, group, type Ink, line, rightEnd } from './ink.js';
import { LINE_HIGH, lineRow } from './line-row.js';
import { SOURCE_HIGH, type Source, sourceMarks } from './source.js';

/** Around everything [px]. */
const EDGE = 8;
/** Between wires that run down beside the boxes, and from the last of them to the boxes. */
const BUS = 16;
const GUTTER = 128;

export const wiringSvg: Output = ({ spec, kit: { boards } }) => [
  { path: 'wiring.svg', bytes: new TextEncoder().encode(wiringDiagram(spec, { alone: true, boards })) },
];

/** A file of its own brings its colours for light and dark. */
const STYLE =
  '<style>:root{color:#1b242c;background:#fbfaf7}@media (prefers-color-scheme:dark){:root{color:#e9edf0;background:#14181c}}.head{font-weight:600}</style>\n';

/**
 * @param boards - whose pads the wires of several lines start at; left out: none
 * @param alone - a file of its own; else it takes colour and letters of the page around it
 * @returns the diagram as SVG
 */
export function wiringDiagram(
  spec: Spec,
  { alone, boards }: { readonly alone: boolean; readonly boards?: BoardsOfKit | undefined },
): string {
  const { width, height, groups } = drawn(spec, boards);
  const { table, multiplexers, pins } = layScan(spec);
  const about = `${table.length} lines, each from its emitter over its receiver with a pull-up to where it is read; multiplexers: ${multiplexers.length} of ${spec.scan.channels} channels; pins of the controller for single lines: ${pins.direct}. Wires are numbered as in wires.csv, where each stands with both its ends in words${boards ? '; lines on one board share its wires of supply and ground' : ''}.`;
  const svg = tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'wiring',
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-labelledby': 'wiring-title',
      'aria-describedby': 'wiring-about',
      fill: 'currentColor',
      'font-size': FONT,
      'font-family': 'system-ui, "Segoe UI", "DejaVu Sans", sans-serif',
    },
    `\n<title id="wiring-title">${text(`${spec.title}: wiring diagram`)}</title>\n<desc id="wiring-about">${text(about)}</desc>\n${alone ? STYLE : ''}${groups.join('\n')}\n`,
  );
  return `${svg}\n`;
}

function drawn(
  spec: Spec,
  boards: BoardsOfKit | undefined,
): { readonly width: number; readonly height: number; readonly groups: readonly string[] } {
  const { buses, boxes } = boxesOf(spec, boards);
  const busX = (net: string) => EDGE + 8 + BUS * buses.indexOf(net);
  const x = EDGE + BUS * buses.length + GUTTER;
  const source = sourceMarks([EDGE, EDGE], sourceFor(spec));
  const placed: Placed[] = [];
  for (const box of boxes) placed.push(placeBox([x, placed.at(-1)?.bottom ?? EDGE + SOURCE_HIGH], { box, busX }));
  const taps = (net: string) => placed.flatMap((one) => one.taps.filter((tap) => tap.net === net).map(({ y }) => y));
  const down = buses.flatMap((net) => busMarks(net, { x: busX(net), taps: taps(net) }));
  const everything = [
    ...source,
    ...placed.flatMap(({ own, lines }) => [...own, ...lines.flatMap(({ marks }) => marks)]),
  ];
  return {
    width: Math.ceil(rightEnd(everything) + EDGE),
    height: Math.ceil(placed.at(-1)!.bottom - CHIP_FOOT + EDGE + 8),
    groups: [
      group(source, { part: 'Supply' }),
      ...placed.flatMap(({ title, own, lines }) => [
        group(own, { part: title }),
        ...lines.map(({ name, marks }) => group(marks, { line: name })),
      ]),
      group(down),
    ],
  };
}

interface Placed {
  readonly title: string;
  readonly own: readonly Ink[];
  readonly lines: readonly { readonly name: string; readonly marks: readonly Ink[] }[];
  /** Where its pins meet the wires that run down beside the boxes. */
  readonly taps: readonly { readonly net: string; readonly y: number }[];
  readonly bottom: number;
}

function placeBox([x, y]: Vec2, { box, busX }: { readonly box: Box; readonly busX: (net: string) => number }): Placed {
  const { marks, pins, bottom } = chip([x, y], { ...box, least: LINE_HIGH * box.lines.length, busX });
  return {
    title: box.title,
    own: marks,
    lines: box.lines.map((row, i) => ({
      name: row.name,
      marks: lineRow([x + CHIP_WIDTH, y + CHIP_HEAD + LINE_HIGH * i], row),
    })),
    taps: box.left.flatMap(({ on }, i) => (on.kind === 'bus' ? [{ net: on.net, y: pins[i]! }] : [])),
    bottom,
  };
}

/** Data is handed from one to the next; everything else goes from the controller past all that take it. */
function busMarks(net: string, { x, taps }: { readonly x: number; readonly taps: readonly number[] }): readonly Ink[] {
  if (net === 'data') return taps.flatMap((y, i) => (i % 2 === 1 ? [line([x, taps[i - 1]!], [x, y])] : []));
  return [line([x, taps[0]!], [x, taps.at(-1)!]), ...taps.slice(1, -1).map((y): Ink => ({ kind: 'dot', at: [x, y] }))];
}

function sourceFor(spec: Spec): Source {
  const wire = wireNamed(netsOf(spec));
  const name = sourceOf(spec);
  const { batteryMah, batteryV } = spec.supply;
  return {
    name,
    volts: `${spec.scan.supplyV} V`,
    plus: wire(`${name} plus`).id,
    minus: wire(`${name} minus`).id,
    capacitor: `${(1e6 * supplyFigures(spec, 0).capacitor).toFixed(0)} µF`,
    battery:
      batteryMah === undefined || batteryV === undefined
        ? null
        : {
            says: `battery ${batteryV} V, ${batteryMah} mAh`,
            plus: wire('battery plus').id,
            minus: wire('battery minus').id,
          },
  };
}

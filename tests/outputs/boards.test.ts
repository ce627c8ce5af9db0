/** Board files read back by readers of others: dxf-parser for DXF, linkedom for SVG. */
import * as dxfParser from 'dxf-parser';
import { DOMParser } from 'linkedom';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Kit } from '../../src/kit/types.js';
import { wiresOf } from '../../src/kit/wires.js';
import type { Board, BoardHole } from '../../src/layout/boards/types.js';
import { boardFiles } from '../../src/outputs/boards/board-files.js';
import type { OutputContext } from '../../src/outputs/context.js';
import { kitJson } from '../../src/outputs/kit-json.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { partsCsv } from '../../src/outputs/parts-csv.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { draw, openWorkshop, shipped } from '../kit/make.js';
import { sampleInputs } from './sample-kit.js';

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly d: number;
  readonly layer: string;
}

const round = (value: number) => Math.round(value * 1e4) / 1e4 + 0;
const sorted = (circles: readonly Circle[]) =>
  circles
    .map(({ x, y, d, layer }) => ({ x: round(x), y: round(y), d: round(d), layer }))
    .sort((a, b) => a.x - b.x || a.y - b.y || a.d - b.d);

// Node gives the package's class as the default of its module; its types say that it is a name within.
const { default: DxfParser } = dxfParser as unknown as { readonly default: typeof dxfParser.DxfParser };

function readDxf(text: string) {
  const dxf = new DxfParser().parseSync(text)!;
  const entities = dxf.entities as unknown as {
    readonly type: string;
    readonly layer: string;
    readonly center: { readonly x: number; readonly y: number };
    readonly radius: number;
    readonly vertices: readonly { readonly x: number; readonly y: number }[];
    readonly shape: boolean;
  }[];
  return {
    layers: Object.keys(dxf.tables.layer.layers),
    version: dxf.header.$ACADVER,
    circles: entities
      .filter(({ type }) => type === 'CIRCLE')
      .map(({ center, radius, layer }) => ({ x: center.x, y: center.y, d: 2 * radius, layer })),
    rings: entities
      .filter(({ type }) => type === 'POLYLINE')
      .map(({ layer, vertices, shape }) => ({ layer, closed: shape, points: vertices.map(({ x, y }) => [x, y]) })),
    others: entities.filter(({ type }) => type !== 'CIRCLE' && type !== 'POLYLINE'),
  };
}

function readSvg(text: string) {
  const document = new DOMParser().parseFromString(text, 'image/svg+xml');
  const root = document.querySelector('svg')!;
  const size = ['width', 'height'].map((name) => root.getAttribute(name)!);
  const view = root.getAttribute('viewBox')!.split(' ').map(Number);
  const turned = root.querySelector('g[transform]')!.getAttribute('transform')!;
  const [a, b, c, d, e, f] = /matrix\(([^)]*)\)/.exec(turned)![1]!.split(' ').map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const circles = [...root.querySelectorAll('circle')].map((circle): Circle => {
    const [x, y, r] = ['cx', 'cy', 'r'].map((name) => Number(circle.getAttribute(name))) as [number, number, number];
    // As seen on paper, y downward from the sheet's top.
    return { x: a * x + c * y + e, y: b * x + d * y + f, d: 2 * r, layer: circle.parentElement!.getAttribute('id')! };
  });
  return { size, view, circles, polygons: root.querySelectorAll('polygon').length };
}

const hole = (x: number, y: number, d: number, plated: boolean): BoardHole => ({
  x,
  y,
  d,
  plated,
  use: plated ? 'pad' : 'mounting',
  label: plated ? 'supply <1> & "2"' : 'M2.5',
  ring: 1,
});
/** Board 50 × 20, and a panel that holds it lying and, 10 to the right of that, upright. */
const own: Board = {
  id: 'carrier-1',
  title: 'invented, 1 place',
  kind: 'receiver',
  length: 50,
  height: 20,
  thickness: 1.2,
  beams: [25],
  holes: [hole(5, 4, 0.9, true), hole(45, 16.5, 2.9, false)],
  strips: [],
};
const kit = {
  boards: {
    boards: [own],
    panels: {
      designs: [
        {
          id: 'panel-1',
          spots: [
            { id: 'carrier-1', x: 0, y: 3, turned: false },
            { id: 'carrier-1', x: 60, y: 0, turned: true },
          ],
          width: 80,
          height: 50,
          order: 4,
        },
      ],
      spare: 0,
      waste: 0.5,
    },
    places: [{ board: 'carrier-1', placement: 'near-board', beams: ['column-2'] }],
    legLength: 9,
  },
} as unknown as Kit;
const textOf = (files: ReturnType<typeof boardFiles>, path: string) =>
  new TextDecoder().decode(files.find((file) => file.path === path)!.bytes);

describe('one board and its panel, by hand', () => {
  const files = boardFiles({ kit } as OutputContext);
  const boardHoles = [
    { x: 5, y: 4, d: 0.9, layer: 'DRILL-PLATED' },
    { x: 45, y: 16.5, d: 2.9, layer: 'DRILL-UNPLATED' },
  ];
  // Upright, a quarter turn counter-clockwise: (x, y) comes to (60 + 20 − y, x).
  const panelHoles = [
    { x: 5, y: 7, d: 0.9, layer: 'DRILL-PLATED' },
    { x: 45, y: 19.5, d: 2.9, layer: 'DRILL-UNPLATED' },
    { x: 63.5, y: 45, d: 2.9, layer: 'DRILL-UNPLATED' },
    { x: 76, y: 5, d: 0.9, layer: 'DRILL-PLATED' },
  ];

  test('files: two of each, and one table', () => {
    expect(files.map(({ path }) => path)).toEqual([
      'boards/carrier-1.dxf',
      'boards/carrier-1.svg',
      'boards/panel-1.dxf',
      'boards/panel-1.svg',
      'boards/holes.csv',
    ]);
    expect(boardFiles({ kit: {} } as OutputContext)).toEqual([]);
  });

  test('DXF, release 12: closed outline, cuts and holes on their layers, nothing else', () => {
    const board = readDxf(textOf(files, 'boards/carrier-1.dxf'));
    expect(board.version).toBe('AC1009');
    expect(board.layers).toEqual(['OUTLINE', 'CUT', 'DRILL-PLATED', 'DRILL-UNPLATED']);
    expect(sorted(board.circles)).toEqual(boardHoles);
    expect(board.rings).toEqual([
      {
        layer: 'OUTLINE',
        closed: true,
        points: [
          [0, 0],
          [50, 0],
          [50, 20],
          [0, 20],
        ],
      },
    ]);
    const panel = readDxf(textOf(files, 'boards/panel-1.dxf'));
    expect(sorted(panel.circles)).toEqual(panelHoles);
    expect(panel.rings).toEqual([
      {
        layer: 'OUTLINE',
        closed: true,
        points: [
          [0, 0],
          [80, 0],
          [80, 50],
          [0, 50],
        ],
      },
      {
        layer: 'CUT',
        closed: true,
        points: [
          [0, 3],
          [50, 3],
          [50, 23],
          [0, 23],
        ],
      },
      {
        layer: 'CUT',
        closed: true,
        points: [
          [60, 0],
          [80, 0],
          [80, 50],
          [60, 50],
        ],
      },
    ]);
    expect([...board.others, ...panel.others]).toEqual([]);
  });

  test('DXF is ASCII in pairs of lines', () => {
    for (const { path, bytes } of files.filter(({ path }) => path.endsWith('.dxf'))) {
      const text = new TextDecoder().decode(bytes);
      expect(/^[\x20-\x7e\r\n]*$/.test(text), path).toBe(true);
      const lines = text.split('\r\n').slice(0, -1);
      expect([lines.length % 2, lines.filter((_, i) => i % 2 === 0).every((code) => /^ *\d+$/.test(code))]).toEqual([
        0,
        true,
      ]);
    }
  });

  test('SVG, 1:1: as on paper, y downward, the same holes', () => {
    const { size, view, circles, polygons } = readSvg(textOf(files, 'boards/panel-1.svg'));
    expect([size, view, polygons]).toEqual([['84mm', '54mm'], [-2, -2, 84, 54], 3]);
    expect(sorted(circles.map((one) => ({ ...one, y: 50 - one.y })))).toEqual(panelHoles);
  });

  test('the table lists board, then panel, with use and label', () => {
    const lines = textOf(files, 'boards/holes.csv').split('\r\n');
    expect(lines.slice(0, 3)).toEqual([
      'board,hole,x_mm,y_mm,diameter_mm,plated,use,label',
      'carrier-1,1,5,4,0.9,yes,pad,"supply <1> & ""2"""',
      'carrier-1,2,45,16.5,2.9,no,mounting,M2.5',
    ]);
    expect(lines.filter((line) => line.startsWith('panel-1'))).toHaveLength(4);
  });
});

describe('a kit with boards', () => {
  const preset = `${shipped('greenhouse-bench')}\nboards: { emitters: true }\n`;
  let context: OutputContext;
  beforeAll(async () => {
    const { kernel, profiles } = await openWorkshop();
    const drawn = draw({ kernel, profiles }, preset);
    const inputs = await sampleInputs([]);
    const made = { ...inputs, kernel, kit: drawn.kit, spec: readPreset(preset, 'greenhouse-bench.yaml') };
    context = makeOutputs({ ...made, outputs: null }).context;
  }, 120_000);

  test('DXF and SVG of every board and panel agree, and hold what kit.json says of each board', () => {
    const files = boardFiles(context);
    const told = JSON.parse(new TextDecoder().decode(kitJson(context)[0]!.bytes));
    expect(told.boards.map(({ id }: { id: string }) => id)).toEqual([
      'supply-board-1',
      'carrier-1',
      'supply-board-2',
      'carrier-2',
    ]);
    let holes = 0;
    for (const name of [...told.boards, ...told.panels].map(({ id }: { id: string }) => id)) {
      const dxf = readDxf(textOf(files, `boards/${name}.dxf`));
      const svg = readSvg(textOf(files, `boards/${name}.svg`));
      const height = Math.max(...dxf.rings[0]!.points.map(([, y]) => y!));
      expect(sorted(svg.circles.map((one) => ({ ...one, y: height - one.y }))), name).toEqual(sorted(dxf.circles));
      const board = told.boards.find(({ id }: { id: string }) => id === name);
      if (!board) continue;
      const plain = (all: readonly { x: number; y: number; d: number }[]) =>
        sorted(all.map(({ x, y, d }) => ({ x, y, d, layer: '' })));
      expect(plain(dxf.circles), name).toEqual(plain(board.holes));
      expect([board.size_mm, board.thickness_mm, board.panel]).toEqual([dxf.rings[0]!.points[2], 1.6, 'panel-1']);
      holes += board.holes.length;
    }
    expect(holes).toBeGreaterThan(100);
    expect(told.boards.map(({ quantity }: { quantity: number }) => quantity)).toEqual([2, 2, 1, 1]);
    expect(told.panels.map(({ id, order }: { id: string; order: number }) => [id, order])).toEqual([['panel-1', 2]]);
  });

  test('a panel holds each board’s holes, distances between them kept', () => {
    const files = boardFiles(context);
    const panel = readDxf(textOf(files, 'boards/panel-1.dxf')).circles;
    const within = (ring: readonly (readonly number[])[], { x, y }: Circle) => {
      const [xs, ys] = [0, 1].map((i) => ring.map((p) => p[i]!)) as [number[], number[]];
      return x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys);
    };
    const cuts = readDxf(textOf(files, 'boards/panel-1.dxf')).rings.filter(({ layer }) => layer === 'CUT');
    const spread = (all: readonly Circle[]) =>
      all.flatMap((a, i) => all.slice(i + 1).map((b) => round(Math.hypot(a.x - b.x, a.y - b.y)))).sort((a, b) => a - b);
    expect(cuts).toHaveLength(4);
    const boards = ['supply-board-1', 'carrier-1', 'supply-board-2', 'carrier-2'].map((id) =>
      spread(readDxf(textOf(files, `boards/${id}.dxf`)).circles),
    );
    for (const { points } of cuts) {
      const own = spread(panel.filter((circle) => within(points as number[][], circle)));
      expect(
        boards.filter((one) => one.length === own.length && one.every((v, i) => Math.abs(v - own[i]!) < 2e-3)),
      ).toHaveLength(1);
    }
  });

  test('parts.csv lists the panels, three socket strips and a pull-up for each receiver', () => {
    const rows = new TextDecoder()
      .decode(partsCsv(context)[0]!.bytes)
      .split('\r\n')
      .map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/));
    const quantity = (id: string) => rows.find((row) => row[1] === id)?.[3];
    expect([quantity('panel-1'), quantity('socket-strip'), quantity('pull-up'), quantity('carrier-1')]).toEqual([
      '2',
      '30',
      '10',
      '2',
    ]);
  });

  test('wires start at pads: a signal for each of ten lines, a pair for each of six boards', () => {
    const wires = wiresOf(context).filter(({ along }) => along !== null);
    expect(wires.filter(({ from }) => / pad line \d+$/.test(from))).toHaveLength(10);
    expect(wires.filter(({ from }) => from.endsWith(' pad supply')).map(({ to }) => to)).toEqual(
      new Array(6).fill('supply plus'),
    );
    expect(wires).toHaveLength(22);
    // The near rail runs from the right: its first board serves columns 5, 4, 3.
    expect(wires.find(({ name }) => name === 'column-5 receiver signal')?.from).toBe('near-board-1 pad line 1');
  });
});

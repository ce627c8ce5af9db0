/** `drawings/plan.svg`: the kit from above with its covers off, beams, keys and sides named. */
import { BREADTH } from '../../kit/printed-legends.js';
import { apply } from '../../solid/matrix.js';
import type { Vec2, Vec3 } from '../../solid/mesh.js';
import type { OutputFile, ShownContext } from '../context.js';
import { VIEWS } from '../picture/camera.js';
import { standing, withoutCovers } from '../standing.js';
import { type Cell, cellsOf } from './cells.js';
import { chained } from './chained.js';
import { across, upright } from './dimension.js';
import { edgesOf, withoutEdges } from './edges.js';
import { lineView } from './line-view.js';
import { type Mark, sheetSvg } from './marks.js';
import { frameMarks, A3 as PAPER, scaleText } from './sheet-frame.js';

const EDGE = 32;
/** Along the longer side: finer than a thin line is wide on paper. */
const SAMPLES = 760;
const SCALES = [2, 1, 1 / 2, 1 / 5, 1 / 10] as const;
/** Screws and nuts are too small to tell apart here. */
const SMALL = /^(iso-|hexagon|nut|pin|socket-head|set-|emitter-wires)|screw|nut/;
const NAME = 1.8;
const SIDE = 2.4;

export const plan = (context: ShownContext): readonly OutputFile[] => [
  { path: 'drawings/plan.svg', bytes: new TextEncoder().encode(planSvg(context)) },
];

function planSvg(context: ShownContext): string {
  const { kit, spec } = context;
  const cells = cellsOf(context);
  const items = withoutCovers(standing(context))
    .filter(({ part }) => !SMALL.test(part.id))
    .map(({ mesh, matrix, part }) => ({
      mesh,
      matrix,
      // Engraved letters a few tenths broad are no lines to read: cells and labels are drawn in their place.
      edges: part.id.startsWith('deck-tile')
        ? withoutEdges(edgesOf(mesh), (point) => inCells(apply(matrix, point), cells))
        : edgesOf(mesh),
    }));
  const { segments, min, max } = lineView(items, VIEWS.top, { samples: SAMPLES });
  const [w, h] = [max[0] - min[0], max[1] - min[1]];
  const scale =
    SCALES.find((one) => one * w <= PAPER[0] - 2 * EDGE && one * h <= PAPER[1] - 2 * EDGE - 14) ?? SCALES.at(-1)!;
  const at: Vec2 = [(PAPER[0] - scale * w) / 2, EDGE];
  const put = ([x, y]: readonly [number, number, ...number[]]): Vec2 => [
    at[0] + scale * (x - min[0]),
    at[1] + scale * (max[1] - y),
  ];
  return sheetSvg(PAPER, {
    title: `${spec.title}: plan, ${scaleText(scale)}`,
    about: `From above, covers off: ${kit.beams.length} beams, ${cells.length} keys, ${w.toFixed(1)} by ${h.toFixed(1)} mm`,
    marks: [
      ...chained(segments).map((points): Mark => ({ kind: 'line', points: points.map(put), pen: 'thin' })),
      ...beamMarks(context, { at, put }),
      ...cells.flatMap((cell) => cellMarks(cell, { put, scale })),
      ...sideMarks(context, { at, size: [scale * w, scale * h] }),
      ...across(at[0], at[0] + scale * w, { y: at[1] + scale * h + 9, edge: at[1] + scale * h, value: w }),
      ...upright(at[1], at[1] + scale * h, { x: at[0] - 16, edge: at[0], value: h }),
      ...frameMarks(
        [
          `${spec.title}: plan, covers off`,
          'Keys with their labels, beams by name, dash-dotted from the emitters to the receivers',
          `Scale ${scaleText(scale)}, mm`,
        ],
        { paper: PAPER, firstAngle: false },
      ),
    ],
  });
}

/** Boundary lines are engraved half beyond the outermost cells. */
const inCells = ([x, y]: Vec3, cells: readonly Cell[]): boolean =>
  cells.some(({ min, max }) => x > min[0] - 1 && x < max[0] + 1 && y > min[1] - 1 && y < max[1] + 1);

type Put = (point: readonly [number, number, ...number[]]) => Vec2;

function beamMarks({ kit }: ShownContext, { at, put }: { readonly at: Vec2; readonly put: Put }): Mark[] {
  return kit.beams.flatMap(({ name, line, from, to }): Mark[] => {
    const [a, b] = [put(from), put(to)];
    // Names stand outside, where nothing else is drawn.
    return [
      { kind: 'line', points: [a, b], pen: 'beam' },
      line === 'column'
        ? { kind: 'text', at: [a[0] + NAME / 2, at[1] - 2], text: name, size: NAME, turn: 90 }
        : { kind: 'text', at: [at[0] - 2, a[1] + NAME / 2], text: name, size: NAME, anchor: 'end' },
    ];
  });
}

function cellMarks({ min, max, label }: Cell, { put, scale }: { readonly put: Put; readonly scale: number }): Mark[] {
  const outline: Mark = {
    kind: 'line',
    points: [put(min), put([max[0], min[1]]), put(max), put([min[0], max[1]]), put(min)],
    pen: 'thin',
  };
  if (label.trim() === '') return [outline];
  const size = Math.min(
    2.5,
    (scale * (max[0] - min[0]) - 2) / (BREADTH * label.length),
    (scale * (max[1] - min[1])) / 4,
  );
  // Below the row's beam; the column's stops around the letters.
  const [x, y] = put([(min[0] + max[0]) / 2, min[1] + (max[1] - min[1]) / 4]);
  return [outline, { kind: 'text', at: [x, y + size / 2], text: label, size, anchor: 'middle', clear: true }];
}

/** Which sides send, and which receive. */
function sideMarks(
  { kit }: ShownContext,
  { at: [x, y], size: [w, h] }: { readonly at: Vec2; readonly size: Vec2 },
): Mark[] {
  const word = (line: 'column' | 'row', axis: 0 | 1) => {
    const beam = kit.beams.find((one) => one.line === line);
    if (!beam) return ['', ''] as const;
    return beam.from[axis] > beam.to[axis]
      ? (['receivers', 'emitters'] as const)
      : (['emitters', 'receivers'] as const);
  };
  const [near, far] = word('column', 1);
  const [left, right] = word('row', 0);
  const text = (place: Vec2, words: string, turn: 0 | 90): Mark[] =>
    words === '' ? [] : [{ kind: 'text', at: place, text: words, size: SIDE, turn }];
  return [
    ...text([x + 2, y - 2], far, 0),
    ...text([x + 2, y + h + 2 + SIDE], near, 0),
    ...text([x - 2, y + h - 2], left, 90),
    ...text([x + w + 2 + SIDE, y + h - 2], right, 90),
  ];
}

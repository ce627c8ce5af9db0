/** `drawings/plan.svg`: the kit from above with its covers off, beams and keys named. `drawings/exploded.svg`: taken apart. */
import { apply, multiply, translation } from '../../solid/matrix.js';
import type { Vec2, Vec3 } from '../../solid/mesh.js';
import { meshBox } from '../../solid/mesh-measures.js';
import type { Output, OutputContext } from '../context.js';
import { takenApart } from '../explode.js';
import { VIEWS } from '../picture/camera.js';
import { standing } from '../standing.js';
import { across, upright } from './dimension.js';
import { edgesOf } from './edges.js';
import { lineView } from './line-view.js';
import { type Mark, sheetSvg } from './marks.js';
import { frameMarks, A3 as PAPER, ring, scaleText } from './sheet-frame.js';

const EDGE = 32;
/** Along the longer side: finer than a thin line is wide on paper. */
const SAMPLES = 760;
const SCALES = [2, 1, 1 / 2, 1 / 5, 1 / 10] as const;
const COVERS = /^(cover|plug|hood)|-cover-screw/;
/** Screws and nuts are too small to tell apart here. */
const SMALL = /^(iso-|hexagon|nut|pin|socket-head|set-|emitter-wires)|screw|nut/;

export const plan: Output = (context) => [
  { path: 'drawings/plan.svg', bytes: new TextEncoder().encode(planSvg(context)) },
  { path: 'drawings/exploded.svg', bytes: new TextEncoder().encode(explodedSvg(context)) },
];

function planSvg(context: OutputContext): string {
  const { kit, spec } = context;
  const items = standing(context)
    .filter(({ name, part }) => !COVERS.test(part.id) && !COVERS.test(name) && !SMALL.test(part.id))
    .map(({ mesh, matrix }) => ({ mesh, matrix, edges: edgesOf(mesh) }));
  const { segments, min, max } = lineView(items, VIEWS.top, { samples: SAMPLES });
  const [w, h] = [max[0] - min[0], max[1] - min[1]];
  const scale =
    SCALES.find((one) => one * w <= PAPER[0] - 2 * EDGE && one * h <= PAPER[1] - 2 * EDGE - 14) ?? SCALES.at(-1)!;
  const at: Vec2 = [(PAPER[0] - scale * w) / 2, EDGE];
  const put = ([x, y]: Vec2): Vec2 => [at[0] + scale * (x - min[0]), at[1] + scale * (max[1] - y)];
  const beams = kit.beams.flatMap(({ name, line, from, to }): Mark[] => {
    const [a, b] = [put([from[0], from[1]]), put([to[0], to[1]])];
    // Names stand outside, where nothing else is drawn.
    const start: Vec2 = line === 'column' ? [a[0] + 0.9, at[1] - 2] : [at[0] - 2, a[1] + 0.9];
    return [
      { kind: 'line', points: [a, b], pen: 'beam' },
      {
        kind: 'text',
        at: start,
        text: name,
        size: 1.8,
        anchor: line === 'column' ? 'start' : 'end',
        ...(line === 'column' ? { turn: 90 as const } : {}),
      },
    ];
  });
  return sheetSvg(PAPER, {
    title: `${spec.title}: plan, ${scaleText(scale)}`,
    about: `From above, covers off: ${kit.beams.length} beams, ${w.toFixed(1)} by ${h.toFixed(1)} mm`,
    marks: [
      ...segments.map(([a, b]): Mark => ({ kind: 'line', points: [put(a), put(b)], pen: 'thin' })),
      ...beams,
      ...across(at[0], at[0] + scale * w, { y: at[1] + scale * h + 9, edge: at[1] + scale * h, value: w }),
      ...upright(at[1], at[1] + scale * h, { x: at[0] - 16, edge: at[0], value: h }),
      ...frameMarks(
        [
          `${spec.title}: plan, covers off`,
          'Beams by name, dash-dotted; what is engraved in the deck is drawn as it is',
          `Scale ${scaleText(scale)}, mm`,
        ],
        { paper: PAPER, firstAngle: false },
      ),
    ],
  });
}

function explodedSvg(context: OutputContext): string {
  const { spec } = context;
  const apart = takenApart(context.kit);
  const shown = standing(context).map((item) => ({
    ...item,
    matrix: multiply(translation(apart.get(item.name)!.by), item.matrix),
  }));
  const items = shown.map(({ mesh, matrix }) => ({ mesh, matrix, edges: edgesOf(mesh) }));
  const { segments, min, max, cover } = lineView(items, VIEWS['iso-front'], { samples: SAMPLES });
  const [w, h] = [max[0] - min[0], max[1] - min[1]];
  const list = 90;
  const scale = Math.min((PAPER[0] - 2 * 16 - list) / w, (PAPER[1] - 50) / h);
  const put = ([x, y]: Vec2): Vec2 => [16 + scale * (x - min[0]), 16 + scale * (max[1] - y)];
  const named = new Map<string, Mark[]>();
  // Of each kind the piece that hides least behind others is numbered.
  const best = new Map<string, { readonly at: Vec2; readonly hidden: number; readonly title: string }>();
  for (const { part, mesh, matrix } of shown) {
    const { min: low, max: high } = meshBox(mesh);
    const middle: Vec3 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
    const half = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) / 2;
    const { at, before } = cover(apply(matrix, middle));
    const hidden = Math.max(0, before - half);
    if (hidden < (best.get(part.id)?.hidden ?? Infinity)) best.set(part.id, { at, hidden, title: part.title });
  }
  for (const [id, { at, hidden, title }] of best) {
    const number = named.size + 1;
    const [x, y] = put(at);
    const line: Mark = {
      kind: 'text',
      at: [PAPER[0] - list - 6, 22 + 5.2 * (number - 1)],
      text: `${number}  ${title}${hidden > 0 ? ' (behind others)' : ''}`,
      size: 2,
    };
    named.set(
      id,
      hidden > 0
        ? [line]
        : [
            { kind: 'line', points: ring([x, y], 2.4), pen: 'thin' },
            { kind: 'text', at: [x, y + 0.9], text: String(number), size: 1.8, anchor: 'middle' },
            line,
          ],
    );
  }
  return sheetSvg(PAPER, {
    title: `${spec.title}: taken apart`,
    about: `Every piece stands off its place along the way it is put in; ${named.size} kinds, numbered`,
    marks: [
      ...segments.map(([a, b]): Mark => ({ kind: 'line', points: [put(a), put(b)], pen: 'thin' })),
      ...[...named.values()].flat(),
      ...frameMarks(
        [
          `${spec.title}: taken apart`,
          'Each piece stands off its place along the way it is put in, later ones farther',
          'Not to scale',
        ],
        { paper: PAPER, firstAngle: false },
      ),
    ],
  });
}

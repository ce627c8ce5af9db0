/** `drawings/exploded.svg`: the kit taken apart, each kind of piece numbered. */
import { apply, multiply, translation } from '../../solid/matrix.js';
import type { Vec2, Vec3 } from '../../solid/mesh.js';
import { meshBox } from '../../solid/mesh-measures.js';
import type { OutputFile, ShownContext } from '../context.js';
import { takenApart } from '../explode.js';
import { VIEWS } from '../picture/camera.js';
import { type Standing, standing } from '../standing.js';
import { chained } from './chained.js';
import { edgesOf } from './edges.js';
import { type LineView, lineView } from './line-view.js';
import { type Mark, sheetSvg } from './marks.js';
import { fitted, frameMarks, A3 as PAPER, ring } from './sheet-frame.js';

/** Along the longer side. */
const SAMPLES = 760;
const EDGE = 16;
/** Breadth of the list of names. */
const LIST = 104;
/** A number's ring, and from its middle to what it names. */
const RING = 2.4;
const AWAY = [7, 11, 15] as const;

export const exploded = (context: ShownContext): readonly OutputFile[] => [
  { path: 'drawings/exploded.svg', bytes: new TextEncoder().encode(explodedSvg(context)) },
];

function explodedSvg(context: ShownContext): string {
  const { spec } = context;
  const apart = takenApart(context.kit);
  const shown = standing(context).map((item) => ({
    ...item,
    matrix: multiply(translation(apart.get(item.name)!.by), item.matrix),
  }));
  const view = lineView(
    shown.map(({ mesh, matrix }) => ({ mesh, matrix, edges: edgesOf(mesh) })),
    VIEWS['iso-front'],
    { samples: SAMPLES },
  );
  const { segments, min, max } = view;
  const room: Vec2 = [PAPER[0] - 2 * EDGE - LIST, PAPER[1] - 50];
  const scale = Math.min(room[0] / (max[0] - min[0]), room[1] / (max[1] - min[1]));
  const put = ([x, y]: Vec2): Vec2 => [EDGE + scale * (x - min[0]), EDGE + scale * (max[1] - y)];
  const kinds = shownBest(shown, view);
  const tips = kinds.filter(({ hidden }) => hidden === 0).map(({ at }) => put(at));
  const rings: Vec2[] = [];
  const step = Math.min(5.2, (PAPER[1] - 66) / kinds.length);
  const callouts = kinds.flatMap(({ title, at, hidden }, i): Mark[] => {
    const name: Mark = {
      kind: 'text',
      at: [PAPER[0] - LIST - 6, 22 + step * i],
      text: fitted(`${i + 1}  ${title}${hidden > 0 ? ' (behind others)' : ''}`, { size: 2, room: LIST - 6 }),
      size: 2,
    };
    if (hidden > 0) return [name];
    const tip = put(at);
    const middle = free(tip, { rings, tips, middle: [EDGE + room[0] / 2, EDGE + room[1] / 2] });
    rings.push(middle);
    const long = Math.hypot(tip[0] - middle[0], tip[1] - middle[1]);
    const start: Vec2 = [
      middle[0] + (RING / long) * (tip[0] - middle[0]),
      middle[1] + (RING / long) * (tip[1] - middle[1]),
    ];
    return [
      { kind: 'line', points: [start, tip], pen: 'leader' },
      { kind: 'line', points: ring(tip, 0.35), pen: 'leader' },
      { kind: 'ring', at: middle, radius: RING },
      { kind: 'text', at: [middle[0], middle[1] + 0.9], text: String(i + 1), size: 1.8, anchor: 'middle' },
      name,
    ];
  });
  return sheetSvg(PAPER, {
    title: `${spec.title}: taken apart`,
    about: `Every piece stands off its place along the way it is put in; ${kinds.length} kinds, numbered`,
    marks: [
      ...chained(segments).map((points): Mark => ({ kind: 'line', points: points.map(put), pen: 'thin' })),
      ...callouts,
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

interface Kind {
  readonly title: string;
  /** In the view [mm]. */
  readonly at: Vec2;
  /** How far something stands before it [mm]. */
  readonly hidden: number;
}

/** Of each kind the piece that hides least behind others. */
function shownBest(shown: readonly Standing[], { cover }: LineView): readonly Kind[] {
  const best = new Map<string, Kind>();
  for (const { part, mesh, matrix } of shown) {
    const { min, max } = meshBox(mesh);
    const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
    const half = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]) / 2;
    const { at, before } = cover(apply(matrix, middle));
    const hidden = Math.max(0, before - half);
    if (hidden < (best.get(part.id)?.hidden ?? Infinity)) best.set(part.id, { at, hidden, title: part.title });
  }
  return [...best.values()];
}

/** A place for a number's ring beside what it names, outward if it can be, clear of other rings and of what they name. */
function free(
  [x, y]: Vec2,
  { rings, tips, middle }: { readonly rings: readonly Vec2[]; readonly tips: readonly Vec2[]; readonly middle: Vec2 },
): Vec2 {
  const outward = Math.atan2(y - middle[1], x - middle[0]);
  const places = AWAY.flatMap((away) =>
    Array.from({ length: 12 }, (_, i): Vec2 => {
      const angle = outward + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * Math.PI) / 6;
      return [x + away * Math.cos(angle), y + away * Math.sin(angle)];
    }),
  );
  const clear = (place: Vec2, of: readonly Vec2[], gap: number) =>
    of.every(([px, py]) => Math.hypot(place[0] - px, place[1] - py) > gap);
  return (
    places.find((place) => inside(place) && clear(place, rings, 2.2 * RING) && clear(place, tips, 1.6 * RING)) ??
    places[0]!
  );
}

const inside = ([x, y]: Vec2): boolean => x > EDGE && x < PAPER[0] - LIST - 10 && y > 14 && y < PAPER[1] - 34;

/** `drawings/PART.svg`: three views, a section and the overall dimensions of each printed part, as it lies on the bed. */
import type { Vec2, Vec3 } from '../../solid/mesh.js';
import type { OutputFile, ShownContext, ShownPart } from '../context.js';
import { quantities } from '../part-figures.js';
import { shapePath } from '../shapes.js';
import { chained } from './chained.js';
import { across, arrow, upright } from './dimension.js';
import { edgesOf } from './edges.js';
import { type LineItem, lineView } from './line-view.js';
import { type Mark, type Pen, sheetSvg } from './marks.js';
import type { Section } from './section.js';
import type { Segment } from './segment.js';
import { A3, A4, FRAME, frameMarks, scaleText, TITLE } from './sheet-frame.js';

/** Between views, where dimensions stand, and from a view to its dimension line. */
const BETWEEN = 16;
const OFF = 10;
/** Of the views' longer side: finer than a line is wide on paper. */
const SAMPLES = 300;
/** ISO 5455. */
const SCALES = [10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10] as const;

export const partSheets = (context: ShownContext): readonly OutputFile[] =>
  [...context.kit.parts.values()]
    .filter(({ kind }) => kind === 'printed')
    .map((part) => ({
      path: `drawings/${part.id}.svg`,
      bytes: new TextEncoder().encode(partSheet(part, context)),
    }));

/** First-angle projection (ISO 5456-2): the view from above stands below the front, that from the left to its right. */
export function partSheet(part: ShownPart, { kit, meshOf, spec, cuts }: Omit<ShownContext, 'compression'>): string {
  const mesh = meshOf(shapePath('stl', part));
  const item = [{ mesh, edges: edgesOf(mesh) }];
  const { box, massG, section } = cuts.get(part.id)!;
  const [w, d, h] = [0, 1, 2].map((k) => box.max[k]! - box.min[k]!) as [number, number, number];
  const { paper, scale } = chosen([w + Math.max(d, section.size[0]), h + Math.max(d, section.size[1])]);
  const left = FRAME + BETWEEN;
  const top = FRAME + BETWEEN;
  const right = left + scale * w + BETWEEN;
  const below = top + scale * h + BETWEEN;
  const plane = `${'xyz'[section.axis]} = ${section.at.toFixed(1)}`;
  const name = `A–A: through ${section.through}, ${plane}`;
  const marks: Mark[] = [
    ...viewMarks(item, [0, -1, 0], { scale, at: [left, top] }),
    ...viewMarks(item, [0, 0, 1], { scale, at: [left, below] }),
    ...viewMarks(item, [-1, 0, 0], { scale, at: [right, top] }),
    ...across(left, left + scale * w, { y: top - OFF, edge: top, value: w }),
    ...upright(top, top + scale * h, { x: left - OFF, edge: left, value: h }),
    ...upright(below, below + scale * d, { x: left - OFF, edge: left, value: d }),
    {
      kind: 'area',
      outlines: section.outlines.map((outline) =>
        outline.map(
          ([x, y]): Vec2 => [
            right + scale * (x - section.min[0]),
            below + scale * (section.min[1] + section.size[1] - y),
          ],
        ),
      ),
    },
    note([right, below - 2], name),
    ...cutMarks(section, {
      across: section.axis === 2 ? top + scale * (box.max[2] - section.at) : below + scale * (box.max[1] - section.at),
      down: left + scale * (section.at - box.min[0]),
      wide: [left, left + scale * w],
      high: [below, below + scale * d],
    }),
    ...frameMarks(
      [
        `${part.id}: ${part.title}`,
        `${quantities(kit).get(part.id) ?? 0} of them, ${part.material}, ${massG.toFixed(1)} g each if solid; as it lies on the bed`,
        `Scale ${scaleText(scale)}, mm, first-angle projection (ISO 5456-2). ${spec.title}`,
      ],
      { paper, firstAngle: true },
    ),
  ];
  return sheetSvg(paper, {
    title: `${part.title}, drawn ${scaleText(scale)}`,
    about: `Front, from above, from the left, and section ${name}; ${w.toFixed(2)} by ${d.toFixed(2)} by ${h.toFixed(2)} mm`,
    marks,
  });
}

/** A4, or A3 where the part is reduced on A4 and less so there. */
function chosen([width, height]: Vec2): { readonly paper: Vec2; readonly scale: number } {
  const onPaper = (paper: Vec2) => {
    const room = [paper[0] - 2 * FRAME - 3 * BETWEEN, paper[1] - 2 * FRAME - TITLE - 3 * BETWEEN] as const;
    const scale = SCALES.find((one) => one * width <= room[0] && one * height <= room[1]) ?? SCALES.at(-1)!;
    return { paper, scale };
  };
  const [small, large] = [onPaper(A4), onPaper(A3)];
  return small.scale >= 1 || large.scale <= small.scale ? small : large;
}

const note = (at: Vec2, text: string): Mark => ({ kind: 'text', at, text, size: 2.5 });

function viewMarks(
  items: readonly LineItem[],
  toEye: Vec3,
  { scale, at }: { readonly scale: number; readonly at: Vec2 },
): Mark[] {
  const { segments, hidden, min, max } = lineView(items, toEye, { samples: SAMPLES, hidden: true });
  const put = ([x, y]: Vec2): Vec2 => [at[0] + scale * (x - min[0]), at[1] + scale * (max[1] - y)];
  const drawn = (of: readonly Segment[], pen: Pen): Mark[] =>
    chained(of).map((points): Mark => ({ kind: 'line', points: points.map(put), pen }));
  return [...drawn(hidden, 'hidden'), ...drawn(segments, 'edge')];
}

/** Where it is cut (ISO 128-3): a chain line, wide at its ends, with arrows the way one looks. */
function cutMarks(
  { axis }: Section,
  {
    across: y,
    down: x,
    wide,
    high,
  }: { readonly across: number; readonly down: number; readonly wide: Vec2; readonly high: Vec2 },
): Mark[] {
  const [beyond, end, shaft] = [5, 3, 5];
  const upright = axis === 0;
  const [from, to] = upright ? [high[0] - beyond, high[1] + beyond] : [wide[0] - beyond, wide[1] + beyond];
  const at = (along: number, off = 0): Vec2 =>
    upright ? [x + off, along] : ([y + off, along].toReversed() as unknown as Vec2);
  // From the left one looks to the right; from the front, in the view from above, up the sheet; from above, in the front view, down it.
  const way = axis === 1 ? -1 : 1;
  return [
    { kind: 'line', points: [at(from), at(to)], pen: 'centre' },
    ...[
      [from, from + end],
      [to - end, to],
    ].flatMap(([a, b], i): Mark[] => {
      const tip = i === 0 ? a! : b!;
      return [
        { kind: 'line', points: [at(a!), at(b!)], pen: 'edge' },
        { kind: 'line', points: [at(tip, -way * shaft), at(tip)], pen: 'thin' },
        ...arrow(at(tip), upright ? [-way, 0] : [0, -way]),
        {
          kind: 'text',
          at: upright ? [x - way * shaft - 1, tip + 1.25] : [tip, y - way * (shaft + 1) + (way > 0 ? 0 : 2.5)],
          text: 'A',
          size: 2.5,
          anchor: upright ? 'end' : 'middle',
        },
      ];
    }),
  ];
}

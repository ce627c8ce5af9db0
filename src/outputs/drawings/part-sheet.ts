/** `drawings/PART.svg`: three views, a section and the overall dimensions of each printed part, as it lies on the bed. */
import type { Part } from '../../kit/types.js';
import { multiply, rotation, translation } from '../../solid/matrix.js';
import type { Box, Outlines, Vec2, Vec3 } from '../../solid/mesh.js';
import type { Output, OutputContext } from '../context.js';
import { partFigures, quantities } from '../part-figures.js';
import { shapePath } from '../shapes.js';
import { across, upright } from './dimension.js';
import { edgesOf } from './edges.js';
import { lineView } from './line-view.js';
import { type Mark, sheetSvg } from './marks.js';

/** A4 lying, its frame and the strip for the title [mm]. */
const PAPER: Vec2 = [297, 210];
const FRAME = 10;
const TITLE = 22;
/** Between views, where dimensions stand, and from a view to its dimension line. */
const BETWEEN = 16;
const OFF = 8;
/** Of the views' longer side: finer than a line is wide on paper. */
const SAMPLES = 360;
/** ISO 5455. */
const SCALES = [10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10] as const;

export const partSheets: Output = (context) =>
  [...context.kit.parts.values()]
    .filter(({ kind }) => kind === 'printed')
    .map((part) => ({
      path: `drawings/${part.id}.svg`,
      bytes: new TextEncoder().encode(partSheet(part, context)),
    }));

export const scaleText = (scale: number): string => (scale >= 1 ? `${scale}:1` : `1:${Math.round(1 / scale)}`);

/** First-angle projection (ISO 5456-2): the view from above stands below the front, that from the left to its right. */
export function partSheet(part: Part, context: Pick<OutputContext, 'kernel' | 'kit' | 'meshOf' | 'spec'>): string {
  const { kernel, kit, meshOf, spec } = context;
  const mesh = meshOf(shapePath('stl', part));
  const item = [{ mesh, edges: edgesOf(mesh) }];
  const box = kernel.box(part.solid);
  const [w, d, h] = [0, 1, 2].map((k) => box.max[k]! - box.min[k]!) as [number, number, number];
  const section = sectionOf(part, box, context);
  const room: Vec2 = [PAPER[0] - 2 * FRAME - 3 * BETWEEN, PAPER[1] - 2 * FRAME - TITLE - 3 * BETWEEN];
  const across2 = Math.max(d, section.size[0]);
  const down2 = Math.max(d, section.size[1]);
  const scale = SCALES.find((one) => one * (w + across2) <= room[0] && one * (h + down2) <= room[1]) ?? SCALES.at(-1)!;
  const left = FRAME + BETWEEN;
  const top = FRAME + BETWEEN;
  const right = left + scale * w + BETWEEN;
  const below = top + scale * h + BETWEEN;
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
    note([right, below - 2], section.name),
    ...frameMarks([
      `${part.id}: ${part.title}`,
      `${quantities(kit).get(part.id) ?? 0} of them, ${part.material}, ${partFigures(part, kernel).massG.toFixed(1)} g each if solid`,
      `${spec.title}. Scale ${scaleText(scale)}, mm, first-angle projection (ISO 5456-2), as it lies on the bed`,
    ]),
  ];
  return sheetSvg(PAPER, {
    title: `${part.title}, drawn ${scaleText(scale)}`,
    about: `Front, from above, from the left, and ${section.name}; ${w.toFixed(2)} by ${d.toFixed(2)} by ${h.toFixed(2)} mm`,
    marks,
  });
}

const note = (at: Vec2, text: string): Mark => ({ kind: 'text', at, text, size: 2.5 });

/** Frame and title at the foot of a sheet. */
export function frameMarks(lines: readonly string[], [width, height]: Vec2 = PAPER): Mark[] {
  const foot = height - FRAME - TITLE + 6;
  return [
    {
      kind: 'line',
      points: [
        [FRAME, FRAME],
        [width - FRAME, FRAME],
        [width - FRAME, height - FRAME],
        [FRAME, height - FRAME],
        [FRAME, FRAME],
      ],
    },
    {
      kind: 'line',
      points: [
        [FRAME, foot - 5],
        [width - FRAME, foot - 5],
      ],
      pen: 'thin',
    },
    ...lines.map((text, i): Mark => ({ kind: 'text', at: [FRAME + 3, foot + 5 * i], text, size: i === 0 ? 3 : 2.4 })),
  ];
}

function viewMarks(
  items: Parameters<typeof lineView>[0],
  toEye: Vec3,
  { scale, at }: { readonly scale: number; readonly at: Vec2 },
): Mark[] {
  const { segments, min, max } = lineView(items, toEye, SAMPLES);
  const put = ([x, y]: Vec2): Vec2 => [at[0] + scale * (x - min[0]), at[1] + scale * (max[1] - y)];
  return segments.map(([a, b]): Mark => ({ kind: 'line', points: [put(a), put(b)] }));
}

interface Section {
  readonly name: string;
  readonly outlines: Outlines;
  readonly min: Vec2;
  readonly size: Vec2;
}

/** The mount in the plane of its beam, which lies flat in print, through leaf, bore and screws; others upright through their middle. */
function sectionOf(part: Part, { min, max }: Box, { kernel }: Pick<OutputContext, 'kernel'>): Section {
  const flat = part.id === 'tilt-mount';
  const middle = flat ? (min[2] + max[2]) / 2 : (min[1] + max[1]) / 2;
  // Upright: the height becomes y.
  const toFlat = multiply(rotation('x', -Math.PI / 2), translation([0, -middle, 0]));
  const outlines = flat ? kernel.section(part.solid, middle) : kernel.section(kernel.move(part.solid, toFlat), 0);
  const points = outlines.flat();
  const x = points.map(([one]) => one);
  const y = points.map(([, one]) => one);
  const low: Vec2 = points.length === 0 ? [0, 0] : [least(x), least(y)];
  const high: Vec2 = points.length === 0 ? [0, 0] : [-least(x.map((one) => -one)), -least(y.map((one) => -one))];
  return {
    name: flat
      ? `section half way up, z = ${middle.toFixed(1)}`
      : `section through the middle, y = ${middle.toFixed(1)}`,
    outlines,
    min: low,
    size: [high[0] - low[0], high[1] - low[1]],
  };
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);

/** Where a part is cut for its drawing: along a beam, else a screw, where one passes through it, else through its middle. */
import { cross } from '../../checks/vectors.js';
import type { Kit, Part, Screw } from '../../kit/types.js';
import type { MeasuringKernel } from '../../solid/kernel.js';
import { apply, applyDirection, invertRigid } from '../../solid/matrix.js';
import type { Box, Matrix, Outlines, Vec2, Vec3 } from '../../solid/mesh.js';
import { partFigures } from '../part-figures.js';
import { cameraAxes } from '../picture/camera.js';

export interface Section {
  /** The plane: this coordinate of the file is `at` everywhere in it. */
  readonly axis: 0 | 1 | 2;
  readonly at: number;
  readonly through: string;
  /** As seen from the left, the front or above: x to the right, y up [mm]. */
  readonly outlines: Outlines;
  readonly min: Vec2;
  readonly size: Vec2;
}

/** The eye from which a cut across an axis is looked at: the drawing's own views. */
const EYES = [
  [-1, 0, 0],
  [0, -1, 0],
  [0, 0, 1],
] as const satisfies readonly Vec3[];

/** What a part's sheet shows of its solid. */
export interface PartCut {
  readonly box: Box;
  readonly massG: number;
  readonly section: Section;
}

/** @returns of each printed part */
export const partCuts = ({
  kit,
  kernel,
}: {
  readonly kernel: MeasuringKernel;
  readonly kit: Kit;
}): ReadonlyMap<string, PartCut> =>
  new Map(
    [...kit.parts.values()]
      .filter(({ kind }) => kind === 'printed')
      .map((part) => [part.id, partCut(part, { kit, kernel })]),
  );

export const partCut = (
  part: Part,
  { kernel, kit }: { readonly kernel: MeasuringKernel; readonly kit: Kit },
): PartCut => ({
  box: kernel.box(part.solid),
  massG: partFigures(part, kernel).massG,
  section: sectionOf(part, { kernel, kit }),
});

export function sectionOf(
  part: Part,
  { kernel, kit }: { readonly kernel: MeasuringKernel; readonly kit: Kit },
): Section {
  const box = kernel.box(part.solid);
  // A beam led on past its ends meets the bay as well, which has nothing to do with it.
  const lines = part.id.startsWith('bay-') ? [] : kit.beams.map(({ from, to }) => [from, to] as const);
  const beam = nearest(part, box, { lines, kit, endless: true });
  if (beam) {
    // Upright, as the kit stands.
    const axis = axisOf(cross(beam.way, beam.up));
    return cut(part, { axis, at: beam.point[axis], through: 'the beam', kernel });
  }
  const screw = nearest(part, box, { lines: kit.screws.map(screwLine), kit, endless: false });
  if (screw) {
    const run = axisOf(screw.way);
    // Of the planes along the screw the one that meets more of the part.
    const extent = AXES.map((axis) => box.max[axis] - box.min[axis]);
    const axis = AXES.filter((one) => one !== run).reduce((a, b) => (extent[b]! <= extent[a]! ? b : a));
    return cut(part, { axis, at: screw.point[axis], through: 'a screw', kernel });
  }
  const [first, second] = ([0, 1] as const).map((axis) =>
    cut(part, { axis, at: (box.min[axis] + box.max[axis]) / 2, through: 'the middle', kernel }),
  );
  // Nothing points to one of them: the outline with more corners tells more.
  return first!.outlines.flat().length > second!.outlines.flat().length ? first! : second!;
}

type Line = readonly [from: Vec3, to: Vec3];

const screwLine = ({ head, direction, lengthMm }: Screw): Line => [
  head,
  [head[0] + lengthMm * direction[0], head[1] + lengthMm * direction[1], head[2] + lengthMm * direction[2]],
];

interface Through {
  /** Of the line, where it is halfway through the part; file coordinates. */
  readonly point: Vec3;
  readonly way: Vec3;
  /** The kit's vertical. */
  readonly up: Vec3;
}

/** The line that passes nearest the part's middle, of those that pass through its box. */
function nearest(
  { id }: Part,
  { min, max }: Box,
  {
    lines,
    kit,
    endless,
  }: {
    readonly lines: readonly Line[];
    readonly kit: Kit;
    /** Beams end at what sends and receives them, inside the rails. */
    readonly endless: boolean;
  },
): Through | null {
  const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
  let best: (Through & { readonly off: number }) | null = null;
  for (const { matrix } of kit.placements.filter(({ part }) => part === id)) {
    const back = invertRigid(matrix);
    const up = applyDirection(back, [0, 0, 1]);
    for (const [from, to] of lines) {
      const [p, q] = [apply(back, from), apply(back, to)];
      const way: Vec3 = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
      const run = axisOf(way);
      if (!endless && (Math.max(p[run], q[run]) <= min[run] || Math.min(p[run], q[run]) >= max[run])) continue;
      const s = (middle[run] - p[run]) / way[run];
      const point: Vec3 = [p[0] + s * way[0], p[1] + s * way[1], p[2] + s * way[2]];
      if (!AXES.every((k) => k === run || (point[k] > min[k] && point[k] < max[k]))) continue;
      const off = Math.hypot(point[0] - middle[0], point[1] - middle[1], point[2] - middle[2]);
      if (off < (best?.off ?? Infinity) - 1e-6) best = { point, way, up, off };
    }
  }
  return best;
}

const AXES = [0, 1, 2] as const;

const axisOf = (v: Vec3): 0 | 1 | 2 =>
  ([0, 1, 2] as const).reduce((best, k) => (Math.abs(v[k]) > Math.abs(v[best]) ? k : best), 0 as 0 | 1 | 2);

function cut(
  part: Part,
  {
    axis,
    at,
    through,
    kernel,
  }: {
    readonly axis: 0 | 1 | 2;
    readonly at: number;
    readonly through: string;
    readonly kernel: MeasuringKernel;
  },
): Section {
  const [x, y, z] = cameraAxes(EYES[axis]);
  const flat: Matrix = [...x, 0, ...y, 0, ...z, -z[axis] * at, 0, 0, 0, 1] as unknown as Matrix;
  const outlines = axis === 2 ? kernel.section(part.solid, at) : kernel.section(kernel.move(part.solid, flat), 0);
  const points = outlines.flat();
  const least = (of: (point: Vec2) => number) => points.reduce((low, point) => Math.min(low, of(point)), Infinity);
  if (points.length === 0) return { axis, at, through, outlines, min: [0, 0], size: [0, 0] };
  const min: Vec2 = [least(([u]) => u), least(([, v]) => v)];
  return {
    axis,
    at,
    through,
    outlines,
    min,
    size: [-least(([u]) => -u) - min[0], -least(([, v]) => -v) - min[1]],
  };
}

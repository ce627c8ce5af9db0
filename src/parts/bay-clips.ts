/** What holds a board without holes: a bar at each of two edges, printed with the tray, and a clip screwed on it. */
import { threads } from '../components/index.js';
import { BOARD_PLAY, CLIP } from '../layout/bay/footprint.js';
import type { ClipBar, PlacedModule } from '../layout/bay/types.js';
import { grown } from '../layout/fits.js';
import type { LayoutWithBay } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec2 } from '../solid/mesh.js';
import { counterClockwise, polygon } from '../solid/outlines.js';
import { box, cylinder, prism } from '../solid/shapes.js';
import { CHEEK } from '../spec/bay.js';
import type { Spec } from '../spec/spec.js';
import { pilotHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;
/** Over the gap that a printer may close. */
const CLOSED = 0.02;

/** Between a clip and what stands behind its bar. */
const BEHIND = 0.5;
/** Between a head and the end of its bar, where a neighbour's may stand. */
const HEAD_AIR = 0.3;

/** Plastic between a clip's hole and its end: two lines of any printer here, and more. */
const BEYOND = 1;

/** @returns the middle of the clip's screw, outward from the board's edge: so far in that head and clip end over the bar [mm] */
export function clipScrewAt(spec: Spec): number {
  const { capHead } = threads[spec.screws.fix];
  return Math.min(
    (BOARD_PLAY + CLIP.depth) / 2 + 0.4,
    CLIP.depth - capHead.value / 2 - HEAD_AIR,
    CLIP.depth - BEHIND - clipHole(spec) - Math.max(BEYOND, 2.2 * spec.printer.machine.lineWidth.value),
  );
}

/** Radius of its hole. */
const clipHole = (spec: Spec): number => grown(spec, threads[spec.screws.fix].clearance.value) / 2;

export function clipBars(
  k: Kernel,
  { bay, spec }: LayoutWithBay,
  {
    placed,
    bars,
    engaged,
    size,
  }: {
    readonly placed: PlacedModule;
    readonly bars: readonly ClipBar[];
    readonly engaged: number;
    /** Of the tray. */
    readonly size: Vec2;
  },
): { add: Solid[]; cut: Solid[] } {
  const top = placed.z + placed.module.part.thickness.value - CLIP.press;
  const add: Solid[] = [];
  const cut: Solid[] = [];
  // A gap to the tray's wall that may come out closed is closed.
  const least = spec.printer.machine.gapTolerance.value + CLOSED;
  const toWall = ([x, y]: Vec2, [ox, oy]: Vec2): number => {
    const gap = Math.abs(ox) > 0.5 ? (ox > 0 ? size[0] - x : x) - bay.wall : (oy > 0 ? size[1] - y : y) - bay.wall;
    return gap > 0 && gap < least ? gap + INTO : 0;
  };
  for (const bar of bars) {
    const half = bar.length / 2 + BOARD_PLAY;
    const wide = half + CLIP.cheek;
    const at = onEdge(bar);
    const [ox, oy] = bar.out;
    const along: Vec2 = [-oy, ox];
    const [first, last, depth] = [
      -wide - toWall(at([-wide, 0]), [oy, -ox]),
      wide + toWall(at([wide, 0]), along),
      CLIP.depth + toWall(at([0, CLIP.depth]), bar.out),
    ];
    const plan = (points: readonly Vec2[]) => polygon(counterClockwise(points.map(at)));
    add.push(
      prism(
        k,
        plan([
          [first, -CLIP.ledge],
          [last, -CLIP.ledge],
          [last, depth],
          [first, depth],
        ]),
        {
          axis: 'z',
          from: bay.floor - INTO,
          to: placed.z,
        },
      ),
      prism(
        k,
        plan([
          [first, -CHEEK],
          [-half, -CHEEK],
          [-half, BOARD_PLAY],
          [half, BOARD_PLAY],
          [half, -CHEEK],
          [last, -CHEEK],
          [last, depth],
          [first, depth],
        ]),
        { axis: 'z', from: bay.floor - INTO, to: top },
      ),
    );
    const [x, y] = at([0, clipScrewAt(spec)]);
    cut.push(pilotHole(k, spec, { at: [x, y, top], way: '-z', depth: engaged + 1 }));
  }
  return { add, cut };
}

/** @returns from (along the edge, outward) to the tray */
export const onEdge =
  ({ at, out }: ClipBar) =>
  ([s, o]: Vec2): Vec2 => [at[0] - s * out[1] + o * out[0], at[1] + s * out[0] + o * out[1]];

/** Clip: x along the edge, y outward from the board's edge, z up from its underside, on which it prints. */
export function drawBoardClip(k: Kernel, spec: Spec): Solid {
  const radius = clipHole(spec);
  const at = clipScrewAt(spec);
  return k.subtract(box(k, [-CLIP.breadth / 2, -CLIP.lap, 0], [CLIP.breadth / 2, CLIP.depth - BEHIND, CLIP.plate]), [
    cylinder(k, { from: [0, at, -OVER], to: [0, at, CLIP.plate + OVER], radius, fit: 'hole' }),
  ]);
}

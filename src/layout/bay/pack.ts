/**
 * Lays modules on one tray's floor. The packer of the printing beds knows neither corners that are taken nor modules that must
 * stand at a wall: here each goes, largest first, where it ends furthest left, at a corner of what lies already.
 */
import type { BayModule } from '../../spec/bay.js';
import { type Footprint, footprints } from './footprint.js';
import type { Rect } from './types.js';

export interface Spot {
  readonly module: BayModule;
  readonly footprint: Footprint;
  /** With its room on all sides, from the floor's inner left corner. */
  readonly cell: Rect;
}

export interface Floor {
  /** Along the row and outward. */
  readonly room: readonly [number, number];
  /** Taken at the left end, and at the right end from it back: bosses. */
  readonly corner: readonly [number, number];
  readonly taken: readonly Rect[];
}

const EPS = 1e-6;
/** Do two rectangles share ground? */
export const crosses = (a: Rect, b: Rect): boolean =>
  a[0] < b[2] - EPS && b[0] < a[2] - EPS && a[1] < b[3] - EPS && b[1] < a[3] - EPS;

/** Ways to sort; the first that is best wins. */
const area = ({ part }: BayModule) => part.length.value * part.width.value;
const longest = ({ part }: BayModule) => Math.max(part.length.value, part.width.value);
const shortest = ({ part }: BayModule) => Math.min(part.length.value, part.width.value);
const ORDERS = [area, longest, shortest] as const;

export interface Packed {
  readonly spots: readonly Spot[];
  readonly left: readonly BayModule[];
  /** Floor used along the row, its right corners included. */
  readonly length: number;
}

/** @returns for each order: what went onto the floor, and what is left */
export function pack(modules: readonly BayModule[], floor: Floor): readonly Packed[] {
  const forms = new Map(modules.map((module) => [module, forFloor(footprints(module))]));
  return ORDERS.map((size) => {
    const rank = (module: BayModule) =>
      (module.at ? 2e6 : forms.get(module)!.some(({ faces }) => faces.length > 0) ? 1e6 : 0) + size(module);
    const queue = [...modules].sort((a, b) => rank(b) - rank(a));
    const spots: Spot[] = [];
    const left: BayModule[] = [];
    for (const module of queue) {
      const spot = find(module, { forms: forms.get(module)!, spots, floor });
      if (spot === null) left.push(module);
      else spots.push(spot);
    }
    return { spots, left, length: usedLength(spots, floor) };
  });
}

/** Only the outer wall is free to plug from, unless a place is pinned. */
function forFloor(all: readonly Footprint[]): readonly Footprint[] {
  const outward = all.filter(({ faces }) => faces.every((wall) => wall === 'outer'));
  return outward.length > 0 ? outward : all;
}

interface Search {
  readonly forms: readonly Footprint[];
  readonly spots: readonly Spot[];
  readonly floor: Floor;
}

function find(module: BayModule, { forms, spots, floor }: Search): Spot | null {
  const { room, taken, corner } = floor;
  const corners: Rect[] = [
    [0, 0, corner[0], corner[1]],
    [0, room[1] - corner[1], corner[0], room[1]],
  ];
  const there = [...spots.map(({ cell }) => cell), ...taken, ...corners];
  let best: Spot | null = null;
  for (const footprint of forms) {
    const { size, margins, faces } = footprint;
    const w = size[0] + margins.left + margins.right;
    const d = size[1] + margins.inner + margins.outer;
    if (d > room[1] + EPS || w > room[0] + EPS) continue;
    const xs = module.at ? [module.at[0] - margins.left] : [0, ...there.map((r) => r[2])].sort((a, b) => a - b);
    const ys = module.at
      ? [module.at[1] - margins.inner]
      : faces.includes('outer')
        ? [room[1] - d]
        : faces.includes('inner')
          ? [0]
          : [0, room[1] - d, ...there.flatMap((r) => [r[3], r[1] - d])].sort((a, b) => a - b);
    for (const x of xs) {
      if (x < -EPS || x + w > room[0] + EPS) continue;
      if (best !== null && x + w >= best.cell[2] - EPS) break;
      const y = ys.find(
        (at) => at >= -EPS && at + d <= room[1] + EPS && !there.some((r) => crosses(r, [x, at, x + w, at + d])),
      );
      if (y === undefined) continue;
      best = { module, footprint, cell: [x, y, x + w, y + d] };
      break;
    }
  }
  return best;
}

/** Where a cell reaches beside the right corners, those come behind it. */
function usedLength(spots: readonly Spot[], { room, corner }: Floor): number {
  return Math.max(
    0,
    ...spots.map(({ cell }) => {
      const beside = cell[1] < corner[1] - EPS || cell[3] > room[1] - corner[1] + EPS;
      return cell[2] + (beside ? corner[0] : 0);
    }),
  );
}

/**
 * Deck tile: key boundaries and labels engraved in its top, ribs below, strips for the splice plates along its seams. It prints
 * face down: the file holds it turned over, x as in the kit from the tile's left, y mirrored, z from its top downward.
 */
import type { DeckTile } from '../layout/deck.js';
import { deckScrewAt } from '../layout/deck-screws.js';
import { sunkRim } from '../layout/frame.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Outlines, Vec2, Vec3 } from '../solid/mesh.js';
import { asHoles, rectangle, shift, together } from '../solid/outlines.js';
import { atPlaces, box, cylinder, prism } from '../solid/shapes.js';
import { pilotHole, sunkHole } from './holes.js';

const OVER = 1;
const ENGRAVED = 0.6;
/** Breadth of the lines between cells. */
export const BOUNDARY = 0.8;
const INTO = 0.2;
/** Plain deck around a screw's head. */
const AROUND_HEAD = 0.9;

/** A label's outline around its middle, with the cell it belongs to: made by whoever has a font. */
export interface Legend {
  readonly at: Vec2;
  readonly outlines: Outlines;
}

/** From file coordinates to the assembly's. */
export const tileMatrix = (tile: DeckTile) => frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [tile.x[0], tile.y[0], 0]);

export function drawDeckTile(
  k: Kernel,
  layout: Layout,
  { tile, legends }: { readonly tile: DeckTile; readonly legends: readonly Legend[] },
): Solid {
  const { section } = layout.frame;
  const { deck, grid } = layout;
  const [x0, x1] = tile.x;
  const [y0, y1] = tile.y;
  const under = -section.deck;
  const deep = under - deck.ribDepth;
  // Ribs run over the whole tile, but for the edges that lie on sills and brackets.
  const rx: [number, number] = [tile.seams.left ? x0 : deck.inset, tile.seams.right ? x1 : grid.width - deck.inset];
  const ry: [number, number] = [tile.seams.near ? y0 : deck.inset, tile.seams.far ? y1 : grid.depth - deck.inset];
  const add: Solid[] = [box(k, [x0, y0, under], [x1, y1, 0])];
  const half = deck.rib / 2;
  const inner = (edges: readonly number[], [from, to]: readonly [number, number]) =>
    edges.filter((e) => e - half > from + 1 && e + half < to - 1);
  for (const x of inner(grid.columnEdges, rx))
    add.push(box(k, [x - half, ry[0], deep], [x + half, ry[1], under + INTO]));
  for (const y of inner(grid.rowEdges, ry)) add.push(box(k, [rx[0], y - half, deep], [rx[1], y + half, under + INTO]));
  const strips: [number, number, number, number][] = [];
  if (tile.seams.left) strips.push([x0, ry[0], x0 + deck.strip, ry[1]]);
  if (tile.seams.right) strips.push([x1 - deck.strip, ry[0], x1, ry[1]]);
  if (tile.seams.near) strips.push([rx[0], y0, rx[1], y0 + deck.strip]);
  if (tile.seams.far) strips.push([rx[0], y1 - deck.strip, rx[1], y1]);
  for (const [a, b, c, d] of strips) add.push(box(k, [a, b, deep], [c, d, under + INTO]));

  const cuts: Solid[] = [];
  // Letters lie inside their cells, clear of the lines: one figure, one cut.
  const letters = legends.map(({ at, outlines }) => shift(outlines, at));
  const screws = deck.splices
    .flatMap(({ screws, along, at: seam }) =>
      screws.flatMap((at) =>
        [-deck.strip / 2, deck.strip / 2].map(
          (off): Vec3 => (along === 'y' ? [seam + off, at, 0] : [at, seam + off, 0]),
        ),
      ),
    )
    .filter(([x, y]) => x > x0 && x < x1 && y > y0 && y < y1);
  if (screws.length > 0) {
    const depth = deck.pilotDepth;
    cuts.push(...atPlaces(k, pilotHole(k, layout.spec, { at: [0, 0, deep], way: '+z', depth }), screws));
  }
  const held = layout.deckHold.screws
    .map((one) => deckScrewAt(layout.deckHold, one, grid))
    .filter(([x, y]) => x > x0 && x < x1 && y > y0 && y < y1);
  const engraved = prism(k, together(boundaries(layout, tile), ...letters), { axis: 'z', from: -ENGRAVED, to: OVER });
  const crossed = held.filter((at) => onLine(layout, at));
  cuts.push(
    crossed.length > 0
      ? k.subtract(
          engraved,
          crossed.map((at) => aroundHead(k, layout, at)),
        )
      : engraved,
  );
  if (held.length > 0) {
    const hole = sunkHole(k, layout.spec, { at: [0, 0, 0], way: '-z', depth: section.deck + OVER });
    cuts.push(
      ...atPlaces(
        k,
        hole,
        held.map(([x, y]) => [x, y, 0]),
      ),
    );
  }
  const drawn = k.subtract(k.union(add), cuts);
  return k.move(drawn, frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [-x0, y0, 0]));
}

/** Does a line between cells come so near to a screw's head? */
function onLine({ grid, spec }: Layout, [x, y]: Vec2): boolean {
  const half = BOUNDARY / 2;
  const radius = sunkRim(spec) + AROUND_HEAD - 0.05;
  const out = (at: number, from: number, to: number) => Math.max(0, from - half - at, at - to - half);
  const [ex, ey] = [grid.columnEdges, grid.rowEdges];
  return (
    ex.some((e) => Math.hypot(out(x, e, e), out(y, ey[0]!, ey.at(-1)!)) < radius) ||
    ey.some((e) => Math.hypot(out(x, ex[0]!, ex.at(-1)!), out(y, e, e)) < radius)
  );
}

/** A line that ran into a countersink would leave a tongue of the layer over it, held on one side. */
function aroundHead(k: Kernel, { spec }: Layout, [x, y]: Vec2): Solid {
  const radius = sunkRim(spec) + AROUND_HEAD;
  return cylinder(k, { from: [x, y, -ENGRAVED - OVER], to: [x, y, 2 * OVER], radius, fit: 'pin' });
}

/** The lines between cells and around them, as far as they lie on the tile: one figure, as boxes that cross leave slivers. */
function boundaries({ grid }: Layout, tile: DeckTile): Outlines {
  const half = BOUNDARY / 2;
  const [ex, ey] = [grid.columnEdges, grid.rowEdges];
  const inX = (v: number) => Math.min(Math.max(v, tile.x[0]), tile.x[1]);
  const inY = (v: number) => Math.min(Math.max(v, tile.y[0]), tile.y[1]);
  // A tile's own edge is passed, so that the groove runs out of it.
  const past = (v: number, edge: number, by: number) => (v === edge ? v + by : v);
  const outer = rectangle(
    past(inX(ex[0]! - half), tile.x[0], -OVER),
    past(inY(ey[0]! - half), tile.y[0], -OVER),
    past(inX(ex.at(-1)! + half), tile.x[1], OVER),
    past(inY(ey.at(-1)! + half), tile.y[1], OVER),
  );
  const cells = ex.slice(1).flatMap((x1, i) =>
    ey.slice(1).flatMap((y1, j): Outlines[] => {
      const cell = [ex[i]! + half, ey[j]! + half, x1 - half, y1 - half] as const;
      const inside = cell[0] >= tile.x[0] && cell[2] <= tile.x[1] && cell[1] >= tile.y[0] && cell[3] <= tile.y[1];
      return inside ? [asHoles(rectangle(...cell))] : [];
    }),
  );
  return together(outer, ...cells);
}

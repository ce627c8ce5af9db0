/**
 * Deck tile: key boundaries and labels engraved in its top, ribs below, strips for the splice plates along its seams. It prints
 * face down: the file holds it turned over, x as in the kit from the tile's left, y mirrored, z from its top downward.
 */
import type { DeckTile } from '../layout/deck.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { frame } from '../solid/matrix.js';
import type { Outlines, Vec2 } from '../solid/mesh.js';
import { shift } from '../solid/outlines.js';
import { box, prism } from '../solid/shapes.js';
import { pilotHole } from './holes.js';

const OVER = 1;
const ENGRAVED = 0.6;
const LINE = 0.8;
const INTO = 0.2;

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
  const tx = (v: number) => Math.min(Math.max(v, x0), x1);
  const ty = (v: number) => Math.min(Math.max(v, y0), y1);
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
  const groove = (a: number, b: number, c: number, d: number) => {
    if (tx(c) - tx(a) > 0.05 && ty(d) - ty(b) > 0.05)
      cuts.push(box(k, [tx(a), ty(b), -ENGRAVED], [tx(c), ty(d), OVER]));
  };
  const [ex, ey] = [grid.columnEdges, grid.rowEdges];
  for (const x of ex) groove(x - LINE / 2, ey[0]!, x + LINE / 2, ey.at(-1)!);
  for (const y of ey) groove(ex[0]!, y - LINE / 2, ex.at(-1)!, y + LINE / 2);
  for (const { at, outlines } of legends)
    cuts.push(prism(k, shift(outlines, at), { axis: 'z', from: -ENGRAVED, to: OVER }));
  for (const splice of deck.splices)
    for (const at of splice.screws)
      for (const off of [-deck.strip / 2, deck.strip / 2]) {
        const [x, y] = splice.along === 'y' ? [splice.at + off, at] : [at, splice.at + off];
        if (x > x0 && x < x1 && y > y0 && y < y1)
          cuts.push(
            pilotHole(k, layout.spec, { at: [x, y, deep], way: '+z', depth: deck.ribDepth + section.deck - 0.8 }),
          );
      }
  const drawn = k.subtract(k.union(add), cuts);
  return k.move(drawn, frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [-x0, y0, 0]));
}

/** The keys' labels, fitted to their cells: as high as usual where there is room, else narrower, else lower. mm. */
import type { DeckTile } from '../layout/deck.js';
import type { Layout } from '../layout/layout.js';
import { BOUNDARY, type Legend } from '../parts/deck-tile.js';
import type { Outlines, Vec2 } from '../solid/mesh.js';
import { scaled, shift } from '../solid/outlines.js';
import { outlinesBox } from '../solid/outlines-box.js';
import type { KitLegend } from './types.js';

/** Outlines of a word, lower left at the origin; `condense`: breadth of the letters over the alphabet's own. */
export type Lettering = (
  text: string,
  options: { readonly height: number; readonly stroke: number; readonly condense: number },
) => Outlines;

/** A label as drawn; one whose strokes would be thinner than a printed line is not engraved. */
export interface WrittenLegend extends Legend, KitLegend {
  readonly engraved: boolean;
}

/** Usual height of letters; a stroke is a seventh of it. Source: between ISO 3098's 1/10 and lettering for signs; common practice. */
const LETTER = 4.5;
const STROKE = LETTER / 7;
/** Breadths tried in turn: at half of its own this wide alphabet has the proportions of ISO 3098, type B (from memory). */
const BREADTHS = [1, 0.75, 0.5] as const;
/** Between letters and the boundary lines of their cell. */
const BESIDE_LINE = 0.7;

export function writeLegends({ grid, spec }: Layout, lettering: Lettering): readonly WrittenLegend[] {
  const { labels } = spec.grid;
  const line = spec.printer.machine.lineWidth.value;
  const free = (edges: readonly number[], i: number) => edges[i + 1]! - edges[i]! - BOUNDARY - 2 * BESIDE_LINE;
  return (labels ?? []).flatMap((row, j) =>
    row.flatMap((label, i): WrittenLegend[] => {
      const at: Vec2 = [grid.columns[i]!, grid.rows[j]!];
      const room: Vec2 = [free(grid.columnEdges, i), free(grid.rowEdges, j)];
      const fitted = label.trim() === '' ? undefined : fit(label, { room, lettering });
      if (!fitted) return [];
      const stroke = STROKE * fitted.scale;
      const place = `row ${j}, column ${i}`;
      return [{ label, place, at, outlines: fitted.outlines, stroke, engraved: stroke >= line - 1e-9 }];
    }),
  );
}

const middleOf = ({ min, max }: ReturnType<typeof outlinesBox>): number => (min[1] + max[1]) / 2;

/** @returns undefined for a label of blanks alone */
function fit(
  label: string,
  { room, lettering }: { readonly room: Vec2; readonly lettering: Lettering },
): { readonly outlines: Outlines; readonly scale: number } | undefined {
  let fitted: { readonly outlines: Outlines; readonly scale: number } | undefined;
  for (const condense of BREADTHS) {
    const word = lettering(label, { height: LETTER, stroke: STROKE, condense });
    if (word.length === 0) return undefined;
    const { min, max } = outlinesBox(word);
    const w = max[0] - min[0];
    // A capital's middle is the cell's: words with and without tails stand on one line.
    const middle = middleOf(outlinesBox(lettering('H', { height: LETTER, stroke: STROKE, condense })));
    const h = 2 * Math.max(max[1] - middle, middle - min[1]);
    const scale = Math.max(0.01, Math.min(1, room[0] / w, room[1] / h));
    fitted = { outlines: scaled(shift(word, [-(min[0] + w / 2), -middle]), scale), scale };
    if (scale === 1 || room[1] / h <= room[0] / w) break;
  }
  return fitted;
}

/** Is a key's middle on the tile? */
export const liesOn = ({ x, y }: DeckTile, [px, py]: Vec2): boolean => px > x[0] && px < x[1] && py > y[0] && py < y[1];

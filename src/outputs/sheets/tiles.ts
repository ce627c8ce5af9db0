/** A sheet larger than a page, cut into pages that overlap: what of each mark lies on which page. mm. */
import type { Vec2 } from '../../solid/mesh.js';
import type { Mark } from '../drawings/marks.js';
import { ring } from '../drawings/sheet-frame.js';

/** Papers upright: A4 (ISO 216), Letter (ANSI Y14.1: 8½ by 11 inches). */
export const A4: Vec2 = [210, 297];
export const LETTER: Vec2 = [215.9, 279.4];
/** The edge that home printers leave white. */
export const WHITE = 12;
/** By how much neighbouring pages show the same. */
export const OVERLAP = 10;
/** At the foot of each page: ruler and what page it is. */
export const FOOT = 16;

export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
  /** Part of the sheet that it shows: left, top, right, bottom. */
  readonly shows: readonly [number, number, number, number];
}

/** @param size - of the whole sheet @param page - of the paper @returns pages by rows from the top */
export function tilesOf([width, height]: Vec2, page: Vec2): readonly Tile[] {
  const room: Vec2 = [page[0] - 2 * WHITE, page[1] - 2 * WHITE - FOOT];
  const count = (length: number, one: number) => Math.max(1, Math.ceil((length - OVERLAP) / (one - OVERLAP) - 1e-9));
  const [columns, rows] = [count(width, room[0]), count(height, room[1])];
  return Array.from({ length: rows * columns }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const left = column * (room[0] - OVERLAP);
    const top = row * (room[1] - OVERLAP);
    return {
      column,
      row,
      columns,
      rows,
      shows: [left, top, Math.min(width, left + room[0]), Math.min(height, top + room[1])] as const,
    };
  });
}

/**
 * Circled crosses in the middle of what neighbours share: at the same places of the sheet, so that both pages show each.
 *
 * @returns marks of the sheet, none on a single page
 */
export function registration(tiles: readonly Tile[]): readonly Mark[] {
  const inset = OVERLAP / 2;
  const places = tiles.flatMap(({ column, row, shows: [left, top, right, bottom] }): Vec2[] => [
    ...(column > 0 ? [top + 3 * inset, bottom - 3 * inset].map((y): Vec2 => [left + inset, y]) : []),
    ...(row > 0 ? [left + 3 * inset, right - 3 * inset].map((x): Vec2 => [x, top + inset]) : []),
  ]);
  const line = (from: Vec2, to: Vec2): Mark => ({ kind: 'line', points: [from, to], pen: 'thin' });
  return places.flatMap(([x, y]) => [
    line([x - 4, y], [x + 4, y]),
    line([x, y - 4], [x, y + 4]),
    { kind: 'line', points: ring([x, y], 2), pen: 'thin' } as const,
  ]);
}

/** @returns what of a mark lies on the page, in the page's coordinates */
export function onTile(mark: Mark, { shows: [left, top, right, bottom] }: Tile): readonly Mark[] {
  const put = ([x, y]: Vec2): Vec2 => [x - left + WHITE, y - top + WHITE];
  if (mark.kind === 'text') {
    const [x, y] = mark.at;
    return x >= left && x <= right && y >= top && y <= bottom ? [{ ...mark, at: put(mark.at) }] : [];
  }
  if (mark.kind !== 'line') return [];
  return mark.points.slice(1).flatMap((to, i): Mark[] => {
    const kept = clipped(mark.points[i]!, to, [left, top, right, bottom]);
    return kept === null ? [] : [{ ...mark, points: [put(kept[0]), put(kept[1])] }];
  });
}

/** The piece of a segment inside a rectangle (Liang and Barsky's way: each side cuts the parameter's range). */
function clipped(
  [x0, y0]: Vec2,
  [x1, y1]: Vec2,
  [left, top, right, bottom]: readonly [number, number, number, number],
): readonly [Vec2, Vec2] | null {
  const [dx, dy] = [x1 - x0, y1 - y0];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, x0 - left],
    [dx, right - x0],
    [-dy, y0 - top],
    [dy, bottom - y0],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null;
      continue;
    }
    const t = q / p;
    if (p < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
  }
  if (from > to) return null;
  return [
    [x0 + from * dx, y0 + from * dy],
    [x0 + to * dx, y0 + to * dy],
  ];
}

/** Boards: what to order, what they look like, which stands where, and what their files leave to the maker. */
import type { BoardsOfKit } from '../../kit/types.js';
import { boardsText } from '../boards/boards-text.js';
import { sheetsOf } from '../boards/sheet.js';
import { boardSvg } from '../boards/svg.js';
import type { OutputContext } from '../context.js';
import { base64, table, text } from './html.js';

/** @returns the chapter; empty where the kit has no boards */
export function boardsHtml({ kit: { boards: all } }: OutputContext): string {
  if (!all) return '';
  const { boards, panels, places } = all;
  const carriers = boards.some(({ kind }) => kind === 'receiver');
  return [
    `<p>${text(boardsText(all))} The files in boards/ give outline and drill; the copper between the holes is not drawn: whoever draws or makes the board routes it by the labels in holes.csv, or the nets are wired by hand. Which leg of a receiver is which depends on the part. Let someone who knows the trade look over the supply’s copper.</p>`,
    table(
      'Panels to order',
      ['panel', 'number', 'size [mm]', 'boards on it', 'files'],
      panels.designs.map(({ id, order, width, height, spots }) => [
        id,
        order,
        `${width} × ${height}`,
        [...new Set(spots.map((spot) => spot.id))]
          .map((one) => `${spots.filter((spot) => spot.id === one).length} × ${one}`)
          .join(', '),
        `boards/${id}.dxf, .svg`,
      ]),
      { numbers: [1] },
    ),
    table(
      'Where each board stands; its lines count from its left end, seen from the field',
      ['place', 'board', 'lines'],
      places.map(({ placement, board, beams }) => [placement, board, beams.join(', ')]),
    ),
    ...(carriers ? [carrierHtml(all)] : []),
    ...pictures(all),
  ].join('\n');
}

const carrierHtml = ({ legLength }: BoardsOfKit): string =>
  `<p>Cut each receiver’s legs ${legLength} mm along the leg from its body. Three rows of sockets stand one above the other for each receiver: the middle one where the socket stands in the middle, the one above a full slide to the right, the one below a full slide to the left, seen from the field. A receiver that alignment leaves more than half a slide off its middle is plugged one row up or down, with a step bent into its legs. Wires pass behind the boards, under the cover’s screws, and below the boards between their guides.</p>`;

const pictures = (all: BoardsOfKit): readonly string[] =>
  sheetsOf(all).map((sheet) => {
    const data = base64(new TextEncoder().encode(boardSvg(sheet)));
    return `<figure><img src="data:image/svg+xml;base64,${data}" style="width:${sheet.width + 4}mm;max-width:100%" alt="${text(`${sheet.id}: outline and ${sheet.holes.length} holes`)}"><figcaption>${text(`${sheet.id}: ${sheet.title}, ${sheet.width} × ${sheet.height} mm, ${sheet.holes.length} holes`)}</figcaption></figure>`;
  });

/** Frame and title of a drawing's sheet. mm on paper. */
import { BREADTH } from '../../kit/printed-legends.js';
import type { Vec2 } from '../../solid/mesh.js';
import type { Mark } from './marks.js';

/** From the paper's edge to the frame, and the strip for the title. */
export const FRAME = 10;
export const TITLE = 22;

/** A4 and A3 lying (ISO 216). */
export const A4: Vec2 = [297, 210];
export const A3: Vec2 = [420, 297];

/** @returns a figure of ISO 5455 as it is written */
export const scaleText = (scale: number): string => (scale >= 1 ? `${scale}:1` : `1:${Math.round(1 / scale)}`);

/** @returns the text, cut short where it would run out of its room */
export function fitted(text: string, { size, room }: { readonly size: number; readonly room: number }): string {
  const letters = [...text];
  const most = Math.max(1, Math.floor(room / (BREADTH * size)));
  return letters.length <= most ? text : `${letters.slice(0, most - 1).join('')}…`;
}

/** @param firstAngle - does the sheet hold views placed by that method? */
export function frameMarks(
  lines: readonly string[],
  { paper: [width, height], firstAngle }: { readonly paper: Vec2; readonly firstAngle: boolean },
): Mark[] {
  const foot = height - FRAME - TITLE + 6;
  const room = width - 2 * FRAME - 6 - (firstAngle ? 30 : 0);
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
    ...lines.map((text, i): Mark => {
      const size = i === 0 ? 3 : 2.4;
      return { kind: 'text', at: [FRAME + 3, foot + 5 * i], text: fitted(text, { size, room }), size };
    }),
    ...(firstAngle ? firstAngleSymbol([width - FRAME - 26, foot + 6]) : []),
  ];
}

/** A cut cone from its side, and to its right as it looks from its left, where the small end is (ISO 5456-2). */
function firstAngleSymbol([x, y]: Vec2): Mark[] {
  const [small, large, long] = [2, 4, 8];
  const middle = x + long + 3 + large;
  return [
    {
      kind: 'line',
      points: [
        [x, y - small],
        [x + long, y - large],
        [x + long, y + large],
        [x, y + small],
        [x, y - small],
      ],
    },
    { kind: 'line', points: ring([middle, y], small) },
    { kind: 'line', points: ring([middle, y], large) },
    {
      kind: 'line',
      points: [
        [x - 1.5, y],
        [middle + large + 1.5, y],
      ],
      pen: 'centre',
    },
    {
      kind: 'line',
      points: [
        [middle, y - large - 1.5],
        [middle, y + large + 1.5],
      ],
      pen: 'centre',
    },
  ];
}

export const ring = ([x, y]: Vec2, radius: number): Vec2[] =>
  Array.from(
    { length: 25 },
    (_, i): Vec2 => [x + radius * Math.cos((i * Math.PI) / 12), y + radius * Math.sin((i * Math.PI) / 12)],
  );

/** A ruler on each sheet at 1:1, to see whether the printer kept the scale. */
import type { Vec2 } from '../../solid/mesh.js';
import type { Mark } from '../drawings/marks.js';

/** [mm] */
const RULER = 100;
export const RULER_HIGH = 4;

/** @param at - its left end [mm on paper] */
export function rulerMarks([x, y]: Vec2): Mark[] {
  const line = (from: Vec2, to: Vec2): Mark => ({ kind: 'line', points: [from, to], pen: 'thin' });
  return [
    line([x, y], [x + RULER, y]),
    ...Array.from({ length: RULER / 10 + 1 }, (_, i) =>
      line([x + 10 * i, y], [x + 10 * i, y - (i % 5 === 0 ? RULER_HIGH : 2.5)]),
    ),
    {
      kind: 'text',
      at: [x + RULER + 3, y],
      text: `${RULER} mm: measure it. Print at 100 %, not fitted to the page.`,
      size: 2,
    },
  ];
}

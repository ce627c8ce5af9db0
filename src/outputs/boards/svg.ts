/** A board or panel as SVG, 1:1: a user unit is a millimetre, y counts up from the lower edge as in the DXF. */
import { escapeXml } from '../svg-scale.js';
import type { Layer, Sheet } from './sheet.js';

/** Around the board, so that its edge shows [mm]. */
const AROUND = 2;
const STYLE: Readonly<Record<Layer, string>> = {
  OUTLINE: 'stroke:#000;stroke-width:0.25',
  CUT: 'stroke:#b00;stroke-width:0.15;stroke-dasharray:1.5 0.75',
  'DRILL-PLATED': 'stroke:#069;stroke-width:0.1',
  'DRILL-UNPLATED': 'stroke:#060;stroke-width:0.1',
};

export function boardSvg({ id, title, width, height, rings, holes }: Sheet): string {
  const layers = [...new Set([...rings, ...holes].map(({ layer }) => layer))];
  const marks = layers.map((layer) => {
    const outlines = rings
      .filter((ring) => ring.layer === layer)
      .map(({ points }) => `<polygon points="${points.map(([x, y]) => `${x},${y}`).join(' ')}"/>`);
    const circles = holes
      .filter((hole) => hole.layer === layer)
      .map(
        ({ x, y, d, use, label }) =>
          `<circle cx="${x}" cy="${y}" r="${Number((d / 2).toFixed(4))}"><title>${escapeXml(`${use}: ${label}`)}</title></circle>`,
      );
    return `<g id="${layer}" style="${STYLE[layer]};fill:none">\n${[...outlines, ...circles].join('\n')}\n</g>`;
  });
  const [w, h] = [width + 2 * AROUND, height + 2 * AROUND].map((size) => Number(size.toFixed(3)));
  // Turned about the middle line, so that coordinates are those of the DXF.
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="${-AROUND} ${-AROUND} ${w} ${h}">
<title>${escapeXml(`${id}: ${title}`)}</title>
<g transform="matrix(1 0 0 -1 0 ${height})">
${marks.join('\n')}
</g>
</svg>
`;
}

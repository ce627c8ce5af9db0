/** What a drawing or sheet is made of, in mm on paper: y runs down, as in SVG and on a page. */
import type { Vec2 } from '../../solid/mesh.js';
import { escapeXml } from '../svg-scale.js';

export type Mark =
  | { readonly kind: 'line'; readonly points: readonly Vec2[]; readonly pen?: Pen }
  /** Filled white: nothing shows through. On SVG sheets only. */
  | { readonly kind: 'ring'; readonly at: Vec2; readonly radius: number }
  | { readonly kind: 'area'; readonly outlines: readonly (readonly Vec2[])[] }
  | {
      readonly kind: 'text';
      readonly at: Vec2;
      readonly text: string;
      /** Height of the letters [mm]. */
      readonly size: number;
      readonly anchor?: 'start' | 'middle' | 'end';
      /** Counter-clockwise [°]. */
      readonly turn?: 0 | 90;
      /** Lines stop around the letters; on SVG sheets only. */
      readonly clear?: boolean;
    };

/** Line kinds by ISO 128-2: wide for edges, narrow for dimensions, dashed for hidden edges and where paper is cut, dash-dot for axes, planes and beams. */
export type Pen = 'edge' | 'thin' | 'hidden' | 'centre' | 'beam' | 'leader' | 'cut';

export const PENS: Readonly<
  Record<Pen, { readonly width: number; readonly dash: readonly number[]; readonly colour: string }>
> = {
  edge: { width: 0.35, dash: [], colour: '#1b242c' },
  thin: { width: 0.18, dash: [], colour: '#1b242c' },
  hidden: { width: 0.18, dash: [1.4, 0.7], colour: '#6b7681' },
  centre: { width: 0.18, dash: [6, 1.2, 0.8, 1.2], colour: '#1b242c' },
  beam: { width: 0.25, dash: [6, 1.2, 0.8, 1.2], colour: '#b3261e' },
  leader: { width: 0.18, dash: [], colour: '#b3261e' },
  cut: { width: 0.18, dash: [2, 1.5], colour: '#47535f' },
};

const mm = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);
const path = (points: readonly Vec2[]): string => `M${points.map(([x, y]) => `${mm(x)} ${mm(y)}`).join('L')}`;

/** @returns a sheet to scale: a millimetre in it is one on paper */
export function sheetSvg(
  [width, height]: Vec2,
  { title, about, marks }: { readonly title: string; readonly about: string; readonly marks: readonly Mark[] },
): string {
  const lines = (Object.keys(PENS) as Pen[]).flatMap((pen) => {
    const own = marks.flatMap((mark) =>
      mark.kind === 'line' && (mark.pen ?? 'edge') === pen ? [path(mark.points)] : [],
    );
    const { width: w, dash, colour } = PENS[pen];
    return own.length === 0
      ? []
      : [
          `<path d="${own.join('')}" fill="none" stroke="${colour}" stroke-width="${w}" stroke-linecap="round"${dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : ''}/>`,
        ];
  });
  const rest = marks.flatMap((mark) => {
    if (mark.kind === 'area')
      return [
        `<path d="${mark.outlines.map((outline) => `${path(outline)}Z`).join('')}" fill="url(#hatch)" fill-rule="evenodd" stroke="#1b242c" stroke-width=".35"/>`,
      ];
    if (mark.kind === 'line') return [];
    const [x, y] = mark.at;
    if (mark.kind === 'ring')
      return [
        `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(mark.radius)}" fill="#ffffff" stroke="${PENS.leader.colour}" stroke-width="${PENS.leader.width}"/>`,
      ];
    const turned = mark.turn === 90 ? ` transform="rotate(-90 ${mm(x)} ${mm(y)})"` : '';
    const clear = mark.clear
      ? ` paint-order="stroke" stroke="#ffffff" stroke-width="${mm(mark.size / 2.5)}" stroke-linejoin="round"`
      : '';
    // Capitals of common faces are .72 of the font's size high.
    return [
      `<text x="${mm(x)}" y="${mm(y)}" font-size="${mm(mark.size / 0.72)}" text-anchor="${mark.anchor ?? 'start'}"${turned}${clear}>${escapeXml(mark.text)}</text>`,
    ];
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-labelledby="title about">
<title id="title">${escapeXml(title)}</title>
<desc id="about">${escapeXml(about)}</desc>
<defs><pattern id="hatch" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V2" stroke="#1b242c" stroke-width=".18"/></pattern></defs>
<rect width="100%" height="100%" fill="#ffffff"/>
<g font-family="system-ui, &quot;DejaVu Sans&quot;, sans-serif" fill="#1b242c">
${[...lines, ...rest].join('\n')}
</g>
</svg>
`;
}

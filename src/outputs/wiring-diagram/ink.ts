/** What the wiring diagram is drawn with, in pixels of its own: y runs down, the colour is that of the text around it. */
import type { Vec2 } from '../../solid/mesh.js';
import { tag, text } from '../report/html.js';
import { px } from '../svg-scale.js';

/** Of every letter, here as in the report. */
export const FONT = 13;

export type Ink =
  | { readonly kind: 'line'; readonly points: readonly Vec2[] }
  /** Light on its way. */
  | { readonly kind: 'beam'; readonly points: readonly Vec2[] }
  /** Wires that cross here are joined. */
  | { readonly kind: 'dot'; readonly at: Vec2 }
  | {
      readonly kind: 'text';
      readonly at: Vec2;
      readonly text: string;
      readonly anchor: Anchor;
      readonly bold: boolean;
    };

type Anchor = 'start' | 'middle' | 'end';

export const line = (...points: readonly Vec2[]): Ink => ({ kind: 'line', points });

/** @param at - left end, middle or right end of the line on which the letters stand */
export const words = (
  at: Vec2,
  text: string,
  { anchor = 'start', bold = false }: { readonly anchor?: Anchor; readonly bold?: boolean } = {},
): Ink => ({ kind: 'text', at, text, anchor, bold });

/** Breadths of letters as shares of their size, on the broad side of the faces that browsers take. */
const BREADTHS = [
  [/[mwMW—%]/, 1],
  [/[ijlft.,:;'!|() ]/, 0.42],
  [/[A-Z+=−ΩµØ]/, 0.8],
] as const;
const USUAL = 0.65;

/** @returns how much room a text needs [px] */
export const breadth = (text: string): number =>
  FONT * [...text].reduce((sum, letter) => sum + (BREADTHS.find(([kind]) => kind.test(letter))?.[1] ?? USUAL), 0);

/** @returns the right end of what is drawn */
export const rightEnd = (marks: readonly Ink[]): number =>
  marks.reduce((most, mark) => Math.max(most, ...rightsOf(mark)), 0);

function rightsOf(mark: Ink): readonly number[] {
  if (mark.kind === 'line' || mark.kind === 'beam') return mark.points.map(([x]) => x);
  if (mark.kind === 'dot') return [mark.at[0]];
  const share = { start: 1, middle: 0.5, end: 0 }[mark.anchor];
  return [mark.at[0] + share * breadth(mark.text)];
}

/** @returns marks as one group; `about` becomes its `data-` attributes */
export function group(marks: readonly Ink[], about: Readonly<Record<string, string>> = {}): string {
  const path = (kind: 'line' | 'beam') =>
    marks
      .flatMap((mark) => (mark.kind === kind ? [`M${mark.points.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}`] : []))
      .join('');
  const pen = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.4 };
  const [lines, beams] = [path('line'), path('beam')];
  const rest = marks.flatMap((mark) => {
    if (mark.kind === 'dot') return [tag('circle', { cx: px(mark.at[0]), cy: px(mark.at[1]), r: 3 }, '')];
    if (mark.kind !== 'text') return [];
    const attributes = {
      x: px(mark.at[0]),
      y: px(mark.at[1]),
      ...(mark.anchor !== 'start' && { 'text-anchor': mark.anchor }),
      ...(mark.bold && { class: 'head' }),
    };
    return [tag('text', attributes, text(mark.text))];
  });
  const data = Object.fromEntries(Object.entries(about).map(([key, value]) => [`data-${key}`, value]));
  return tag(
    'g',
    data,
    [
      ...(lines === '' ? [] : [tag('path', { d: lines, ...pen }, '')]),
      ...(beams === '' ? [] : [tag('path', { d: beams, ...pen, 'stroke-dasharray': '9 3 2 3' }, '')]),
      ...rest,
    ].join('\n'),
  );
}

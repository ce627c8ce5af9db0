/** The budgets as figures: what is off and what cures it, a finger against the pitch, the leaf along its screw. */
import type { Travel } from '../../tune/travel.js';
import { deg } from '../../units.js';
import { aimRows } from '../aim-rows.js';
import type { OutputContext } from '../context.js';
import { px, scale } from '../svg-scale.js';
import { travelPanels } from '../tune-svg-travel.js';
import { text } from './html.js';

const WIDTH = 720;
/** Where each curve's key begins [px]. */
const KEYS = [0, 225, 385, 515] as const;

const figure = (
  height: number,
  said: { readonly title: string; readonly caption: string },
  marks: readonly string[],
): string =>
  `<figure><svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${text(said.title)}">${marks.join('\n')}</svg><figcaption>${text(said.caption)}</figcaption></figure>`;

/** Bars: 99 of 100 errors stay below; under them what the kit can do against each. */
export function aimFigure({ light }: OutputContext): string {
  const { longest, off, against } = aimRows(light);
  const bars = [...off.map((row) => ({ ...row, kind: 'bar2' })), ...against.map((row) => ({ ...row, kind: 'bar' }))];
  const left = 220;
  const x = scale([0, ...bars.map(({ angle }) => deg(angle))], { pixels: [left, WIDTH - 110], count: 6 });
  const row = 30;
  const bottom = 20 + row * bars.length;
  return figure(
    bottom + 44,
    {
      title: 'What throws a beam off, and what brings it back',
      caption: `On the longest beam, a ${longest.line}, ${longest.distance.toFixed(0)} mm. The upper bars are below that in 99 of 100; the lower ones are what the kit can do.`,
    },
    [
      ...x.ticks.flatMap((tick) => [
        `<line class="grid" x1="${px(x.at(tick))}" x2="${px(x.at(tick))}" y1="10" y2="${bottom}"/>`,
        `<text class="soft" x="${px(x.at(tick))}" y="${bottom + 18}" text-anchor="middle">${x.label(tick)}</text>`,
      ]),
      ...bars.flatMap(({ what, angle, mm, kind }, i) => {
        const y = 16 + row * i;
        return [
          `<text x="${left - 10}" y="${y + 15}" text-anchor="end">${text(what)}</text>`,
          `<rect class="${kind}" x="${left}" y="${y}" width="${px(Math.max(1, x.at(deg(angle)) - left))}" height="20"/>`,
          `<text class="soft" x="${px(x.at(deg(angle)) + 6)}" y="${y + 15}">${deg(angle).toFixed(2)}°, ${mm.toFixed(1)} mm</text>`,
        ];
      }),
      `<text class="soft" x="${px((left + WIDTH - 110) / 2)}" y="${bottom + 38}" text-anchor="middle">Angle [°]; the second figure is mm at the receiver</text>`,
    ],
  );
}

/** Chance that a touch answers only the key that is meant, by the breadth of the finger. */
export function fingerFigure({ light: { finger } }: OutputContext): string {
  if (finger === null) return '<p>No receiver ever reads dark: fingers are not counted.</p>';
  const [left, right, top, bottom] = [70, WIDTH - 20, 20, 230];
  const breadths = finger.keys.map(({ breadth }) => breadth);
  const x = scale(breadths, { pixels: [left, right], count: 6 });
  const y = scale([0, 100], { pixels: [bottom, top], count: 5 });
  const curves = [
    ['only the key that is meant', 'line', finger.keys.map(({ hit }) => hit.aimed)],
    ['a second one too', 'line other second', finger.keys.map(({ hit }) => hit.double)],
    ['another one', 'line other', finger.keys.map(({ hit }) => hit.wrong)],
    ['none', 'line second', finger.keys.map(({ hit }) => hit.none)],
  ] as const;
  const advice = finger.axes
    .map(({ axis, pitch, advice: told }) =>
      told === null
        ? `${axis}: ${pitch} mm`
        : `${axis}: ${pitch} mm here, best ${told.best.pitch} mm${told.least === null ? '' : `, least for 99 % ${told.least.pitch} mm`}`,
    )
    .join('; ');
  return figure(
    bottom + 84,
    {
      title: 'What a touch answers, by the finger’s breadth',
      caption: `Touches scatter about a key’s middle as published for touch screens. Pitch along ${advice}.`,
    },
    [
      ...y.ticks.flatMap((tick) => [
        `<line class="grid" x1="${left}" x2="${right}" y1="${px(y.at(tick))}" y2="${px(y.at(tick))}"/>`,
        `<text class="soft" x="${left - 8}" y="${px(y.at(tick) + 4)}" text-anchor="end">${y.label(tick)} %</text>`,
      ]),
      ...x.ticks.map(
        (tick) =>
          `<text class="soft" x="${px(x.at(tick))}" y="${bottom + 18}" text-anchor="middle">${x.label(tick)}</text>`,
      ),
      `<text class="soft" x="${(left + right) / 2}" y="${bottom + 38}" text-anchor="middle">Breadth of the finger [mm]</text>`,
      ...curves.flatMap(([name, kind, shares], i) => {
        const points = shares.map((share, k) => `${px(x.at(breadths[k]!))},${px(y.at(100 * share))}`).join(' ');
        const at = left + KEYS[i]!;
        return [
          `<polyline class="${kind}" points="${points}"/>`,
          `<polyline class="${kind}" points="${at},${bottom + 64} ${at + 24},${bottom + 64}"/>`,
          `<text x="${at + 30}" y="${bottom + 68}">${text(name)}</text>`,
        ];
      }),
    ],
  );
}

/** Tilt, force and stress against the turns of the adjusting screw. */
export function leafFigure(travel: Travel | undefined): string {
  if (!travel) return '';
  return figure(
    560,
    {
      title: 'The mount’s leaf along its screw: tilt, force, share of its limits',
      caption:
        'From the screw’s first touch on; the shaded part is the way from the highest to the lowest beam. Stress with the fillets’ factor against strength over 1.5, strain against what the plastic holds for years.',
    },
    [...travelPanels({ travel }, { left: 64, right: WIDTH - 20, top: 80, bottom: 505 })],
  );
}

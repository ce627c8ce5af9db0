/** The sweep's trade-off: a short mount against a leaf that is strained little. */
import type { TuneReport } from '../tune/report.js';
import { passes, type TuneRow } from '../tune/types.js';
import { escapeXml, px, type Scale, scale } from './svg-scale.js';
import type { Box } from './tune-svg-travel.js';
import { leafName } from './tune-words.js';

/** Strain beyond this share of what is allowed is drawn at the upper edge [%]. */
const MOST = 200;
/** Each unbeaten design tells its name when pointed at; of a large sweep the file would grow too long. */
const MOST_NAMED = 400;

interface Place {
  readonly x: number;
  readonly y: number;
}

interface Dot extends Place {
  readonly row: TuneRow;
}

/** @returns markup */
export function tradeOff({ rows, front, shown }: TuneReport, box: Box): readonly string[] {
  const drawn = rows.filter(({ mount, figures }) => mount !== null && figures !== null);
  const head = `<text class="head" x="${box.left}" y="${box.top - 46}">Strain against mount length, all designs</text>`;
  if (drawn.length === 0) return [head, `<text class="soft" x="${box.left}" y="${box.top}">None can be drawn.</text>`];
  const share = ({ figures }: TuneRow) => Math.min(MOST, (100 * figures!.strain) / figures!.strainAllowed);
  const x = scale(
    drawn.map(({ mount }) => mount!.length),
    { pixels: [box.left, box.right], count: 6 },
  );
  const y = scale([100, ...drawn.map(share)], { pixels: [box.bottom, box.top], count: 6 });
  const dots = drawn.map((row): Dot => ({ row, x: x.at(row.mount!.length), y: y.at(share(row)) }));
  const kinds = {
    fail: dots.filter(({ row }) => !passes(row)),
    pass: dots.filter(({ row }) => passes(row) && !front.has(row.point.number)),
    front: dots.filter(({ row }) => front.has(row.point.number)),
  };
  const taken = dots.find(({ row }) => row === shown);
  return [
    head,
    ...axes(x, y, box),
    crosses(kinds.fail),
    // All of one kind in one path: small, whatever the sweep.
    circles('pass', kinds.pass, 3.2),
    ...(kinds.front.length <= MOST_NAMED ? kinds.front.map(named) : [circles('front', kinds.front, 4)]),
    ...(taken ? ring(taken, box) : []),
    ...legend(kinds, { box, undrawn: rows.length - drawn.length }),
  ];
}

function axes(x: Scale, y: Scale, box: Box): readonly string[] {
  return [
    ...y.ticks.flatMap((tick) => [
      `<line class="grid" x1="${box.left}" x2="${box.right}" y1="${px(y.at(tick))}" y2="${px(y.at(tick))}"/>`,
      `<text class="soft" x="${box.left - 8}" y="${px(y.at(tick) + 4.5)}" text-anchor="end">${y.label(tick)}</text>`,
    ]),
    `<line class="axis" x1="${box.left}" x2="${box.right}" y1="${box.bottom}" y2="${box.bottom}"/>`,
    ...x.ticks.map(
      (tick) =>
        `<text class="soft" x="${px(x.at(tick))}" y="${box.bottom + 18}" text-anchor="middle">${x.label(tick)}</text>`,
    ),
    `<text class="soft" x="${px((box.left + box.right) / 2)}" y="${box.bottom + 38}" text-anchor="middle">Mount, front to rear [mm]</text>`,
    `<text class="soft" x="${box.left}" y="${px(box.top - 22)}">Strain at the lowest beam, % of the limit${y.to >= MOST ? ` (${MOST}: or more)` : ''}</text>`,
    `<line class="limit" x1="${box.left}" x2="${box.right}" y1="${px(y.at(100))}" y2="${px(y.at(100))}"/>`,
  ];
}

const crosses = (dots: readonly Place[]): string =>
  dots.length === 0
    ? ''
    : `<path class="fail" d="${dots.map(({ x, y }) => `M${px(x - 3)} ${px(y - 3)}l6 6m0-6l-6 6`).join('')}"/>`;

function circles(kind: 'pass' | 'front', dots: readonly Place[], r: number): string {
  if (dots.length === 0) return '';
  const d = dots
    .map(({ x, y }) => `M${px(x - r)} ${px(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`)
    .join('');
  return `<path class="${kind}" d="${d}"/>`;
}

const named = ({ row, x, y }: Dot): string =>
  `<circle class="front" cx="${px(x)}" cy="${px(y)}" r="4"><title>${escapeXml(`${row.point.number}: ${leafName(row.point)}`)}</title></circle>`;

/** The design that the panels beside show; its number stands where there is room. */
function ring({ row, x, y }: Dot, box: Box): readonly string[] {
  const right = x > (box.left + box.right) / 2;
  return [
    `<circle class="taken" cx="${px(x)}" cy="${px(y)}" r="8"/>`,
    `<text class="head" x="${px(x + (right ? -12 : 12))}" y="${px(y - 9)}" text-anchor="${right ? 'end' : 'start'}">${row.point.number}</text>`,
  ];
}

function legend(
  kinds: Readonly<Record<'fail' | 'pass' | 'front', readonly Dot[]>>,
  { box: { left, bottom }, undrawn }: { readonly box: Box; readonly undrawn: number },
): readonly string[] {
  const lines = [
    { dot: (place: Place) => circles('front', [place], 4), text: `unbeaten: ${kinds.front.length}` },
    {
      dot: (place: Place) => circles('pass', [place], 3.2),
      text: `passes, but another is no worse in anything: ${kinds.pass.length}`,
    },
    {
      dot: (place: Place) => crosses([place]),
      text: `fails: ${kinds.fail.length}${undrawn > 0 ? `; ${undrawn} more can’t be drawn` : ''}`,
    },
    {
      dot: ({ x, y }: Place) => `<circle class="taken" cx="${px(x)}" cy="${px(y)}" r="7"/>`,
      text: 'drawn on the left, with its number',
    },
  ];
  return lines.flatMap(({ dot, text }, i) => {
    const y = bottom + 70 + i * 24;
    return [dot({ x: left + 6, y: y - 4.5 }), `<text x="${left + 22}" y="${y}">${escapeXml(text)}</text>`];
  });
}

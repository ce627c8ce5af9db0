/** Three panels above one axis of screw turns: tilt of the beam, force of the screw, and how near the limits are. */
import type { TuneReport } from '../tune/report.js';
import { MARKS, type Travel, type TravelState } from '../tune/travel.js';
import { escapeXml, px, type Scale, scale } from './svg-scale.js';

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const GAP = 44;
/** Headings stand so far above their panel, keys so far from its left [px]. */
const HEAD = 12;
/** Above the names of the marks, in up to two lines. */
const MARK_ROWS = 46;
const KEYS = [170, 310] as const;
const WORDS: Readonly<Record<(typeof MARKS)[number], string>> = {
  highest: 'highest',
  level: 'level',
  lowest: 'lowest',
  stop: 'stop',
  stopLatest: 'latest',
};
/** Marks nearer than this to the one before it go up a line [px]. */
const CLOSE = 46;

/** @returns markup; a sentence where the design can't be bent over its way */
export function travelPanels({ travel }: Pick<TuneReport, 'travel'>, box: Box): readonly string[] {
  if (!travel)
    return [`<text class="soft" x="${box.left}" y="${box.top}">No design to draw over its screw’s turns.</text>`];
  const { states, marks, stressAllowed, strainAllowed } = travel;
  const x = scale(
    states.map(({ turns }) => turns),
    { pixels: [box.left, box.right], count: 8 },
  );
  const height = (box.bottom - box.top - 2 * GAP) / 3;
  const row = (i: number): Box => ({
    ...box,
    top: box.top + i * (height + GAP),
    bottom: box.top + i * (height + GAP) + height,
  });
  const share = (state: TravelState) => [(100 * state.strain) / strainAllowed, (100 * state.stress) / stressAllowed];
  const panels = [
    panel(row(0), { x, travel, head: MARK_ROWS, name: 'Tilt of the beam [°]', curves: [(state) => state.tilt] }),
    panel(row(1), { x, travel, name: 'Force along the screw [N]', curves: [({ force }) => force] }),
    panel(row(2), {
      x,
      travel,
      name: 'Share of the limit [%]',
      curves: [(state) => share(state)[0]!, (state) => share(state)[1]!],
      limit: 100,
      key: [`strain, ${tidy(strainAllowed)} %`, `peak stress, ${tidy(stressAllowed)} MPa`],
    }),
  ];
  const rows = [row(0), row(1), row(2)];
  return [
    ...rows.map(
      ({ top, bottom }) =>
        `<rect class="way" x="${px(x.at(marks.highest.turns))}" y="${px(top)}" width="${px(x.at(marks.lowest.turns) - x.at(marks.highest.turns))}" height="${px(bottom - top)}"/>`,
    ),
    ...markLines(travel, x, rows),
    ...panels.flat(),
    ...x.ticks.map(
      (tick) =>
        `<text class="soft" x="${px(x.at(tick))}" y="${px(box.bottom + 18)}" text-anchor="middle">${x.label(tick)}</text>`,
    ),
    `<text class="soft" x="${px((box.left + box.right) / 2)}" y="${px(box.bottom + 38)}" text-anchor="middle">Turns of the screw since it first touches</text>`,
    ...limitLine(travel, x, rows),
  ];
}

const tidy = (value: number): string => String(Number(value.toPrecision(3)));

function markLines({ marks }: Travel, x: Scale, rows: readonly Box[]): readonly string[] {
  const { top } = rows[0]!;
  let last = -Infinity;
  let up = false;
  return MARKS.flatMap((mark) => {
    const at = x.at(marks[mark].turns);
    up = at - last < CLOSE && !up;
    last = at;
    return [
      ...rows.map((row) => upright('mark', at, row)),
      upright('mark', at, { top: top - (up ? 20 : 6), bottom: top }),
      `<text class="soft" x="${px(at)}" y="${px(top - (up ? 24 : 10))}" text-anchor="middle">${WORDS[mark]}</text>`,
    ];
  });
}

const upright = (kind: string, x: number, { top, bottom }: Pick<Box, 'top' | 'bottom'>): string =>
  `<line class="${kind}" x1="${px(x)}" x2="${px(x)}" y1="${px(top)}" y2="${px(bottom)}"/>`;

/** Where the strain held for years, or the stress, reaches its limit: drawn through all three panels. */
function limitLine(
  { states, stressAllowed, strainAllowed }: Travel,
  x: Scale,
  rows: readonly Box[],
): readonly string[] {
  const crossing = (of: (state: TravelState) => number, limit: number): number | undefined => {
    const after = states.findIndex((state) => of(state) > limit);
    if (after < 1) return undefined;
    const [a, b] = [states[after - 1]!, states[after]!];
    return a.turns + ((limit - of(a)) / (of(b) - of(a))) * (b.turns - a.turns);
  };
  const found = [
    { at: crossing(({ strain }) => strain, strainAllowed), word: 'strain limit' },
    { at: crossing(({ stress }) => stress, stressAllowed), word: 'stress limit' },
  ];
  return found.flatMap(({ at, word }) =>
    at === undefined
      ? []
      : [
          ...rows.map((row) => upright('limit', x.at(at), row)),
          `<text class="warn" transform="translate(${px(x.at(at) - 5)} ${px(rows[0]!.top + 8)}) rotate(-90)" text-anchor="end">${word}</text>`,
        ],
  );
}

interface Panel {
  /** How far its heading stands above it [px]. */
  readonly head?: number;
  readonly x: Scale;
  readonly travel: Travel;
  readonly name: string;
  /** The second is dashed. */
  readonly curves: readonly ((state: TravelState) => number)[];
  readonly limit?: number;
  /** What each curve is. */
  readonly key?: readonly string[];
}

function panel(box: Box, { x, travel, name, curves, limit, key = [], head = HEAD }: Panel): readonly string[] {
  const { states } = travel;
  const values = states.flatMap((state) => curves.map((curve) => curve(state)));
  const y = scale([0, ...values, ...(limit === undefined ? [] : [limit])], { pixels: [box.bottom, box.top], count: 4 });
  const line = (curve: (state: TravelState) => number, i: number) => {
    const points = states.map((state) => `${px(x.at(state.turns))},${px(y.at(curve(state)))}`).join(' ');
    return `<polyline class="line${i > 0 ? ' second' : ''}" points="${points}"/>`;
  };
  return [
    ...y.ticks.flatMap((tick) => [
      `<line class="grid" x1="${px(box.left)}" x2="${px(box.right)}" y1="${px(y.at(tick))}" y2="${px(y.at(tick))}"/>`,
      `<text class="soft" x="${px(box.left - 8)}" y="${px(y.at(tick) + 4.5)}" text-anchor="end">${y.label(tick)}</text>`,
    ]),
    `<line class="axis" x1="${px(box.left)}" x2="${px(box.right)}" y1="${px(box.bottom)}" y2="${px(box.bottom)}"/>`,
    ...(limit === undefined
      ? []
      : [
          `<line class="limit" x1="${px(box.left)}" x2="${px(box.right)}" y1="${px(y.at(limit))}" y2="${px(y.at(limit))}"/>`,
        ]),
    ...curves.map(line),
    `<text class="head" x="${px(box.left)}" y="${px(box.top - head)}">${escapeXml(name)}</text>`,
    ...key.flatMap((text, i) => {
      const at = box.left + KEYS[i]!;
      const y = box.top - HEAD;
      return [
        `<polyline class="line${i > 0 ? ' second' : ''}" points="${px(at)},${px(y - 4.5)} ${px(at + 30)},${px(y - 4.5)}"/>`,
        `<text x="${px(at + 36)}" y="${px(y)}">${escapeXml(text)}</text>`,
      ];
    }),
  ];
}

/** Is board left around every hole, does every panel keep within the maker's limit, do a receiver's legs reach their sockets? */
import type { Finding } from '../findings.js';
import type { BoardsOfKit } from '../kit/types.js';
import { ROW_WEB } from '../layout/boards/sizes.js';
import type { Board, BoardHole } from '../layout/boards/types.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** Sums of thousandths. */
const HAIR = 2e-3;
/** Leads of a three-leg package as delivered, at least [mm]. Source: TO-92, public outline drawings (12.7 min), from memory. */
const LEGS = 12.7;
/** Thickest leg that a turned-pin socket takes [mm]. Source: common practice, 0.40–0.56. */
const LEG_THICKEST = 0.56;

export const boards: Check<Pick<CheckContext, 'kit' | 'spec'>> = {
  name: 'boards',
  codes: ['boards/hole-edge', 'boards/panel', 'boards/legs', 'boards/panels'],
  run({ kit, spec }) {
    if (!kit.boards || !spec.boards) return [];
    return [
      ...kit.boards.boards.flatMap(holeEdge),
      ...tooLarge(kit.boards, spec.boards.panel),
      ...legs(kit.boards, spec.receivers),
      panels(kit.boards),
    ];
  },
};

interface Web {
  readonly web: number;
  readonly limit: number;
  readonly hole: BoardHole;
  readonly from: string;
}

/** @returns the thinnest web of a board against what it must be, where it is too thin */
function holeEdge(board: Board): Finding[] {
  const webs = board.holes.flatMap((hole, i): Web[] => [
    { web: toEdge(hole, board), limit: hole.ring, hole, from: "the board's edge" },
    ...board.holes.slice(i + 1).map((other): Web => {
      const web = Math.hypot(hole.x - other.x, hole.y - other.y) - (hole.d + other.d) / 2;
      const row = hole.use === 'leg' && other.use === 'leg' && hole.y === other.y;
      return { web, limit: row ? ROW_WEB : Math.max(hole.ring, other.ring), hole, from: `the hole for ${other.label}` };
    }),
  ]);
  const worst = webs.reduce((a, b) => (b.web - b.limit < a.web - a.limit ? b : a));
  if (worst.web >= worst.limit - HAIR) return [];
  const { web, limit, hole, from } = worst;
  const off = toEdge(hole, board) < 0 ? `, ${figure(-toEdge(hole, board))} mm off the board` : '';
  return [
    say({
      code: 'boards/hole-edge',
      severity: 'error',
      subject: board.id,
      measured: web,
      limit,
      unit: 'mm',
      message: `On ${board.id} the hole for ${hole.label} (${hole.use}) at ${figure(hole.x)}, ${figure(hole.y)}${off} leaves ${figure(web)} mm to ${from}; ${figure(limit)} mm hold it.`,
      remedies: ['grid.pitch', 'receivers.part.leg_pitch', 'boards'],
    }),
  ];
}

const toEdge = ({ x, y, d }: BoardHole, { length, height }: Board): number =>
  Math.min(x, y, length - x, height - y) - d / 2;

function tooLarge(
  { panels: { designs } }: BoardsOfKit,
  { x, y }: { readonly x: number; readonly y: number },
): Finding[] {
  return designs.flatMap(({ id, width, height }) => {
    const over = Math.max(width - x, height - y);
    if (over <= HAIR) return [];
    return [
      say({
        code: 'boards/panel',
        severity: 'error',
        subject: id,
        measured: width - x >= height - y ? width : height,
        limit: width - x >= height - y ? x : y,
        unit: 'mm',
        message: `${id} is ${figure(width)} × ${figure(height)} mm; panels may be ${figure(x)} × ${figure(y)} mm.`,
        remedies: ['boards.panel'],
      }),
    ];
  });
}

function legs({ legLength }: BoardsOfKit, { name, part }: CheckContext['spec']['receivers']): Finding[] {
  if (legLength === 0) return [];
  const wide = part.legWidth.value;
  const about = { code: 'boards/legs', severity: 'warning', subject: name, unit: 'mm' } as const;
  return [
    ...(legLength > LEGS
      ? [
          say({
            ...about,
            measured: legLength,
            limit: LEGS,
            message: `A receiver's legs go ${figure(legLength)} mm from its body into their sockets; legs are commonly ${LEGS} mm long at least: measure yours, or lengthen them.`,
            remedies: ['receivers.part', 'boards.receivers'],
          }),
        ]
      : []),
    ...(wide > LEG_THICKEST
      ? [
          say({
            ...about,
            measured: wide,
            limit: LEG_THICKEST,
            message: `Legs ${figure(wide)} mm thick don't go into turned-pin sockets, which take ${LEG_THICKEST} mm: solder a thinner wire to each.`,
            remedies: ['receivers.part.leg_width', 'boards.receivers'],
          }),
        ]
      : []),
  ];
}

function panels({ boards: kinds, places, panels: { designs, spare, waste } }: BoardsOfKit): Finding {
  const ordered = designs.reduce((sum, { order }) => sum + order, 0);
  const several = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;
  return say({
    code: 'boards/panels',
    severity: 'note',
    subject: 'boards',
    measured: ordered,
    unit: 'panels',
    message: `${several(places.length, 'board')} of ${several(kinds.length, 'kind')} come from ${several(ordered, 'panel')} of ${several(designs.length, 'design')}: ${designs.map(({ id, order }) => `${id} ${order} times`).join(', ')}; ${figure(100 * waste)} % of their area is cut away or spare (${several(spare, 'board')} spare).`,
    remedies: ['boards.panel'],
  });
}

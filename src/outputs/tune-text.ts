/** A sweep for the terminal: a table, what its columns and letters mean, and what to take. */

import { QUIET } from '../layout/leaf-search.js';
import { fittedRange } from '../mechanics/end-correction.js';
import { RULE } from '../tune/choose.js';
import { OBJECTIVES } from '../tune/pareto.js';
import { passing, type TuneReport } from '../tune/report.js';
import { FAULTS, type Fault, passes, REMARKS, type TuneRow } from '../tune/types.js';
import { grouped } from '../tune/vary.js';
import { type Column, tableText } from './columns.js';
import { counted, wrap } from './text.js';
import { leafName } from './tune-words.js';

/** More rows than this are not read: the rest stands in the files. */
const MOST_ROWS = 40;

export interface TuneTextOptions {
  /** Columns of the terminal, for the table; sentences are wrapped at 100. */
  readonly width: number;
  /** Every design, however many. */
  readonly all: boolean;
}

/** @returns the whole account, without a newline at the end */
export function tuneText(report: TuneReport, { width, all }: TuneTextOptions): string {
  const said = (text: string, indent = '  ') => wrap(text, { width: Math.min(100, width), indent });
  const rows = chosenRows(report, all);
  const { text, dropped } = tableText(rows, columnsOf(report), width);
  const hidden = report.rows.length - rows.length;
  return [
    headText(report, said),
    text,
    ...(hidden > 0
      ? [said(`${counted(hidden, 'design')} more in tune.csv; --all shows them here. ${tally(report)}`, '')]
      : []),
    meaningText(report, rows, { said, dropped }),
    verdictText(report, said),
  ].join('\n\n');
}

type Said = (text: string, indent?: string) => string;

function headText({ spec, plan, rows, front }: TuneReport, said: Said): string {
  const varied = plan.axes.map(({ path, values }) => `${path} ${few(values)}`).join(', ');
  const lines = [
    said(
      `${spec.title}: ${grouped(rows.length)} designs of its leaf, ${grouped(passing(rows))} pass, ${grouped(front.size)} of them unbeaten.`,
    ),
    said(`Varied${plan.byDefault ? ', as nothing else is asked for' : ''}: ${varied}.`),
  ];
  if (plan.left > 0 && !plan.byDefault)
    lines.push(
      said(`Left out: ${counted(plan.left, 'combination')} of a layout with a number of legs that it can’t have.`),
    );
  return lines.join('\n');
}

function few(values: readonly (number | string)[]): string {
  if (values.length <= 6) return values.join(' ');
  return `${values.slice(0, 3).join(' ')} … ${values.at(-1)} (${grouped(values.length)})`;
}

/** All of them where they can be read at a glance; else the unbeaten and what is taken; where none passes, the nearest misses. */
function chosenRows({ rows, front, now, best, shown }: TuneReport, all: boolean): readonly TuneRow[] {
  if (all || rows.length <= MOST_ROWS) return rows;
  const must = new Set([now, best, shown]);
  const open = rows.filter((row) => front.has(row.point.number));
  const first =
    open.length > 0
      ? open
      : rows.filter(({ figures }) => figures !== null).toSorted((a, b) => a.faults.length - b.faults.length);
  const kept = new Set([...first.slice(0, MOST_ROWS), ...must].filter((row) => row !== undefined));
  return rows.filter((row) => kept.has(row));
}

/** How many fail, by reason. */
function tally({ rows }: TuneReport): string {
  const failing = rows.filter((row) => !passes(row));
  if (failing.length === 0) return '';
  const counts = Object.entries(FAULTS)
    .map(
      ([code]) => [code, failing.filter(({ faults }) => faults.some((fault) => fault.code === code)).length] as const,
    )
    .filter(([, count]) => count > 0)
    .map(([code, count]) => `${code} ${grouped(count)}`);
  return `${grouped(failing.length)} fail: ${counts.join(', ')}.`;
}

function columnsOf({ plan, front, now, best, spec }: TuneReport): readonly Column<TuneRow>[] {
  const varied = new Set(plan.axes.map(({ path }) => path));
  const figure = (of: (figures: NonNullable<TuneRow['figures']>) => number, digits: number) => (row: TuneRow) =>
    row.figures ? round(of(row.figures), digits) : '–';
  const optional: readonly (Column<TuneRow> | false)[] = [
    varied.has('leaf.width') && {
      head: ['width', 'mm'],
      cell: ({ mount, point }) => `${mount?.width ?? point.width ?? '–'}`,
    },
    varied.has('material') && {
      head: ['plastic'],
      cell: ({ point }) => point.material ?? spec.material.name,
      left: true,
    },
    varied.has('screws.adjust') && {
      head: ['screw'],
      cell: ({ point }) => point.adjust ?? spec.screws.adjust,
      left: true,
    },
    varied.has('aim.tilt') && {
      head: ['tilt', 'asked'],
      cell: ({ point, figures }) => `${point.tiltDeg ?? round(figures?.tilt ?? 0, 1)}`,
    },
  ];
  return [
    {
      head: ['#  '],
      // A number and two places for marks.
      cell: (row) =>
        `${row.point.number}${`${row === best ? '>' : front.has(row.point.number) ? '*' : ''}${row === now ? '=' : ''}`.padEnd(2)}`,
    },
    { head: ['leaf', 'mm'], cell: leafCell, short: leafShort, left: true },
    ...optional.filter((column) => column !== false),
    { head: ['tilt', '±°'], cell: figure(({ tiltHeld }) => tiltHeld, 1) },
    {
      head: ['force', 'N'],
      cell: ({ figures }) => (figures ? `${round(figures.force.highest, 2)}–${round(figures.force.lowest, 1)}` : '–'),
    },
    { head: ['rate', 'N/mm'], cell: figure(({ screwStiffness }) => screwStiffness, 2) },
    { head: ['held', '%'], cell: figure(({ strain }) => strain, 2) },
    { head: ['safe', '×'], cell: figure(({ safety }) => safety, 1) },
    { head: ['left', 'N'], cell: figure(({ preloadLeft }) => preloadLeft, 2) },
    { head: ['turn', '°'], cell: figure(({ degPerTurn }) => degPerTurn, 2) },
    { head: ['turn', 'mm'], cell: figure(({ mmPerTurn }) => mmPerTurn, 2) },
    {
      head: ['t ∓.05', '%'],
      cell: ({ figures }) =>
        figures?.thinner && figures.thicker
          ? `${signed(figures.thinner.stiffness)}${signed(figures.thicker.stiffness)}`
          : '–',
    },
    { head: ['long', 'mm'], cell: ({ mount }) => (mount ? round(mount.length, 1) : '–'), rank: 1 },
    { head: ['rings', 'Hz'], cell: figure(({ frequency }) => frequency, 0), rank: 2 },
    { head: ['fails,', 'notes'], cell: letters, left: true },
  ];
}

const NAMES = { 'in-line': 'in-line', upright: 'upright', folded: 'fold', notch: 'notch' } as const;
const leafCell = ({ point: { layout, legs, length, thickness } }: TuneRow): string =>
  `${NAMES[layout]}${layout === 'folded' ? ` ${legs}` : ''} ${length}×${thickness}`;
const leafShort = ({ point: { layout, legs, length, thickness } }: TuneRow): string =>
  `${layout === 'folded' ? `f${legs}` : NAMES[layout].charAt(0)} ${length}×${thickness}`;

const letters = ({ faults, remarks }: TuneRow): string => {
  const failing = [...new Set(faults.map(({ code }) => FAULTS[code].letter))].join('');
  return [failing, remarks.map((code) => REMARKS[code].letter).join('')].filter((part) => part !== '').join(' ');
};

const round = (value: number, digits: number): string => value.toFixed(digits);
const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(0)}`;

function meaningText(
  { spec, plan }: TuneReport,
  rows: readonly TuneRow[],
  { said, dropped }: { readonly said: Said; readonly dropped: readonly string[] },
): string {
  const asked = rows.find(({ figures }) => figures)?.figures;
  const limits = [
    ...new Set(rows.flatMap(({ figures }) => (figures ? [String(Number(figures.strainAllowed.toPrecision(3)))] : []))),
  ].join(' or ');
  const tilt =
    plan.axes.some(({ path }) => path === 'aim.tilt') || !asked ? '' : ` (±${round(asked.tilt, 1)} is asked)`;
  const reach = asked ? `, ${Math.round(asked.reach)} mm away` : '';
  const columns = [
    `leaf: length × thickness${rows.some(({ point }) => point.legs > 1) ? ', fold or f with its number of legs' : ''}${rows.some(({ point }) => point.layout === 'notch') ? '; radius × thickness of a notch' : ''}`,
    `tilt: either way, until the strain held for years is reached${tilt}`,
    'force: along the screw, highest beam to lowest',
    'rate: stiffness at the screw',
    `held: strain at the lowest beam, of ${limits} % that may be held for years`,
    'safe: strength over the peak stress there',
    'left: push of the screw after a year at the highest beam',
    `turn: of the beam, and at the farthest receiver${reach}, for one turn of the ${plan.axes.some(({ path }) => path === 'screws.adjust') ? 'adjusting' : spec.screws.adjust} screw`,
    't ∓.05: change of stiffness when the leaf is printed 0.05 mm thinner, thicker',
    'long: the mount, front to rear',
    ...(dropped.length > 0 ? [`no room here for: ${dropped.join(', ')}`] : []),
    ...(dropped.includes('rings Hz') ? [] : [`rings: first frequency, the screw off its pad; ${QUIET} Hz is quiet`]),
  ];
  const codes = new Set(rows.flatMap(({ faults, remarks }) => [...faults.map(({ code }) => code), ...remarks]));
  const entries = (of: Readonly<Record<string, { letter: string; what: string }>>) =>
    Object.entries(of)
      .filter(([code]) => (codes as ReadonlySet<string>).has(code))
      .map(([, { letter, what }]) => said(`  ${letter}  ${what}`.trim(), '     ').replace(/^(\S)\s+/, '  $1  '));
  const [fails, notes] = [entries(FAULTS), entries(REMARKS)];
  return [
    said(columns.join('; ').concat('.')),
    said(
      `* unbeaten: no other that passes is as good in ${OBJECTIVES.map(({ name, step, unit }) => `${name} (to ${step} ${unit})`).join(', ')} and better in one. > taken: ${RULE}. = what the preset gets as it stands.`,
    ),
    ...(fails.length > 0 ? ['Fails:', ...fails] : []),
    ...(notes.length > 0 ? ['Notes:', ...notes] : []),
    ...(rows.some(({ figures }) => figures && !figures.corrected)
      ? [
          said(
            `Outside the range in which the end corrections were tried (straight leaves ${fittedRange('in-line')}; folds with ${fittedRange('folded')}; any notch) the angle may be off by more than 1 %; a notch's by up to a sixth, by plate theory, which no solid was computed for.`,
          ),
        ]
      : []),
  ].join('\n');
}

function verdictText({ best, shown, rows }: TuneReport, said: Said): string {
  const picked = shown && shown !== best && passing(rows) > 0 ? `\n${rowSaid(shown, said, 'Picked')}` : '';
  if (best) return `${rowSaid(best, said, 'Taken')}${picked}`;
  if (!shown) return said('Nothing here can be drawn.');
  const misses = shown.faults.map(missText).join('; ');
  return said(
    `Nothing passes. Nearest comes ${shown.point.number}, ${leafName(shown.point)}: ${misses}. ${relief(shown)}`,
  );
}

/** What would let it pass. */
function relief({ figures, faults }: TuneRow): string {
  const strained = faults.every(({ code }) => code === 'strain' || code === 'stress' || code === 'stop');
  const tilt = Math.floor(10 * Math.min(figures?.tiltHeld ?? 0, ...(figures ? [figures.tilt] : []))) / 10;
  const less = strained && tilt >= 0.2 ? `With aim.tilt ${tilt} its strain for years would hold. ` : '';
  return `${less}A longer leaf or one of more legs is strained less; another plastic holds more.`;
}

function rowSaid(row: TuneRow, said: Said, word: string): string {
  const misses = row.faults.map(missText).join('; ');
  return said(
    `${word}: ${row.point.number}, ${leafName(row.point)}${misses === '' ? '. The same again with --apply writes it into the preset' : `; it fails: ${misses}`}.`,
  );
}

/** One miss with its figures. */
export function missText({ code, measured, limit, unit, message }: Fault): string {
  if (message !== undefined) return message;
  if (measured === null || limit === null) return FAULTS[code].what;
  const off = limit === 0 ? '' : `, off by ${round(Math.abs(100 * (measured / limit - 1)), 0)} %`;
  return `${code} ${Number(measured.toPrecision(3))} ${unit}, limit ${Number(limit.toPrecision(3))} ${unit}${off}`;
}

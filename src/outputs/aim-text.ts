/** The aim's budget for people: what is off, what cures it, how likely the grid comes right, and what would help most. */
import type { LightBudget } from '../layout/light/budget.js';
import type { GridSamples } from '../layout/light/sample-grids.js';
import { deg } from '../units.js';
import { type AimRow, aimRows } from './aim-rows.js';
import { counted, hanging, wrap } from './text.js';

const figure = (value: number, digits = 2) => value.toFixed(digits);
const percent = (share: number) => {
  const value = 100 * share;
  return `${value > 99.95 && value < 100 ? Math.floor(value * 1000) / 1000 : Number(value.toPrecision(value > 99 ? 4 : 3))} %`;
};

/**
 * @param width - columns to wrap at @param samples - grids that were drawn, if any
 * @returns the budget as a table, without a heading's underline, no newline at the end
 */
export function aimText(
  { aim, levers, signal, finger }: LightBudget,
  { width, samples = null }: { readonly width: number; readonly samples?: GridSamples | null },
): string {
  const { longest, off, against } = aimRows({ aim });
  const { distance } = longest;
  const table = (rows: readonly AimRow[]) =>
    rows
      .map(
        ({ what, angle, mm, cure }) =>
          `  ${what.padEnd(31)}${`${figure(deg(angle))}°`.padStart(7)}${`${figure(mm, 1)} mm`.padStart(10)}${cure === '' || width < 78 ? '' : `  ${cure}`}`,
      )
      .join('\n');
  const each = aim.lines.flatMap((line) => {
    const name = line.line === 'column' ? 'columns' : 'rows';
    return [
      `  ${name.padEnd(9)}${String(line.count).padStart(3)} × ${figure(line.distance, 0)} mm: ${percent(line.chance)} each, all ${percent(line.all)}`,
      `  ${''.padEnd(9)}one turn of the screw ${figure(line.step.perTurn, 1)} mm`,
    ];
  });
  const buy =
    aim.buy === null
      ? 'No number of emitters makes up for that.'
      : aim.buy === aim.needed
        ? `${counted(aim.needed, 'emitter')} are enough.`
        : `Buy ${aim.buy} emitters: those that can’t be brought onto their receiver are exchanged.`;
  const [best] = levers;
  return [
    wrap(`Aim, on the longest beam (${longest.line}s, ${figure(distance, 0)} mm): 99 of 100 errors are below`, {
      width,
      indent: '  ',
    }),
    table(off),
    '  against them',
    table(against),
    ...each,
    `  ${wrap(`Every line comes right with exactly ${counted(aim.needed, 'emitter')}: ${percent(aim.all)}. ${buy}`, { width, indent: '  ' })}`,
    ...(best === undefined
      ? []
      : [
          `  ${wrap(`Helps most: ${best.change} (${best.path}), then ${percent(best.all)}.`, { width, indent: '  ' })}`,
        ]),
    ...(samples === null ? [] : [samplesText(samples, width)]),
    lightText({ signal, finger }, width),
  ].join('\n');
}

/** From the beam to the finger, by line. */
function lightText({ signal, finger }: Pick<LightBudget, 'signal' | 'finger'>, width: number): string {
  const mA = (value: number) => `${Number(value.toPrecision(2))} mA`;
  const { levels, ambient, rejection, cutOff } = signal;
  const lines = signal.lines.map(({ line, lit, toTake, staysLit }, i) => {
    const narrow = finger?.axes[i]?.fingers[0];
    const broad = finger?.axes[i]?.fingers.at(-1);
    const flips =
      toTake === null || narrow === undefined || broad === undefined
        ? 'never dark'
        : `dark once ${(100 * toTake).toFixed(2)} % is taken: a finger of ${narrow.breadth} mm within ${figure(narrow.reach ?? 0, 1)} mm, one of ${broad.breadth} mm within ${figure(broad.reach ?? 0, 1)} mm`;
    return hanging(`  ${line}s`, `${mA(lit)} lit, lit still ${figure(staysLit, 1)} mm off; ${flips}`, {
      width,
      column: 11,
    });
  });
  return [
    wrap(
      `Light at the pin: lit from ${mA(levels.lit)}, dark below ${mA(levels.dark)}; from around ${mA(ambient.diffuse)} behind tubes that cut diffuse light to 1/${Math.round(rejection)} and see up to ${figure(deg(cutOff), 1)}°`,
      { width, indent: '  ' },
    ),
    ...lines,
  ].join('\n');
}

function samplesText({ grids, seed, lines, all }: GridSamples, width: number): string {
  const beside = (name: string, { share, error, chance }: { share: number; error: number; chance: number }) =>
    `  ${name.padEnd(9)}${percent(share).padStart(8)} ± ${figure(100 * error, 2)}, budget ${percent(chance)}`;
  return [
    `  ${wrap(`${grids} grids drawn (seed ${seed}), turned by true rotations instead of small angles; ± one standard error:`, { width, indent: '  ' })}`,
    ...lines.map((line) => beside(`a ${line.line}`, line)),
    beside('all', all),
  ].join('\n');
}

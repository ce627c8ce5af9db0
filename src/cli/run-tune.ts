/** A sweep from the preset to its files: read, plan, compute, tell, and write into the preset where that is asked. */
import { randomBytes } from 'node:crypto';
import { readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { FileError, PresetError } from '../errors.js';
import { withLean } from '../layout/lay-out.js';
import { tuneCsv } from '../outputs/tune-csv.js';
import { TUNE_FORMAT, tuneData, tuneJson } from '../outputs/tune-json.js';
import { tuneSvg } from '../outputs/tune-svg.js';
import { missText, tuneText } from '../outputs/tune-text.js';
import { leafName } from '../outputs/tune-words.js';
import { placeMistakes, readPreset } from '../spec/read-preset.js';
import { applied, valuesOf } from '../tune/apply.js';
import { type Plan, planSweep } from '../tune/points.js';
import { passing, reportOf, type TuneReport } from '../tune/report.js';
import { passes } from '../tune/types.js';
import { readVary, type Vary, type VaryMistake } from '../tune/vary.js';
import { EXIT, type ExitCode, UsageError } from './exit.js';
import { asFileError } from './file-error.js';
import { findPresets, type PresetFile } from './presets.js';
import { printable } from './printable.js';
import { restoreOrphans, swapIn } from './swap.js';
import { say, sayJson, tableWidth } from './terminal.js';
import { tuneRows } from './tune-rows.js';

export interface TuneRun {
  readonly preset: string | undefined;
  readonly vary: readonly Vary[];
  readonly pick: number | undefined;
  readonly out: string;
  readonly apply: boolean;
  readonly all: boolean;
  readonly json: boolean;
}

/** @returns 0 when a design passes, 1 when none does or the one to be applied fails */
export async function runTune({ preset: name, vary, pick, out, apply, all, json }: TuneRun): Promise<ExitCode> {
  const read = readVary(vary);
  if ('mistakes' in read) throw wrongSweep(read.mistakes, vary);
  const file = await onePreset(name);
  const preset = readPreset(file.text, file.path);
  // Its mounts stand around the sleeves that the kit would get.
  const spec = withLean(preset);
  const plan = inItsPlace(file, () => planSweep(spec, read.axes));
  if ('mistakes' in plan) throw wrongSweep(plan.mistakes, vary);
  if (pick !== undefined && pick > plan.points.length)
    throw new UsageError(`--pick ${pick}: the sweep has ${plan.points.length} designs`);
  await restoreOrphans(out);
  const report = reportOf(spec, { plan, rows: await tuneRows(spec, plan.points), pick });
  const files = [tuneCsv(report), tuneJson(report), tuneSvg(report)];
  const folder = await swapIn({
    out,
    kit: `${spec.name}-tune`,
    files,
    mark: { file: 'tune.json', format: TUNE_FORMAT, what: 'a sweep' },
  });
  const lean = preset.aim.wedgeDeg === undefined ? spec.aim.wedgeDeg : undefined;
  const change = apply ? await applyTo(file, { report, plan, lean }) : undefined;
  if (json)
    sayJson({ ...tuneData(report), folder, files: files.map(({ path }) => path), applied: change?.values ?? null });
  else {
    say(printable(tuneText(report, { width: tableWidth(), all })));
    say(
      printable(
        `\nWritten: ${folder}/ (${files.map(({ path }) => path).join(', ')})${change ? `\n${change.text}` : ''}`,
      ),
    );
  }
  return passing(report.rows) === 0 || change?.values === null ? EXIT.findings : EXIT.done;
}

/** With no name given, the only preset there is. */
async function onePreset(preset: string | undefined): Promise<PresetFile> {
  const [file, ...more] = await findPresets(preset === undefined ? [] : [preset]);
  if (more.length > 0)
    throw new UsageError(
      `one preset at a time is tuned; there are ${[file!, ...more].map(({ name }) => name).join(', ')}`,
    );
  return file!;
}

/** A sweep's mistakes are the command line's. */
const wrongSweep = (mistakes: readonly VaryMistake[], vary: readonly Vary[]): UsageError =>
  new UsageError(
    mistakes
      .map(({ path, message, hint, text = vary.find((each) => each.path === path)?.text }) => {
        return `--vary ${path}${text === undefined ? '' : ` ${text}`}: ${message}${hint === undefined ? '' : `; ${hint}`}`;
      })
      .join('\n'),
  );

function inItsPlace<T>({ path, text }: PresetFile, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw error instanceof PresetError ? new PresetError(path, placeMistakes(text, error.mistakes)) : error;
  }
}

interface Change {
  /** Null where it was refused. */
  readonly values: Readonly<Record<string, number | string>> | null;
  readonly text: string;
}

async function applyTo(
  file: PresetFile,
  { report, plan, lean }: { readonly report: TuneReport; readonly plan: Plan; readonly lean: number | undefined },
): Promise<Change> {
  const row = report.shown;
  if (!row || !passes(row)) {
    const why = row
      ? `${row.point.number}, ${leafName(row.point)}, fails: ${row.faults.map(missText).join('; ')}`
      : 'no design can be drawn';
    return { values: null, text: `Not applied: ${why}. ${file.path} stays as it is.` };
  }
  const values = valuesOf(row.point, { axes: plan.axes, lean });
  const text = applied(file.text, file.path, values);
  if (text !== file.text) await replaceFile(file, text);
  const said = Object.entries(values)
    .map(([path, value]) => `${path} ${value}`)
    .join(', ');
  return { values, text: `Applied to ${file.path}: ${said}.` };
}

/** Whole or not at all; a link stays a link, and what somebody else wrote in the meantime is not lost. */
async function replaceFile({ path, text: before }: PresetFile, text: string): Promise<void> {
  const beside = `.${randomBytes(6).toString('hex')}.tmp`;
  let fresh: string | undefined;
  try {
    const target = await realpath(path);
    const now = new TextDecoder('utf-8').decode(await readFile(target));
    if (now !== before) throw new FileError(path, 'was changed while the sweep ran; run it again');
    const { mode } = await stat(target);
    fresh = `${target}${beside}`;
    await writeFile(fresh, text, { flag: 'wx', mode: mode & 0o777 });
    await rename(fresh, target);
  } catch (error) {
    if (fresh !== undefined) await rm(fresh, { force: true });
    throw asFileError(error, path);
  }
}

/** What `kit` and `check` have in common: read every preset, run the jobs, say what became of them. */
import { accept } from '../checks/accept.js';
import { PresetError } from '../errors.js';
import { readPreset } from '../spec/read-preset.js';
import { EXIT, type ExitCode, exitCodeOf, gravest, UsageError } from './exit.js';
import { failureJson, failureText } from './failure-text.js';
import { runJobs, usualWorkers } from './jobs.js';
import type { Job, Outcome } from './outcome.js';
import { outcomesText } from './outcome-text.js';
import { findPresets, type PresetFile } from './presets.js';
import { startProgress } from './progress.js';
import { outcomeJson } from './run-job.js';
import { say, sayJson, warn, width } from './terminal.js';

export interface Run {
  readonly presets: readonly string[];
  /** Folder of all kits; null: only check. */
  readonly out: string | null;
  readonly accept: readonly string[];
  /** Undefined: one a processor core. */
  readonly workers: number | undefined;
  readonly json: boolean;
  /** Grids to draw and align at random, with which seed; null: none. */
  readonly samples?: Job['samples'];
}

/**
 * Nothing is made as long as any preset is wrong: all mistakes of all presets come in one answer.
 *
 * @returns the exit code: the gravest of all kits'
 */
export async function runPresets({
  presets,
  out,
  accept: codes,
  workers,
  json,
  samples = null,
}: Run): Promise<ExitCode> {
  const [unacceptable] = accept([], codes).mistakes;
  if (unacceptable !== undefined)
    throw new UsageError(
      `--accept: ${unacceptable.message}${unacceptable.hint === undefined ? '' : ` ${unacceptable.hint}`}`,
    );
  const files = await findPresets(presets);
  const wrong = mistakesOf(files);
  if (wrong.length > 0) {
    if (json) sayJson({ kits: [], failures: wrong.map(failureJson) });
    else warn(wrong.map((error) => failureText(error, width())).join('\n\n'));
    return gravest(wrong.map(exitCodeOf));
  }
  const jobs = files.map(({ path, name, text }) => ({
    preset: path,
    name,
    text,
    out,
    accept: codes,
    samples,
    width: width(),
  }));
  const progress = startProgress(jobs.length);
  const outcomes = await runJobs(jobs, workers ?? usualWorkers(jobs.length), progress).finally(() => progress.stop());
  if (json) sayJson({ kits: outcomes.map(outcomeJson) });
  else tell(outcomes);
  return gravest(outcomes.map(({ exit }) => exit));
}

function mistakesOf(files: readonly PresetFile[]): readonly PresetError[] {
  return files.flatMap(({ path, text }) => {
    try {
      readPreset(text, path);
      return [];
    } catch (error) {
      if (error instanceof PresetError) return [error];
      throw error;
    }
  });
}

function tell(outcomes: readonly Outcome[]): void {
  const drawn = outcomes.filter(({ status }) => status !== 'failed');
  if (drawn.length > 0) say(outcomesText(drawn, width()));
  for (const { failure, name, exit } of outcomes) {
    if (failure === null) continue;
    warn(`${exit === EXIT.preset ? '' : `${name}: `}${failure.text}`);
  }
}

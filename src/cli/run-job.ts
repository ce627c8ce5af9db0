/** One preset from its text to its folder. Runs in the main thread or in a worker. */
import { createHash } from 'node:crypto';
import { findingJson } from '../outputs/kit-json.js';
import { madeText, summaryText } from '../outputs/summary.js';
import { checkKit, makeKit } from '../pipeline.js';
import { loadManifold } from '../solid/manifold-kernel.js';
import { readPreset } from '../spec/read-preset.js';
import { EXIT, exitCodeOf } from './exit.js';
import { failureJson, failureText } from './failure-text.js';
import type { Job, JobStage, Outcome } from './outcome.js';
import { swapIn } from './swap.js';

/** @returns the SHA-256 as lower-case hex */
export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * @param progress - called as each stage begins
 * @returns what became of it; never throws, so that one bad kit doesn't end the others
 */
export async function runJob(job: Job, progress: (stage: JobStage) => void): Promise<Outcome> {
  const { name, preset, out, width } = job;
  const nothing = {
    name,
    preset,
    folder: null,
    files: [],
    findings: [],
    solved: [],
    made: '',
    summary: '',
    failure: null,
  };
  try {
    const spec = readPreset(job.text, preset);
    const { kernel, profiles } = await loadManifold();
    const tools = { kernel, profiles, hash: sha256, progress, accept: job.accept };
    const result = out === null ? checkKit(spec, tools) : makeKit(spec, tools);
    const { context, blocked, files } = result;
    const told = {
      ...nothing,
      findings: context.findings,
      solved: context.solved,
      made: madeText(context, width),
    };
    const summary = (written: boolean) => summaryText(context, { width, files: written });
    if (blocked) return { ...told, status: 'refused', exit: EXIT.findings, summary: summary(false) };
    if (out === null) return { ...told, status: 'passed', exit: EXIT.done, summary: summary(false) };
    progress('writing');
    const folder = await swapIn({ out, kit: spec.name, files });
    return {
      ...told,
      status: 'made',
      exit: EXIT.done,
      folder,
      files: files.map(({ path }) => path),
      summary: summary(true),
    };
  } catch (error) {
    const failure = { text: failureText(error, width), data: failureJson(error) };
    return { ...nothing, status: 'failed', exit: exitCodeOf(error), failure };
  }
}

/** @returns the outcome as `--json` shows it */
export const outcomeJson = ({ name, preset, status, folder, files, findings, solved, failure }: Outcome) => ({
  name,
  preset,
  status,
  folder,
  files,
  findings: findings.map(findingJson),
  solved,
  ...(failure === null ? {} : { failure: failure.data }),
});

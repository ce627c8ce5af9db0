/** One preset from its text to its folder. Runs in the main thread or in a worker. */
import { createHash } from 'node:crypto';
import { PresetError } from '../errors.js';
import { type GridSamples, sampleGrids } from '../layout/light/sample-grids.js';
import { findingJson } from '../outputs/kit-json.js';
import { samplesJson } from '../outputs/light-json.js';
import type { Made } from '../outputs/make-outputs.js';
import { madeText, summaryText } from '../outputs/summary.js';
import { makeKit } from '../pipeline.js';
import { loadManifold } from '../solid/manifold-kernel.js';
import { placeMistakes, readPreset } from '../spec/read-preset.js';
import { compression } from './compression.js';
import { type Beside, drawBeside } from './draw-beside.js';
import { EXIT, exitCodeOf } from './exit.js';
import { failureJson, failureText } from './failure-text.js';
import { type Job, type JobStage, nothingYet, type Outcome } from './outcome.js';
import { swapIn } from './swap.js';
import { viewerScript } from './viewer-script.js';

/** @returns the SHA-256 as lower-case hex */
export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * @param progress - called as each stage begins
 * @returns what became of it; never throws, so that one bad kit doesn't end the others
 */
export async function runJob(job: Job, progress: (stage: JobStage, share?: number) => void): Promise<Outcome> {
  const { preset, out, width } = job;
  const nothing = nothingYet(job);
  const draw = ({ context }: Made): GridSamples | null => {
    if (job.samples === null) return null;
    progress('samples');
    return sampleGrids(context.light, job.samples, (share) => progress('samples', share));
  };
  let beside: Beside | null = null;
  try {
    const spec = readPreset(job.text, preset);
    // A check has no use for what writes files, nor for the libraries that come with it.
    const outputs = out === null ? null : (await import('../outputs/index.js')).OUTPUTS;
    beside = outputs === null ? null : drawBeside();
    const { kernel, profiles } = await loadManifold();
    const { files, ...told } = kernel.scope(() => {
      const made = makeKit(spec, {
        kernel,
        profiles,
        hash: sha256,
        outputs,
        draw: beside?.draw,
        compression,
        viewer: outputs === null ? '' : viewerScript(),
        progress,
        accept: job.accept,
      });
      return { keep: [], value: tell(made, { job, samples: draw(made) }) };
    });
    if (told.exit !== EXIT.done || out === null) return { ...nothing, ...told };
    progress('writing');
    const folder = await swapIn({ out, kit: spec.name, files });
    return { ...nothing, ...told, status: 'made', folder, files: files.map(({ path }) => path) };
  } catch (error) {
    const placed = inItsPlace(error, job);
    const failure = { text: failureText(placed, width), data: failureJson(placed) };
    return { ...nothing, status: 'failed', exit: exitCodeOf(placed), failure };
  } finally {
    beside?.end();
  }
}

/** What is said of the kit, while its solids are still there. */
function tell(
  { context, blocked, files }: Made,
  { job: { out, width }, samples }: { readonly job: Job; readonly samples: GridSamples | null },
) {
  return {
    status: blocked ? ('refused' as const) : ('passed' as const),
    exit: blocked ? EXIT.findings : EXIT.done,
    findings: context.findings,
    solved: context.solved,
    samples,
    made: madeText(context, width),
    summary: summaryText(context, { width, files: out !== null && !blocked, samples }),
    files,
  };
}

/** A later stage knows the preset's path of a mistake, not its line. */
const inItsPlace = (error: unknown, { preset, text }: Job): unknown =>
  error instanceof PresetError ? new PresetError(preset, placeMistakes(text, error.mistakes)) : error;

/** @returns the outcome as `--json` shows it */
export const outcomeJson = ({ name, preset, status, folder, files, findings, solved, samples, failure }: Outcome) => ({
  name,
  preset,
  status,
  folder,
  files,
  findings: findings.map(findingJson),
  solved,
  ...(samples === null ? {} : { samples: samplesJson(samples) }),
  ...(failure === null ? {} : { failure: failure.data }),
});

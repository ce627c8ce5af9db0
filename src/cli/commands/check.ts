/** `beamloom check [preset..]`: runs every check and writes nothing. */
import type { Argv } from 'yargs';
import { type ExitCode, UsageError } from '../exit.js';
import { acceptFlag, jobsFlag, jsonFlag, presetsArgument, wholeNumber, workerCount } from '../flags.js';

export const command = 'check [preset..]';
export const describe = 'Check the kits of all presets, or of those named; write nothing';

/** Most grids that may be drawn: a few minutes for a large one. */
const MOST_GRIDS = 1_000_000;
const MOST_SEED = 2 ** 31 - 1;

export const builder = (yargs: Argv) =>
  jobsFlag(acceptFlag(jsonFlag(presetsArgument(yargs))))
    .option('samples', {
      describe: `Draw so many grids at random (1 to ${MOST_GRIDS}), align them by true rotations, and show the result beside the budget`,
      type: 'string',
      requiresArg: true,
      defaultDescription: 'none',
    })
    .option('seed', {
      describe: 'Which draw: the same number draws the same grids',
      type: 'string',
      requiresArg: true,
      defaultDescription: '1',
    });

export async function run(flags: Awaited<ReturnType<typeof builder>['argv']>): Promise<ExitCode> {
  const workers = workerCount(flags.jobs);
  const { runPresets } = await import('../run-presets.js');
  const grids = wholeNumber('samples', flags.samples, { least: 1, most: MOST_GRIDS });
  const seed = wholeNumber('seed', flags.seed, { least: 0, most: MOST_SEED });
  if (seed !== undefined && grids === undefined) throw new UsageError('--seed is of use only with --samples');
  const samples = grids === undefined ? null : { grids, seed: seed ?? 1 };
  return runPresets({ presets: flags.preset, out: null, accept: flags.accept, workers, json: flags.json, samples });
}

/** `beamloom check [preset..]`: runs every check and writes nothing. */
import type { Argv } from 'yargs';
import type { ExitCode } from '../exit.js';
import { acceptFlag, jobsFlag, jsonFlag, presetsArgument, workerCount } from '../flags.js';

export const command = 'check [preset..]';
export const describe = 'Check the kits of all presets, or of those named; write nothing';

export const builder = (yargs: Argv) => jobsFlag(acceptFlag(jsonFlag(presetsArgument(yargs))));

export async function run(flags: Awaited<ReturnType<typeof builder>['argv']>): Promise<ExitCode> {
  const workers = workerCount(flags.jobs);
  const { runPresets } = await import('../run-presets.js');
  return runPresets({ presets: flags.preset, out: null, accept: flags.accept, workers, json: flags.json });
}

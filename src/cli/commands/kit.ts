/** `beamloom kit [preset..]`: makes kits. */
import type { Argv } from 'yargs';
import type { ExitCode } from '../exit.js';
import { acceptFlag, folder, jobsFlag, jsonFlag, presetsArgument, workerCount } from '../flags.js';

export const command = 'kit [preset..]';
export const describe = 'Make the kits of all presets, or of those named';

export const builder = (yargs: Argv) =>
  jobsFlag(acceptFlag(jsonFlag(presetsArgument(yargs)))).option('out', {
    describe: 'Folder in which each kit gets its own folder',
    type: 'string',
    requiresArg: true,
    default: 'out',
  });

export async function run(flags: Awaited<ReturnType<typeof builder>['argv']>): Promise<ExitCode> {
  const out = folder('out', flags.out, 'out');
  const workers = workerCount(flags.jobs);
  const { restoreOrphans } = await import('../swap.js');
  const { runPresets } = await import('../run-presets.js');
  await restoreOrphans(out);
  return runPresets({ presets: flags.preset, out, accept: flags.accept, workers, json: flags.json });
}

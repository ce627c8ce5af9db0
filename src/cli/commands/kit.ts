/** `beamloom kit [preset..]`: makes kits. */
import type { Argv } from 'yargs';
import { type ExitCode, UsageError } from '../exit.js';
import { acceptFlag, folder, jobsFlag, jsonFlag, presetsArgument, workerCount } from '../flags.js';

export const command = 'kit [preset..]';
export const describe = 'Make the kits of all presets, or of those named';

export const builder = (yargs: Argv) =>
  jobsFlag(acceptFlag(jsonFlag(presetsArgument(yargs))))
    .option('out', {
      describe: 'Folder in which each kit gets its own folder',
      type: 'string',
      requiresArg: true,
      default: 'out',
    })
    .option('watch', {
      describe: 'Make the kit again whenever its preset is saved, and refresh its report in the browser',
      type: 'boolean',
      default: false,
    });

export async function run(flags: Awaited<ReturnType<typeof builder>['argv']>): Promise<ExitCode> {
  const out = folder('out', flags.out, 'out');
  const workers = workerCount(flags.jobs);
  const { restoreOrphans } = await import('../swap.js');
  const { runPresets } = await import('../run-presets.js');
  await restoreOrphans(out);
  const make = () => runPresets({ presets: flags.preset, out, accept: flags.accept, workers, json: flags.json });
  if (!flags.watch) return make();
  if (flags.json) throw new UsageError('--watch goes on until it is interrupted: leave out --json');
  const { findPresets } = await import('../presets.js');
  const { watchPreset } = await import('../watch.js');
  return watchPreset({ files: await findPresets(flags.preset), out, make });
}

/** `beamloom tune [preset]`: sweeps the mount's leaf, tells which designs hold, writes the chosen one into the preset. */
import type { Argv } from 'yargs';
import { type ExitCode, UsageError } from '../exit.js';
import { folder, jsonFlag, single } from '../flags.js';

export const command = 'tune [preset]';
export const describe = 'Sweep the stiffness of a preset\u2019s leaf and compare the designs';

export const builder = (yargs: Argv) =>
  jsonFlag(yargs)
    .positional('preset', {
      describe: 'Name of a preset in ./presets, or a path; none: the only one there',
      type: 'string',
    })
    .options({
      vary: {
        describe:
          'A path of the preset and its values, as in --vary leaf.thickness 0.86,1.26 --vary leaf.length 8..12/0.5; may be repeated',
        type: 'string',
        nargs: 2,
        defaultDescription: 'layout, legs, thickness and length around the solved leaf',
      },
      pick: {
        describe: 'Number of the design to draw, and to apply',
        type: 'string',
        requiresArg: true,
        defaultDescription: 'the best',
      },
      apply: { describe: 'Write the design into the preset; comments stay', type: 'boolean', default: false },
      all: { describe: 'Show every design in the table', type: 'boolean', default: false },
      out: {
        describe: 'Folder in which PRESET-tune/ gets tune.csv, tune.json and tune.svg',
        type: 'string',
        requiresArg: true,
        default: 'out',
      },
    })
    .example('$0 tune --vary leaf.thickness 0.86,1.26 --vary material petg,pla', 'two thicknesses in two plastics')
    .example('$0 tune --pick 12 --apply', 'write design 12 of the usual sweep into the preset');

export async function run(flags: Awaited<ReturnType<typeof builder>['argv']>): Promise<ExitCode> {
  const vary = pairs(flags.vary);
  const pick = numberOf(single('pick', flags.pick));
  const out = folder('out', flags.out, 'out');
  if (Array.isArray(flags.preset)) throw new UsageError('one preset at a time is tuned');
  const { runTune } = await import('../run-tune.js');
  return runTune({ preset: flags.preset, vary, pick, out, apply: flags.apply, all: flags.all, json: flags.json });
}

/** The parser gives two words a flag, one after the other. */
function pairs(given: unknown): readonly { readonly path: string; readonly text: string }[] {
  if (given === undefined) return [];
  const words = (given as readonly unknown[]).map(String);
  return Array.from({ length: words.length / 2 }, (_, i) => ({ path: words[2 * i]!, text: words[2 * i + 1]! }));
}

function numberOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text) || Number(text) < 1)
    throw new UsageError(`--pick takes the number of a design, from 1, not "${text}"`);
  return Number(text);
}

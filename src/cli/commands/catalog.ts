/** `beamloom catalog [kind]`: the data that presets may name, with sources. */
import type { Argv } from 'yargs';
import { EXIT, type ExitCode, UsageError } from '../exit.js';
import { jsonFlag } from '../flags.js';
import { say, sayJson, width } from '../terminal.js';

export const command = 'catalog [kind]';
export const describe = 'Show the materials, printers, emitters, receivers, modules and hardware that presets may name';

export const builder = (yargs: Argv) =>
  jsonFlag(yargs).positional('kind', {
    describe: 'One catalogue, with every figure and its source; none: the names in all of them',
    type: 'string',
  });

export async function run({ kind, json }: Awaited<ReturnType<typeof builder>['argv']>): Promise<ExitCode> {
  const { catalogJson, catalogText, KINDS } = await import('../catalog-text.js');
  const known = KINDS.find((each) => each === kind);
  if (kind !== undefined && known === undefined)
    throw new UsageError(`there is no catalogue "${kind}"; there are ${KINDS.join(', ')}`);
  if (json) sayJson(catalogJson(known));
  else say(catalogText(known, width()));
  return EXIT.done;
}

#!/usr/bin/env node
/** The command line: flags in, exit code out. Each command is a file of its own. */
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import * as catalog from './commands/catalog.js';
import * as check from './commands/check.js';
import * as kit from './commands/kit.js';
import * as create from './commands/new.js';
import * as tune from './commands/tune.js';
import { type ExitCode, exitCodeOf, UsageError } from './exit.js';
import { failureJson, failureText } from './failure-text.js';
import { endQuietlyOnClosedPipe, sayJson, warn, width } from './terminal.js';

endQuietlyOnClosedPipe();
try {
  await commandLine().parseAsync();
} catch (error) {
  if (process.argv.includes('--json')) sayJson(failureJson(error));
  else warn(failureText(error, width()));
  process.exitCode = exitCodeOf(error);
}

function commandLine() {
  const ends = <F>(run: (flags: F) => Promise<ExitCode>) => {
    return async (flags: F): Promise<void> => {
      process.exitCode = await run(flags);
    };
  };
  return yargs(hideBin(process.argv))
    .scriptName('beamloom')
    .locale('en')
    .usage('$0 COMMAND\n\nDesigns, checks and writes printable kits for touch-free panels of crossed light beams.')
    .command(kit.command, kit.describe, kit.builder, ends(kit.run))
    .command(check.command, check.describe, check.builder, ends(check.run))
    .command(tune.command, tune.describe, tune.builder, ends(tune.run))
    .command(create.command, create.describe, create.builder, ends(create.run))
    .command(catalog.command, catalog.describe, catalog.builder, ends(catalog.run))
    .epilogue(
      'Ends with 0 when done, 1 when a check finds an error, 2 when a preset or a flag is wrong, 3 when a file can\u2019t be read or written, 70 for a bug.\n' +
        'Laser light can hurt: read the cautions that come with every kit before you power a beam.',
    )
    .demandCommand(1, 'Which command?')
    .strict()
    .recommendCommands()
    .wrap(width())
    .help()
    .version()
    .exitProcess(false)
    .fail((message, error) => {
      // The parser's own complaints come as an error of its kind, or as a message alone.
      throw error === undefined || error === null || error.name === 'YError'
        ? new UsageError(message ?? error.message)
        : error;
    });
}

#!/usr/bin/env node
/** The command line: flags in, exit code out. Each command is a file of its own. */
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { list, nearest, quote } from '../spec/words.js';
import * as catalog from './commands/catalog.js';
import * as check from './commands/check.js';
import * as kit from './commands/kit.js';
import * as create from './commands/new.js';
import * as tune from './commands/tune.js';
import { type ExitCode, exitCodeOf, UsageError } from './exit.js';
import { failureJson, failureText } from './failure-text.js';
import { endQuietlyOnClosedPipe, sayJson, warn, width } from './terminal.js';

const COMMANDS = [kit, check, tune, create, catalog].map(({ command }) => command.split(' ')[0]!);
const FLAGS = [
  'accept',
  'all',
  'apply',
  'columns',
  'emitter',
  'help',
  'jobs',
  'json',
  'material',
  'out',
  'pick',
  'pitch',
  'printer',
  'receiver',
  'rows',
  'samples',
  'seed',
  'title',
  'vary',
  'version',
  'watch',
];

endQuietlyOnClosedPipe();
try {
  await commandLine().parseAsync();
} catch (error) {
  if (process.argv.includes('--json')) sayJson(failureJson(error));
  else warn(failureText(error, width()));
  process.exitCode = exitCodeOf(error);
}

function commandLine() {
  const ends = <F>(run: (flags: F) => Promise<ExitCode>, takesPreset = false) => {
    return async (flags: F): Promise<void> => {
      process.exitCode = await run(withRest(flags, takesPreset));
    };
  };
  const words = hideBin(process.argv);
  const first = words[0];
  if (first !== undefined && !first.startsWith('-') && !COMMANDS.includes(first))
    throw new UsageError(
      `there is no command ${quote(first)}; ${meant(first, COMMANDS) ?? `there are ${list(COMMANDS, 'and')}`}`,
    );
  return yargs(words)
    .parserConfiguration({ 'populate--': true })
    .scriptName('beamloom')
    .locale('en')
    .usage('$0 COMMAND\n\nDesigns, checks and writes printable kits for touch-free panels of crossed light beams.')
    .command(kit.command, kit.describe, kit.builder, ends(kit.run))
    .command(check.command, check.describe, check.builder, ends(check.run))
    .command(tune.command, tune.describe, tune.builder, ends(tune.run, true))
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
        ? new UsageError(withNearFlags(message ?? error.message))
        : error;
    });
}

/** Words after `--` are names, whatever they begin with. */
function withRest<F>(flags: F, takesPreset: boolean): F {
  const { '--': rest = [], preset } = flags as { '--'?: readonly string[]; preset?: unknown };
  if (rest.length === 0) return flags;
  if (Array.isArray(preset)) return { ...flags, preset: [...preset, ...rest] };
  if (takesPreset && preset === undefined && rest.length === 1) return { ...flags, preset: rest[0] };
  throw new UsageError(`${quote(rest[0]!)} after -- is one name too many`);
}

function withNearFlags(message: string): string {
  const unknown = /^Unknown arguments?: (.+)$/.exec(message)?.[1]?.split(', ');
  if (unknown === undefined) return message;
  const near = unknown.flatMap((flag) => meant(flag, FLAGS, '--') ?? []);
  return `unknown: ${unknown.map((flag) => quote(flag)).join(', ')}${near.length > 0 ? `; ${near.join('; ')}` : ''}`;
}

function meant(word: string, known: readonly string[], before = ''): string | undefined {
  const near = nearest(word, known);
  return near.length === 0 ? undefined : `did you mean ${list(near.map((name) => before + name))}?`;
}

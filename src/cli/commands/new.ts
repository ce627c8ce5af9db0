/** `beamloom new <name>`: writes a commented preset from a few figures. */
import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import type { Argv } from 'yargs';
import { FileError, PresetError } from '../../errors.js';
import type { NewPreset } from '../../spec/write-preset.js';
import { EXIT, type ExitCode, StoppedError, UsageError } from '../exit.js';
import { asFileError } from '../file-error.js';
import { jsonFlag, single } from '../flags.js';
import { type Ask, fromAnswers, fromFlags, type Judge, type NewFlags } from '../new-figures.js';
import { PRESETS_FOLDER } from '../presets.js';
import { say, sayJson } from '../terminal.js';

const SCHEMA = 'preset.schema.json';

export const command = 'new <name>';
export const describe = `Write a commented preset to ./${PRESETS_FOLDER}, from flags or from your answers`;

export const builder = (yargs: Argv) =>
  jsonFlag(yargs)
    .positional('name', {
      describe: 'Small letters, digits and hyphens: the file and the kit get this name',
      type: 'string',
      demandOption: true,
    })
    .options({
      title: { describe: 'What the kit is called', type: 'string', requiresArg: true },
      rows: { describe: 'Number of rows, or their depths in mm: 24,24,30', type: 'string', requiresArg: true },
      columns: { describe: 'Number of columns, or their widths in mm', type: 'string', requiresArg: true },
      pitch: { describe: 'Between neighbouring beams in mm, or 22,20 for x and y', type: 'string', requiresArg: true },
      emitter: { describe: 'A name of the catalogue', type: 'string', requiresArg: true },
      receiver: { describe: 'A name of the catalogue', type: 'string', requiresArg: true },
      material: { describe: 'A name of the catalogue', type: 'string', requiresArg: true },
      printer: { describe: 'A name of the catalogue', type: 'string', requiresArg: true },
    });

type Flags = Awaited<ReturnType<typeof builder>['argv']>;

export async function run(flags: Flags): Promise<ExitCode> {
  const { readPreset } = await import('../../spec/read-preset.js');
  const { writePreset } = await import('../../spec/write-preset.js');
  const path = join(PRESETS_FOLDER, `${flags.name}.yaml`);
  const read = (preset: NewPreset, file: string) => readPreset(writePreset(preset), file);
  const judge = judgeBy((preset, file) => read(preset, file));

  refuseName(flags.name, path, judge);
  const given = figuresOf(flags);
  const title = flags.name.charAt(0).toUpperCase() + flags.name.slice(1).replaceAll('-', ' ');
  const complete = given.rows !== undefined && given.columns !== undefined && given.pitch !== undefined;
  const canAsk = process.stdin.isTTY && process.stdout.isTTY && !flags.json;
  const preset =
    complete || !canAsk
      ? fromFlags(title, given)
      : await atTheTerminal((ask) => fromAnswers(title, given, { ask, judge: (p) => judge(p, path), tell: say }));

  const schema = existsSync(join(PRESETS_FOLDER, SCHEMA)) ? { schema: SCHEMA } : {};
  const text = writePreset({ ...preset, ...schema });
  refuseFigures(() => readPreset(text, path), path);
  await save(path, text);
  if (flags.json) sayJson({ preset: path });
  else say(`Written: ${path}\nEdit it as you like, then: beamloom kit ${flags.name}`);
  return EXIT.done;
}

/** @returns the first mistake of a preset in a sentence, or null */
const judgeBy =
  (read: (preset: NewPreset, file: string) => unknown) =>
  (preset: NewPreset, file: string): ReturnType<Judge> => {
    try {
      read(preset, file);
      return null;
    } catch (error) {
      if (!(error instanceof PresetError)) throw error;
      const [first] = error.mistakes;
      return first === undefined ? null : [first.message, first.hint].filter((part) => part !== undefined).join('; ');
    }
  };

/** A name that can't be used is said before any question is asked. */
function refuseName(name: string, path: string, judge: (preset: NewPreset, file: string) => string | null): void {
  const problem = judge({ title: 'x', rows: 1, columns: 1, pitch: 22 }, path);
  // A name with a separator in it would lead elsewhere although its last part is sound.
  if (problem !== null || /[/\\]/.test(name)) throw new UsageError(problem ?? `"${name}" is a path; a name is wanted`);
  const taken = [path, path.replace(/\.yaml$/, '.yml')].find((each) => existsSync(each));
  if (taken !== undefined) throw new FileError(taken, 'is there already and is not overwritten');
}

/** Positions would point into a file that is not there. */
function refuseFigures(read: () => unknown, path: string): void {
  try {
    read();
  } catch (error) {
    if (!(error instanceof PresetError)) throw error;
    throw new PresetError(
      path,
      error.mistakes.map(({ line: _line, column: _column, ...mistake }) => mistake),
    );
  }
}

function figuresOf(flags: Flags): NewFlags {
  const names = ['title', 'rows', 'columns', 'pitch', 'emitter', 'receiver', 'material', 'printer'] as const;
  return Object.fromEntries(names.map((name) => [name, single(name, flags[name])]));
}

async function atTheTerminal<T>(work: (ask: Ask) => Promise<T>): Promise<T> {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const stopped = new Promise<never>((_, reject) => {
    terminal.once('close', () => reject(new StoppedError('\nStopped: nothing is written.')));
  });
  try {
    return await Promise.race([work((question) => terminal.question(question)), stopped]);
  } finally {
    stopped.catch(() => {});
    terminal.close();
  }
}

async function save(path: string, text: string): Promise<void> {
  try {
    await mkdir(PRESETS_FOLDER, { recursive: true });
    await writeFile(path, text, { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST')
      throw new FileError(path, 'is there already and is not overwritten');
    throw asFileError(error, path);
  }
}

/** `kit PRESET --watch`: makes the kit again whenever its preset is saved, until interrupted. */
import { watch } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { EXIT, type ExitCode, exitCodeOf, UsageError } from './exit.js';
import { failureText } from './failure-text.js';
import type { PresetFile } from './presets.js';
import { serveReport } from './serve.js';
import { say, warn, width } from './terminal.js';

/** An editor writes in several steps: wait until it is quiet [ms]. */
const QUIET = 150;

export interface Watching {
  readonly files: readonly PresetFile[];
  readonly out: string;
  /** Makes the kit and says what became of it. */
  readonly make: () => Promise<ExitCode>;
}

/** @throws {UsageError} unless it is one preset */
export async function watchPreset({ files, out, make }: Watching): Promise<ExitCode> {
  const [file] = files;
  if (file === undefined || files.length > 1)
    throw new UsageError(
      `--watch takes one preset; here are ${files.length}: ${files.map(({ name }) => name).join(', ')}`,
    );
  const served = await serveReport(join(out, file.name, 'report.html'));
  await makeAnyway(make);
  say(`\nWatching ${file.path}; the report: ${served.url}\nInterrupt (Ctrl+C) to end.`);

  let made = file.text;
  let busy: Promise<void> = Promise.resolve();
  let timer: NodeJS.Timeout | undefined;
  const again = async (): Promise<void> => {
    // A file that is just being replaced comes back at once.
    const text = await readFile(file.path, 'utf8').catch(() => made);
    if (text === made) return;
    made = text;
    say('');
    if ((await makeAnyway(make)) === EXIT.done) served.refresh();
  };
  // The folder, not the file: an editor that writes a new file over the old one would be lost.
  const watcher = watch(dirname(file.path), (_, name) => {
    if (name !== null && name !== basename(file.path)) return;
    clearTimeout(timer);
    timer = setTimeout(() => {
      busy = busy.then(again, again);
    }, QUIET);
  });
  await new Promise<void>((done) => {
    process.once('SIGINT', done);
    process.once('SIGTERM', done);
  });
  clearTimeout(timer);
  watcher.close();
  await busy;
  await served.close();
  return EXIT.done;
}

/** A preset that can't be read for a moment ends one making, not the watch. */
async function makeAnyway(make: () => Promise<ExitCode>): Promise<ExitCode> {
  try {
    return await make();
  } catch (error) {
    warn(failureText(error, width()));
    return exitCodeOf(error);
  }
}

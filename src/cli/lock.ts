/** One run a kit: a lock file with the owner's process, which nobody has to clean up after a crash. */
import { readFileSync } from 'node:fs';
import { open, readFile, rm, stat } from 'node:fs/promises';
import { FileError } from '../errors.js';
import { asFileError } from './file-error.js';

/** Writing a lock or breaking one takes milliseconds; what is older than this [ms] was left by a crash. */
const YOUNG = 10_000;

/** Another run, alive, makes this kit. */
export class HeldError extends FileError {}

/**
 * Runs `work` while holding the lock.
 *
 * @param path - lock file; its folder must be there
 * @throws {HeldError} when another run, alive, holds it
 */
export async function withLock<T>(path: string, work: () => Promise<T>): Promise<T> {
  if (!(await create(path))) {
    await breakStale(path);
    if (!(await create(path))) throw held(path);
  }
  try {
    return await work();
  } finally {
    await rm(path, { force: true });
  }
}

/** Only the holder of the guard may remove a lock, and it looks once more: two runs can't both take over. */
async function breakStale(path: string): Promise<void> {
  const guard = `${path}-guard`;
  if (!(await create(guard))) {
    if (await isYoung(guard)) throw held(path);
    await rm(guard, { force: true });
    if (!(await create(guard))) throw held(path);
  }
  try {
    const owner = await readFile(path, 'utf8').catch(() => null);
    if (owner !== null && (owner === '' ? await isYoung(path) : isAlive(owner))) throw held(path, owner);
    await rm(path, { force: true });
  } finally {
    await rm(guard, { force: true });
  }
}

/** A lock that is empty is being written just now, unless a crash cut it off: age tells. */
async function isYoung(path: string): Promise<boolean> {
  const made = await stat(path).catch(() => null);
  return made !== null && Date.now() - made.mtimeMs < YOUNG;
}

async function create(path: string): Promise<boolean> {
  try {
    const handle = await open(path, 'wx').catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'EEXIST') return null;
      throw error;
    });
    if (handle === null) return false;
    try {
      await handle.writeFile(`${process.pid} ${startOf(process.pid)}\n`);
    } catch (error) {
      await rm(path, { force: true });
      throw error;
    } finally {
      await handle.close();
    }
    return true;
  } catch (error) {
    throw asFileError(error, path);
  }
}

/** Process ids come round again: the one that wrote the lock has its start time too, where the system tells it. */
function isAlive(owner: string): boolean {
  const [pid = '', start = ''] = owner.trim().split(' ');
  if (!/^\d+$/.test(pid)) return false;
  try {
    process.kill(Number(pid), 0);
  } catch (error) {
    // EPERM: it is there, but somebody else's.
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  return start === startOf(Number(pid));
}

/** Clock ticks since boot at which the process began, or `-` where that can't be read. */
function startOf(pid: number): string {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // The command name, in brackets, may hold blanks: count fields behind it. The start is field 22.
    return text.slice(text.lastIndexOf(')') + 2).split(' ')[19] ?? '-';
  } catch {
    return '-';
  }
}

const held = (path: string, owner = '') =>
  new HeldError(
    path,
    `another run is making this kit${owner === '' ? '' : ` (process ${owner.trim().split(' ')[0]})`}; wait for it to end`,
  );

/** Makes a folder and those above it. */
import { mkdir, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { FileError } from '../errors.js';
import { asFileError } from './file-error.js';

/**
 * One folder after the other from the first that is there: left to the system, a folder below one that takes none (/proc) is tried
 * for ever.
 *
 * @throws {FileError} when one can't be made, or something else stands in its place
 */
export async function makeFolder(path: string): Promise<void> {
  const missing: string[] = [];
  let at = resolve(path);
  for (;;) {
    const there = await stat(at).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw asFileError(error, path);
    });
    if (there?.isDirectory()) break;
    if (there !== null) throw new FileError(path, at === resolve(path) ? 'is not a folder' : 'lies below a file');
    missing.unshift(at);
    const above = dirname(at);
    if (above === at) break;
    at = above;
  }
  for (const folder of missing) {
    try {
      await mkdir(folder);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      // Another run may have made it meanwhile.
      if (code === 'EEXIST' && (await stat(folder).catch(() => null))?.isDirectory()) continue;
      // What the system says of a folder that it can't make is true of something else.
      if (code === 'ENOENT' || code === 'EEXIST')
        throw new FileError(path, 'can\u2019t be made: the folder above it is missing or takes none', { cause: error });
      throw asFileError(error, path);
    }
  }
}

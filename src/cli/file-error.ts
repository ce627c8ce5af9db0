/** The system's error codes in words. */
import { FileError } from '../errors.js';

const WORDS: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'not permitted',
  EROFS: 'the file system is read-only',
  ENOSPC: 'no space left',
  EDQUOT: 'the disk quota is used up',
  ENOTDIR: 'is not a folder, or lies below a file',
  EISDIR: 'is a folder',
  EEXIST: 'is there already',
  ENOENT: 'is not there',
  ENAMETOOLONG: 'the name is too long',
  EMFILE: 'too many files are open',
  ENOTEMPTY: 'the folder is not empty',
  EBUSY: 'is in use',
  ELOOP: 'links go round in a circle',
  EIO: 'the disk reports an error',
  EXDEV: 'lies on another file system',
};

/**
 * @param error - what a call of the file system threw
 * @param path - taken when the error doesn't name one
 * @returns a FileError; anything that isn't the file system's is given back as it is, for it is a bug
 */
export function asFileError(error: unknown, path: string): unknown {
  if (error instanceof FileError || !(error instanceof Error)) return error;
  const { code, path: named } = error as NodeJS.ErrnoException;
  if (typeof code !== 'string' || !('syscall' in error)) return error;
  return new FileError(named ?? path, WORDS[code] ?? code, { cause: error });
}

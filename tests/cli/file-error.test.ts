import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { asFileError } from '../../src/cli/file-error.js';
import { FileError } from '../../src/errors.js';
import { scratch } from './built.js';

function thrownBy(work: () => unknown): unknown {
  try {
    work();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
}

describe('asFileError puts the system’s own errors into words', () => {
  test('below a file', () => {
    const file = join(scratch(), 'file');
    writeFileSync(file, '');
    const error = asFileError(
      thrownBy(() => mkdirSync(join(file, 'deeper'))),
      'unused',
    ) as FileError;
    expect(error).toBeInstanceOf(FileError);
    expect(error.path).toBe(join(file, 'deeper'));
    expect(error.message).toContain('not a folder');
  });

  test('not there', () => {
    const error = asFileError(
      thrownBy(() => readFileSync('/nowhere-at-all')),
      'unused',
    );
    expect((error as FileError).message).toBe('/nowhere-at-all: is not there');
  });

  // A device that every write finds full (Linux, full(4)).
  test.runIf(existsSync('/dev/full'))('no space left', () => {
    const error = asFileError(
      thrownBy(() => writeFileSync('/dev/full', 'x')),
      'the path',
    );
    expect(error).toBeInstanceOf(FileError);
    expect((error as FileError).message).toMatch(/no space left/);
  });

  test('a bug stays a bug', () => {
    const bug = new TypeError('x is not a function');
    expect(asFileError(bug, 'path')).toBe(bug);
  });
});

/** Flags that several commands share, and their checks. */
import type { Argv } from 'yargs';
import { quote, UNPRINTABLE } from '../spec/words.js';
import { UsageError } from './exit.js';

/** Most workers that may be asked for: each takes a few hundred MB. */
const MOST_WORKERS = 64;

export const presetsArgument = <T>(yargs: Argv<T>) =>
  yargs.positional('preset', {
    describe: 'Names of presets in ./presets, paths, or patterns in quotes; none: all of them',
    type: 'string',
    array: true,
    default: [] as string[],
    defaultDescription: 'every preset in ./presets',
  });

export const jsonFlag = <T>(yargs: Argv<T>) =>
  yargs.option('json', { describe: 'Print the result as JSON', type: 'boolean', default: false });

export const acceptFlag = <T>(yargs: Argv<T>) =>
  yargs.option('accept', {
    describe: 'Accept findings of this code, as in --accept flexure/stress; may be repeated',
    type: 'string',
    array: true,
    nargs: 1,
    default: [] as string[],
    defaultDescription: 'none',
  });

export const jobsFlag = <T>(yargs: Argv<T>) =>
  yargs.option('jobs', {
    describe: `How many kits are made side by side, 1 to ${MOST_WORKERS}`,
    type: 'string',
    requiresArg: true,
    defaultDescription: 'one a processor core',
  });

/** @returns one value of a flag @throws {UsageError} when it was given twice or is empty */
export function single(name: string, value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (Array.isArray(value)) throw new UsageError(`--${name} is given ${value.length} times; once is enough`);
  if (value === '') throw new UsageError(`--${name} needs a value`);
  return String(value);
}

/**
 * @returns the folder of a flag, or the one taken without it
 * @throws {UsageError} when it was given twice, is empty, or holds characters that no name should
 */
export function folder(name: string, value: unknown, otherwise: string): string {
  const path = single(name, value) ?? otherwise;
  if (path.search(UNPRINTABLE) >= 0)
    throw new UsageError(`--${name} holds control or invisible characters: ${quote(path)}`);
  return path;
}

/** @returns the number of workers, or undefined for the usual number @throws {UsageError} unless it is 1 to 64 */
export const workerCount = (value: unknown): number | undefined =>
  wholeNumber('jobs', value, { least: 1, most: MOST_WORKERS });

/** @returns a flag's whole number, or undefined where it is not given @throws {UsageError} outside the range, which is said */
export function wholeNumber(
  name: string,
  value: unknown,
  { least, most }: { readonly least: number; readonly most: number },
): number | undefined {
  const text = single(name, value);
  if (text === undefined) return undefined;
  const count = Number(text);
  if (!/^\d+$/.test(text) || count < least || count > most) {
    throw new UsageError(`--${name} takes a whole number from ${least} to ${most}, not "${text}"`);
  }
  return count;
}

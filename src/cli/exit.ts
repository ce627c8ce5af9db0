/** How a run ends. */
import { FileError, PresetError } from '../errors.js';

export const EXIT = { done: 0, findings: 1, preset: 2, file: 3, bug: 70 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** The command line itself is wrong: exit 2, as for a preset. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** The user ended the questions: as for a wrong command line, nothing is written. */
export class StoppedError extends UsageError {}

/** @returns the exit code for something thrown; what nobody foresaw is a bug */
export function exitCodeOf(error: unknown): ExitCode {
  if (error instanceof PresetError || error instanceof UsageError) return EXIT.preset;
  if (error instanceof FileError) return EXIT.file;
  return EXIT.bug;
}

/** @returns the code of a run that ended several ways: the gravest, for codes grow with gravity */
export const gravest = (codes: readonly ExitCode[]): ExitCode => Math.max(EXIT.done, ...codes) as ExitCode;

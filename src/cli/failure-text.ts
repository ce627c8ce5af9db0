/** What a failed run says: every mistake at once, where it is, and what is allowed. */
import { FileError, type Mistake, PresetError } from '../errors.js';
import { counted, wrap } from '../outputs/text.js';
import { StoppedError, UsageError } from './exit.js';
import { printable } from './printable.js';

/**
 * @param error - what was thrown
 * @param width - columns to wrap at
 * @returns text for standard error, without a newline at the end
 */
export function failureText(error: unknown, width: number): string {
  if (error instanceof PresetError) return presetText(error, width);
  if (error instanceof FileError) return `File problem\n  ${printable(error.message)}`;
  if (error instanceof StoppedError) return error.message;
  if (error instanceof UsageError)
    return `${printable(error.message)}\nbeamloom --help lists the commands, beamloom COMMAND --help their flags.`;
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `This is a bug in beamloom, not in your preset. Please report it with the preset and these lines:\n${printable(trace)}`;
}

/** @returns the failure for `--json` */
export function failureJson(error: unknown): Readonly<Record<string, unknown>> {
  if (error instanceof PresetError) return { error: 'preset', file: error.file, mistakes: error.mistakes };
  if (error instanceof FileError) return { error: 'file', path: error.path, message: error.message };
  if (error instanceof UsageError) return { error: 'usage', message: error.message };
  return { error: 'bug', message: error instanceof Error ? (error.stack ?? error.message) : String(error) };
}

function presetText({ file, mistakes }: PresetError, width: number): string {
  const entries = mistakes.map((mistake) => mistakeText(mistake, file, width));
  return printable([`${file}: ${counted(mistakes.length, 'mistake')}, so nothing is made`, ...entries].join('\n'));
}

function mistakeText({ path, message, hint, line, column }: Mistake, file: string, width: number): string {
  const place = line === undefined ? '' : `${file}:${line}${column === undefined ? '' : `:${column}`}`;
  const head = [place, path].filter((part) => part !== '').join('  ');
  const indent = '    ';
  const body = [message, ...(hint === undefined ? [] : [hint])].map((text) => indent + wrap(text, { width, indent }));
  return [...(head === '' ? [] : [`  ${head}`]), ...body].join('\n');
}

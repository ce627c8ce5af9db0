/**
 * Errors that end a run. Each kind has its own exit code; anything else that escapes is a bug (70).
 */

/** One mistake in a preset, or one demand that can't be drawn. */
export interface Mistake {
  /** `preset/unknown-key`, `preset/too-small` … */
  readonly code: string;
  /** Dotted path in the preset, e.g. `grid.pitch.x`; empty for the file as a whole. */
  readonly path: string;
  readonly message: string;
  /** What is allowed, or the nearest known name. */
  readonly hint?: string;
  /** Position in the preset's text, counted from 1. */
  readonly line?: number;
  readonly column?: number;
}

/** The preset is wrong (exit 2): carries every mistake at once. */
export class PresetError extends Error {
  constructor(
    readonly file: string,
    readonly mistakes: readonly Mistake[],
  ) {
    super(`${file}: ${mistakes.length} mistake${mistakes.length === 1 ? '' : 's'}`);
    this.name = 'PresetError';
  }
}

/** A file or folder could not be read or written (exit 3). */
export class FileError extends Error {
  constructor(
    readonly path: string,
    message: string,
    options?: ErrorOptions,
  ) {
    super(`${path}: ${message}`, options);
    this.name = 'FileError';
  }
}

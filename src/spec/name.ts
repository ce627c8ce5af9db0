/** The kit's folder is named after the preset's file, so the file's name is checked like the rest of the preset. */
import type { Mistake } from '../errors.js';
import { quote } from './words.js';

export const MOST_NAME = 64;
/** Names that some operating systems keep for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** @returns the base name of a path without its ending `.yaml` or `.yml`: `presets/glaze-selector.yaml` → `glaze-selector` */
export const nameOf = (file: string) => (file.split(/[/\\]/).at(-1) ?? '').replace(/\.ya?ml$/, '');

/** @returns what is wrong with a preset's file name: none or one mistake */
export function checkName(file: string): readonly Mistake[] {
  const name = nameOf(file);
  const problem = folderProblem(name, MOST_NAME);
  if (problem === null) return [];
  const message = `the kit's folder is named after the preset's file, and ${quote(name)} ${problem}`;
  return [{ code: 'preset/name', path: '', message, hint: 'rename the file, e.g. bench-console.yaml' }];
}

/** @returns what keeps a name from being a folder's, as the end of a sentence; null when nothing does */
export const folderProblem = (name: string, most: number): string | null =>
  name.length > most
    ? `has ${name.length} characters, more than ${most}`
    : RESERVED.test(name)
      ? 'is kept by some operating systems for a device'
      : /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name)
        ? null
        : 'is not made of small letters a–z, digits and single hyphens between them';

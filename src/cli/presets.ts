/** Finds presets by name, path or pattern, and reads them. */
import { lstat, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { glob, isDynamicPattern } from 'tinyglobby';
import { FileError, PresetError } from '../errors.js';
import { nameOf } from '../spec/name.js';
import { nearest } from '../spec/words.js';
import { UsageError } from './exit.js';
import { asFileError } from './file-error.js';

export const PRESETS_FOLDER = 'presets';
const ENDING = /\.ya?ml$/;
/** A preset takes a few kB; more than this [bytes] is some other file. */
const LARGEST = 1_000_000;

export interface PresetFile {
  /** Its path as given, or under the presets' folder. */
  readonly path: string;
  /** Its file name without ending: the kit's folder. */
  readonly name: string;
  readonly text: string;
}

/**
 * @param wanted - names of presets in ./presets, paths, or patterns; none: every preset in ./presets
 * @throws {UsageError} when two of them have the same base name, for they would share one folder
 * @throws {FileError} when one is not there or can't be read
 */
export async function findPresets(wanted: readonly string[]): Promise<readonly PresetFile[]> {
  const found = wanted.length === 0 ? await allPresets() : (await Promise.all(wanted.map(pathsOf))).flat();
  const seen = new Map<string, string>();
  for (const path of found) {
    // Folders that differ in case or in how an accent is composed are one folder on some systems.
    const key = nameOf(path).normalize('NFC').toLowerCase();
    const other = seen.get(key);
    if (other !== undefined) {
      const same = other === path ? `${path} is named twice` : `${other} and ${path} have the same name`;
      throw new UsageError(`${same}: their kits would share one folder`);
    }
    seen.set(key, path);
  }
  return Promise.all(found.map(async (path) => ({ path, name: nameOf(path), text: await readText(path) })));
}

async function allPresets(): Promise<string[]> {
  const paths = await list(`${PRESETS_FOLDER}/*.{yaml,yml}`);
  if (paths.length === 0) throw new FileError(PRESETS_FOLDER, 'holds no preset; `beamloom new NAME` writes one');
  return paths;
}

async function pathsOf(wanted: string): Promise<string[]> {
  if (await isThere(wanted)) return [wanted];
  if (isDynamicPattern(wanted)) {
    const paths = (await list(wanted)).filter((path) => ENDING.test(path));
    if (paths.length === 0) throw new FileError(wanted, 'no preset matches this pattern');
    return paths;
  }
  for (const ending of ['.yaml', '.yml']) {
    const path = join(PRESETS_FOLDER, `${wanted}${ending}`);
    if (!ENDING.test(wanted) && (await isThere(path))) return [path];
  }
  const names = (await list(`${PRESETS_FOLDER}/*.{yaml,yml}`)).map(nameOf);
  const near = nearest(nameOf(wanted), names);
  const hint =
    near.length > 0 ? `did you mean ${near.join(' or ')}?` : `in ${PRESETS_FOLDER}/ are: ${names.join(', ') || 'none'}`;
  throw new FileError(wanted, `there is no such preset; ${hint}`);
}

const list = async (pattern: string): Promise<string[]> => (await glob(pattern, { expandDirectories: false })).sort();

/** A folder of a preset's name (its kit, say) is not the preset. */
async function isThere(path: string): Promise<boolean> {
  try {
    return !(await stat(path)).isDirectory() || ENDING.test(path);
  } catch {
    // A link to nothing is there by its name: reading it tells.
    return (await lstat(path).catch(() => null))?.isSymbolicLink() === true;
  }
}

async function readText(path: string): Promise<string> {
  try {
    const file = await stat(path);
    // A pipe or a device would keep the run waiting.
    if (!file.isFile() && !file.isDirectory()) throw new FileError(path, 'is no file: a pipe, a socket or a device');
    const { size } = file;
    if (size > LARGEST) throw new FileError(path, `is too large for a preset (${size} bytes)`);
    const bytes = await readFile(path);
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError && (error as NodeJS.ErrnoException).code === 'ERR_ENCODING_INVALID_ENCODED_DATA') {
      throw new PresetError(path, [
        { code: 'preset/encoding', path: '', message: 'is not UTF-8 text', hint: 'save it as UTF-8' },
      ]);
    }
    if ((error as NodeJS.ErrnoException).code === 'ENOENT' && (await lstat(path).catch(() => null))?.isSymbolicLink())
      throw new FileError(path, 'is a link to something that is not there', { cause: error });
    throw asFileError(error, path);
  }
}

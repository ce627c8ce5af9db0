/**
 * Puts a kit's folder in place whole. Whatever interrupts it, the last good kit or the new one is there after the next start.
 *
 * In the output folder, beside `<kit>/`: `.<kit>.beamloom-new/` is being written, `.<kit>.beamloom-old/` was renamed aside.
 */
import { existsSync } from 'node:fs';
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { FileError } from '../errors.js';
import { asFileError } from './file-error.js';
import { HeldError, withLock } from './lock.js';
import { makeFolder } from './make-folder.js';

/** A file of a kit: path relative to its folder, forward slashes. */
export interface KitFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What was just done; a test ends the process there. */
export type SwapStep = 'locked' | 'writing' | 'written' | 'old aside' | 'new in place' | 'old removed';

/** A file, and how its text names the format. */
export interface FolderMark {
  readonly file: string;
  readonly format: string;
  /** What such a folder holds. */
  readonly what: string;
}

const KIT: FolderMark = { file: 'kit.json', format: 'beamloom-kit/', what: 'a kit' };

export interface Swap {
  /** Folder of all kits. */
  readonly out: string;
  readonly kit: string;
  readonly files: readonly KitFile[];
  /** By what a folder is known for an earlier one of its kind, which may be replaced; default: a kit's. */
  readonly mark?: FolderMark;
  /** Called after each step. */
  readonly after?: (step: SwapStep) => void;
}

/**
 * Writes the files to a new folder, on disk for certain, then renames: the old one aside, the new one in.
 *
 * @returns the kit's folder
 * @throws {FileError} when something can't be written, a second run holds the kit, or the folder in its place is no kit
 */
export async function swapIn({ out, kit, files, mark = KIT, after = () => {} }: Swap): Promise<string> {
  const at = places(out, kit);
  await makeFolder(out);
  return withLock(at.lock, async () => {
    after('locked');
    await settle(at);
    await refuseForeign(at.target, mark);
    try {
      await writeAll(at.fresh, files, after);
    } catch (error) {
      await rm(at.fresh, { recursive: true, force: true }).catch(() => {});
      throw asFileError(error, at.fresh);
    }
    after('written');
    try {
      if (existsSync(at.target)) await rename(at.target, at.old);
      after('old aside');
      await rename(at.fresh, at.target);
      await syncFolder(out);
      after('new in place');
      await rm(at.old, { recursive: true, force: true });
      after('old removed');
    } catch (error) {
      await settle(at).catch(() => {});
      throw asFileError(error, at.target);
    }
    return at.target;
  });
}

/**
 * Puts right what an interrupted run left: an old kit that was renamed aside comes back when nothing took its place.
 * Kits that another run holds just now are left alone.
 *
 * @param out - folder of all kits; nothing happens when it isn't there
 */
export async function restoreOrphans(out: string): Promise<void> {
  const names = await readdir(out).catch(() => []);
  const kits = new Set(
    names.map((name) => /^\.(.+)\.beamloom-(?:new|old)$/.exec(name)?.[1]).filter((kit) => kit !== undefined),
  );
  for (const kit of kits) {
    const at = places(out, kit);
    await withLock(at.lock, () => settle(at)).catch((error) => {
      // A kit in another run's hands is that run's to put right; anything else is worth saying.
      if (!(error instanceof HeldError)) throw error;
    });
  }
}

/** @returns all paths of one kit @throws {FileError} when the name is no plain file name */
function places(out: string, kit: string) {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what must not get through
  if (kit === '' || kit.startsWith('.') || /[/\\\u0000-\u001f\u007f]/.test(kit))
    throw new FileError(kit, 'is no name for a folder');
  const beside = (what: string) => join(out, `.${kit}.beamloom-${what}`);
  return { target: join(out, kit), fresh: beside('new'), old: beside('old'), lock: beside('lock') };
}

async function settle({ target, fresh, old }: ReturnType<typeof places>): Promise<void> {
  try {
    await rm(fresh, { recursive: true, force: true });
    if (!existsSync(old)) return;
    if (existsSync(target)) await rm(old, { recursive: true, force: true });
    else await rename(old, target);
  } catch (error) {
    throw asFileError(error, target);
  }
}

/** A folder that holds something else is somebody's own: it must not vanish because a preset has its name. */
async function refuseForeign(target: string, { file, format, what }: FolderMark): Promise<void> {
  const names = await readdir(target).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw asFileError(error, target);
  });
  if (names.length === 0) return;
  const text = await readFile(join(target, file), 'utf8').catch(() => '');
  if (!text.includes(`"format": "${format}`)) {
    throw new FileError(target, `holds something that is not ${what}; move it away, or write elsewhere with --out`);
  }
}

async function writeAll(folder: string, files: readonly KitFile[], after: (step: SwapStep) => void): Promise<void> {
  const folders = new Set(files.map(({ path }) => dirname(join(folder, path))));
  for (const path of new Set([folder, ...folders])) await mkdir(path, { recursive: true });
  for (const [index, { path, bytes }] of files.entries()) {
    if (path.startsWith('/') || path.split('/').includes('..')) throw new Error(`output path leaves the kit: ${path}`);
    await writeOne(join(folder, path), bytes);
    if (index === 0) after('writing');
  }
  for (const path of [...folders, folder]) await syncFolder(path);
}

async function writeOne(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } catch (error) {
    throw asFileError(error, path);
  } finally {
    await handle.close();
  }
}

async function syncFolder(path: string): Promise<void> {
  const handle = await open(path, 'r').catch(() => null);
  // Some systems can't flush a folder; the renames are then as safe as that system makes them.
  await handle?.sync().catch(() => {});
  await handle?.close();
}

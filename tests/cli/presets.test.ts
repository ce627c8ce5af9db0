import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { UsageError } from '../../src/cli/exit.js';
import { findPresets } from '../../src/cli/presets.js';
import { FileError, PresetError } from '../../src/errors.js';
import { scratch } from './built.js';

/** A folder with these files, as the working folder of the test. */
function inFolder(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = scratch();
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  const before = process.cwd();
  process.chdir(folder);
  onTestFinished(() => process.chdir(before));
  return folder;
}
const shelf = {
  'presets/fern.yaml': 'a',
  'presets/moss.yml': 'b',
  'presets/notes.txt': 'c',
  'elsewhere/ivy.yaml': 'd',
};
const paths = async (wanted: readonly string[]) => (await findPresets(wanted)).map(({ path }) => path);

describe('findPresets', () => {
  test.for([
    { row: 'none named: all of them', wanted: [], want: ['presets/fern.yaml', 'presets/moss.yml'] },
    { row: 'by name, in the order named', wanted: ['moss', 'fern'], want: ['presets/moss.yml', 'presets/fern.yaml'] },
    { row: 'by path', wanted: ['elsewhere/ivy.yaml'], want: ['elsewhere/ivy.yaml'] },
    { row: 'by pattern', wanted: ['*/*.yaml'], want: ['elsewhere/ivy.yaml', 'presets/fern.yaml'] },
  ])('$row', async ({ wanted, want }) => {
    inFolder(shelf);
    expect(await paths(wanted)).toEqual(want);
  });

  test('a folder of the preset’s name, such as its kit, is not the preset', async () => {
    inFolder({ ...shelf, 'fern/kit.json': '{}' });
    expect(await paths(['fern'])).toEqual(['presets/fern.yaml']);
  });

  test.for([
    {
      row: 'same name, two folders',
      files: { 'presets/fern.yaml': '', 'other/fern.yaml': '' },
      wanted: ['fern', 'other/fern.yaml'],
    },
    { row: 'two endings', files: { 'presets/fern.yaml': '', 'presets/fern.yml': '' }, wanted: [] },
    { row: 'named twice', files: { 'presets/fern.yaml': '' }, wanted: ['fern', 'fern'] },
    {
      row: 'differ in case alone',
      files: { 'presets/fern.yaml': '', 'other/Fern.yaml': '' },
      wanted: ['fern', 'other/Fern.yaml'],
    },
  ])('refused, for both kits would share one folder: $row', async ({ files, wanted }) => {
    inFolder(files as unknown as Record<string, string>);
    await expect(findPresets(wanted)).rejects.toBeInstanceOf(UsageError);
    await expect(findPresets(wanted)).rejects.toThrow(/fern/i);
  });

  test('a misspelt name is told its neighbour', async () => {
    inFolder(shelf);
    await expect(findPresets(['ferm'])).rejects.toThrow('there is no such preset; did you mean fern?');
    await expect(findPresets(['ferm'])).rejects.toBeInstanceOf(FileError);
  });

  test.for([['*.nothing'], ['nowhere/at-all.yaml']])('nothing there: %s', async ([wanted]) => {
    inFolder(shelf);
    await expect(findPresets([wanted!])).rejects.toBeInstanceOf(FileError);
  });

  test('no preset at all says how to write one', async () => {
    inFolder({ 'presets/notes.txt': '' });
    await expect(findPresets([])).rejects.toThrow(/beamloom new/);
  });

  test('a folder, a huge file and text that is not UTF-8 are refused', async () => {
    inFolder({
      'presets/dir.yaml/x': '',
      'presets/huge.yaml': ' '.repeat(1_000_001),
      'presets/latin.yaml': new Uint8Array([0x74, 0xe9]),
    });
    await expect(findPresets(['presets/dir.yaml'])).rejects.toThrow(/is a folder/);
    await expect(findPresets(['huge'])).rejects.toThrow(/too large/);
    await expect(findPresets(['latin'])).rejects.toBeInstanceOf(PresetError);
  });
});

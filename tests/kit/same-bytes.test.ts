/** The same preset gives the same bytes, also on a fresh instance of the kernel and after another kit was made on it. */
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { compression } from '../../src/cli/compression.js';
import { OUTPUTS } from '../../src/outputs/index.js';
import { makeKit } from '../../src/pipeline.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { openWorkshop, shipped, type Workshop } from './make.js';

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

function sums({ kernel, profiles }: Workshop, name: string): readonly string[] {
  return kernel.scope(() => {
    const { files } = makeKit(readPreset(shipped(name), `${name}.yaml`), {
      kernel,
      profiles,
      hash: sha256,
      outputs: OUTPUTS,
      compression,
      viewer: '',
      progress: () => {},
      accept: [],
    });
    return { keep: [], value: files.map(({ path, bytes }) => `${path} ${sha256(bytes)}`) };
  });
}

test('same preset, same files, same bytes', async () => {
  const used = await openWorkshop();
  const first = sums(used, 'tight-cue-strip');
  expect(first.length).toBeGreaterThan(30);
  expect(new Set(first.map((line) => line.split(' ')[0])).size).toBe(first.length);
  sums(used, 'foyer-row');
  expect(sums(used, 'tight-cue-strip')).toEqual(first);
  expect(sums(await openWorkshop(), 'tight-cue-strip')).toEqual(first);
}, 60_000);

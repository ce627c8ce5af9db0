import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { HeldError, withLock } from '../../src/cli/lock.js';
import { restoreOrphans, type SwapStep, swapIn } from '../../src/cli/swap.js';
import { FileError } from '../../src/errors.js';
import { BUILT, node, scratch, tree } from './built.js';

const STEPS: readonly SwapStep[] = ['locked', 'writing', 'written', 'old aside', 'new in place', 'old removed'];
const text = (value: string) => new TextEncoder().encode(value);
const files = (content: string) => [
  { path: 'stl/a.stl', bytes: text(`${content} a`) },
  { path: 'stl/b.stl', bytes: text(`${content} b`) },
  { path: 'kit.json', bytes: text(`{\n  "format": "beamloom-kit/1", "content": "${content}"\n}\n`) },
];
const whole = (content: string) =>
  Object.fromEntries(files(content).map(({ path, bytes }) => [path, new TextDecoder().decode(bytes)]));

const killedAfter = (step: string, out: string) =>
  node(
    [
      join(import.meta.dirname, 'swap-and-die.mjs'),
      pathToFileURL(join(BUILT, 'cli/swap.js')).href,
      out,
      'bench',
      'new',
      step,
    ],
    { cwd: out },
  );

describe('killed between the steps', () => {
  // By the order of the renames: until the new one is in place, the old one is what the next start finds.
  const expected: Readonly<Record<SwapStep, string>> = {
    locked: 'old',
    writing: 'old',
    written: 'old',
    'old aside': 'old',
    'new in place': 'new',
    'old removed': 'new',
  };

  test.for(STEPS)('after "%s" a whole kit is there at the next start', async (step) => {
    const out = scratch();
    await swapIn({ out, kit: 'bench', files: files('old') });
    const ended = await killedAfter(step, out);
    expect(ended.signal, 'it really was killed').toBe('SIGKILL');
    await restoreOrphans(out);
    expect(tree(join(out, 'bench'))).toEqual(whole(expected[step]));
    // Only a lock whose owner is dead may be left, and it stops nobody.
    expect(readdirSync(out).filter((name) => !name.endsWith('-lock'))).toEqual(['bench']);
    await swapIn({ out, kit: 'bench', files: files('next') });
    expect(tree(out)).toEqual(
      Object.fromEntries(Object.entries(whole('next')).map(([path, t]) => [`bench/${path}`, t])),
    );
  });

  test('a first run leaves nothing half done', async () => {
    const out = scratch();
    expect((await killedAfter('written', out)).signal).toBe('SIGKILL');
    await restoreOrphans(out);
    expect(existsSync(join(out, 'bench'))).toBe(false);
  });

  test('left alone, the same program ends well', async () => {
    const out = scratch();
    expect(await killedAfter('never', out)).toMatchObject({ code: 0, signal: null, stderr: '' });
    expect(tree(join(out, 'bench'))).toEqual(whole('new'));
    expect(readdirSync(out)).toEqual(['bench']);
  });
});

describe('swapIn', () => {
  test('replaces the whole folder: a file that the new kit lacks is gone', async () => {
    const out = scratch();
    await swapIn({ out, kit: 'bench', files: [...files('old'), { path: 'stl/gone.stl', bytes: text('x') }] });
    await swapIn({ out, kit: 'bench', files: files('new') });
    expect(tree(join(out, 'bench'))).toEqual(whole('new'));
  });

  test('a folder that is no kit is left alone', async () => {
    const out = scratch();
    mkdirSync(join(out, 'letters'));
    writeFileSync(join(out, 'letters', 'aunt.txt'), 'Dear aunt');
    await expect(swapIn({ out, kit: 'letters', files: files('new') })).rejects.toThrow(/is not a kit/);
    expect(tree(join(out, 'letters'))).toEqual({ 'aunt.txt': 'Dear aunt' });
    expect(readdirSync(out)).toEqual(['letters']);
  });

  test('a file in the kit’s place is left alone', async () => {
    const out = scratch();
    writeFileSync(join(out, 'bench'), 'mine');
    await expect(swapIn({ out, kit: 'bench', files: files('new') })).rejects.toBeInstanceOf(FileError);
    expect(readFileSync(join(out, 'bench'), 'utf8')).toBe('mine');
  });

  test('a failed write keeps the old kit and cleans up', async () => {
    const out = scratch();
    await swapIn({ out, kit: 'bench', files: files('old') });
    // The same path twice: the second can't be opened as a new file.
    const twice = [...files('new'), files('new')[0]!];
    await expect(swapIn({ out, kit: 'bench', files: twice })).rejects.toThrow(/stl\/a\.stl: is there already/);
    expect(tree(join(out, 'bench'))).toEqual(whole('old'));
    expect(readdirSync(out)).toEqual(['bench']);
  });

  test.for(['../escape', '/etc', 'a/b', '', '.', '..', '.hidden', 'a\u0000b', 'a\\b'])(
    'refuses the kit name %j',
    async (kit) => {
      const out = join(scratch(), 'out');
      await expect(swapIn({ out, kit, files: files('new') })).rejects.toBeInstanceOf(FileError);
      expect(existsSync(out), 'nothing was made').toBe(false);
    },
  );

  test.for(['../out.txt', '/out.txt', 'stl/../../out.txt'])('refuses the file path %j', async (path) => {
    const out = join(scratch(), 'out');
    await expect(swapIn({ out, kit: 'bench', files: [{ path, bytes: text('x') }] })).rejects.toThrow(/leaves the kit/);
    expect(existsSync(join(out, '..', 'out.txt'))).toBe(false);
  });

  test('a link in the kit’s place is replaced, what it points at is not touched', async () => {
    const [out, elsewhere] = [scratch(), scratch()];
    await swapIn({ out: elsewhere, kit: 'real', files: files('old') });
    symlinkSync(join(elsewhere, 'real'), join(out, 'bench'));
    await swapIn({ out, kit: 'bench', files: files('new') });
    expect(tree(join(out, 'bench'))).toEqual(whole('new'));
    expect(tree(join(elsewhere, 'real'))).toEqual(whole('old'));
  });

  test.for([
    { row: 'the folder is a file', below: 'file' },
    { row: 'it lies below a file', below: 'file/deeper' },
  ])('says which path failed: $row', async ({ below }) => {
    const folder = scratch();
    writeFileSync(join(folder, 'file'), '');
    const failed = swapIn({ out: join(folder, below), kit: 'bench', files: files('new') });
    await expect(failed).rejects.toBeInstanceOf(FileError);
    await expect(failed).rejects.toThrow(join(folder, 'file'));
  });
});

describe('the lock', () => {
  test('refuses a second run on one kit, and lets it go afterwards', async () => {
    const out = scratch();
    const lock = join(out, '.bench.beamloom-lock');
    await withLock(lock, async () => {
      await expect(swapIn({ out, kit: 'bench', files: files('new') })).rejects.toBeInstanceOf(HeldError);
      await expect(swapIn({ out, kit: 'other', files: files('new') })).resolves.toBe(join(out, 'other'));
    });
    await expect(swapIn({ out, kit: 'bench', files: files('new') })).resolves.toBe(join(out, 'bench'));
  });

  test('a run in another process holds it too, and says which', async () => {
    const out = scratch();
    const script = `import { withLock } from ${JSON.stringify(pathToFileURL(join(BUILT, 'cli/lock.js')).href)};
      await withLock('.bench.beamloom-lock', () => new Promise((end) => setTimeout(end, 1000)));`;
    const holder = node(['--input-type=module', '-e', script], { cwd: out });
    await expect.poll(() => Object.values(tree(out))[0] || 'not yet', { timeout: 5000, interval: 5 }).toMatch(/^\d+ /);
    const refused = swapIn({ out, kit: 'bench', files: files('new') });
    await expect(refused).rejects.toBeInstanceOf(HeldError);
    await expect(refused).rejects.toThrow(/another run is making this kit \(process \d+\)/);
    expect(await holder).toMatchObject({ code: 0 });
    expect(readdirSync(out)).toEqual([]);
  });

  test.for([
    { row: 'its process is gone', owner: '4194304999 -' },
    { row: 'its process id belongs to a later process', owner: `${process.pid} 1` },
    { row: 'it holds nonsense', owner: 'hello' },
  ])('is taken over when stale: $row', async ({ owner }) => {
    const out = scratch();
    writeFileSync(join(out, '.bench.beamloom-lock'), owner);
    await swapIn({ out, kit: 'bench', files: files('new') });
    expect(readdirSync(out)).toEqual(['bench']);
  });

  test('an empty lock is being written: it counts', async () => {
    const out = scratch();
    writeFileSync(join(out, '.bench.beamloom-lock'), '');
    await expect(swapIn({ out, kit: 'bench', files: files('new') })).rejects.toBeInstanceOf(HeldError);
  });

  test('of twenty that find it stale, one at a time gets it', async () => {
    const lock = join(scratch(), 'lock');
    writeFileSync(lock, '4194304999 -');
    let [inside, most, got] = [0, 0, 0];
    const attempts = Array.from({ length: 20 }, () =>
      withLock(lock, async () => {
        got += 1;
        inside += 1;
        most = Math.max(most, inside);
        await new Promise((end) => setTimeout(end, 2));
        inside -= 1;
      }).catch((error) => expect(error).toBeInstanceOf(HeldError)),
    );
    await Promise.all(attempts);
    expect(most).toBe(1);
    expect(got).toBeGreaterThanOrEqual(1);
  });

  test('orphans of a kit in another run’s hands stay', async () => {
    const out = scratch();
    mkdirSync(join(out, '.bench.beamloom-new'));
    await withLock(join(out, '.bench.beamloom-lock'), () => restoreOrphans(out));
    expect(existsSync(join(out, '.bench.beamloom-new'))).toBe(true);
    await restoreOrphans(out);
    expect(existsSync(join(out, '.bench.beamloom-new'))).toBe(false);
  });
});

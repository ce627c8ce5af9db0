import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { beamloom, scratch, tree } from './built.js';

/** A working folder with these presets. */
function workshop(presets: Readonly<Record<string, string>> = {}): string {
  const cwd = scratch();
  mkdirSync(join(cwd, 'presets'));
  for (const [name, text] of Object.entries(presets)) writeFileSync(join(cwd, 'presets', `${name}.yaml`), text);
  return cwd;
}
const small = 'grid: { rows: 1, columns: 2, pitch: 24 }\n';
const run = (cwd: string, line: string, more: { env?: NodeJS.ProcessEnv; input?: string } = {}) =>
  beamloom(
    line.split(' ').filter((word) => word !== ''),
    { cwd, ...more },
  );

describe('the command line', () => {
  test('--help lists the commands and the exit codes, --version the version', async () => {
    const cwd = workshop();
    const help = await run(cwd, '--help');
    expect(help).toMatchObject({ code: 0, stderr: '' });
    for (const word of ['kit', 'check', 'new', 'catalog', '70']) expect(help.stdout).toContain(word);
    const { version } = JSON.parse(readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8'));
    expect(await run(cwd, '--version')).toMatchObject({ code: 0, stdout: `${version}\n` });
  });

  test.for([
    ['no command', ''],
    ['an unknown command', 'mill'],
    ['an unknown flag', 'kit --fast'],
    ['no number of workers', 'kit --jobs'],
    ['a wrong number of workers', 'kit --jobs 0'],
    ['half a worker', 'kit --jobs 1.5'],
    ['a misspelt command', 'kitt small'],
    ['a folder with a line break', 'kit --out a\nb'],
    ['a name too many', 'new fern -- moss'],
    ['no grids drawn', 'check --samples 0'],
    ['more grids than allowed', 'check --samples 1000001'],
    ['a seed of nothing', 'check --seed 4'],
    ['grids drawn for a kit', 'kit --samples 5'],
    ['two folders', 'kit --out a --out b'],
    ['an unknown catalogue', 'catalog spoons'],
    ['an unknown code', 'kit --accept flexure/nonsense'],
    ['eye safety', 'kit --accept eye-safety/class'],
    ['everything at once', 'kit --accept *'],
    ['a name that is a path', 'new ../fern --rows 1 --columns 1 --pitch 20'],
    ['a name with capitals', 'new Fern --rows 1 --columns 1 --pitch 20'],
    ['no figures, and nobody to ask', 'new fern'],
    ['figures out of range', 'new fern --rows 1000000000 --columns 1 --pitch 0'],
    ['a figure that is none', 'new fern --rows two --columns 1 --pitch 20'],
  ])('exit 2 for %s, and nothing is written', async ([, line]) => {
    const cwd = workshop({ small });
    const before = tree(cwd);
    const ended = await run(cwd, line!);
    expect(ended.code).toBe(2);
    expect(ended.stdout).toBe('');
    expect(ended.stderr.trim()).not.toBe('');
    expect(tree(cwd)).toEqual(before);
  });

  test('what was meant is named: commands, flags', async () => {
    const cwd = workshop({ small });
    const said = async (line: string) => (await run(cwd, line)).stderr;
    expect(await said('kitt small')).toContain('there is no command "kitt"; did you mean kit?');
    expect(await said('bogus')).toContain('there are kit, check, tune, new and catalog');
    expect(await said('kit --acept x')).toContain('did you mean --accept?');
  });

  test('words after -- are names, whatever they begin with', async () => {
    const cwd = workshop({ small });
    writeFileSync(join(cwd, '-x.yaml'), small);
    const ended = await run(cwd, 'check -- -x.yaml');
    expect(ended.code).toBe(2);
    // It is read, and refused for its name alone.
    expect(ended.stderr).toContain('-x.yaml: 1 mistake');
    expect((await run(cwd, 'check -- small')).code).toBe(0);
  });

  test('a pipe, a device, a link to nothing: one answer at once', { timeout: 20_000 }, async () => {
    const cwd = workshop();
    execFileSync('mkfifo', [join(cwd, 'pipe')]);
    symlinkSync('nowhere.yaml', join(cwd, 'dangling.yaml'));
    for (const [line, words] of [
      ['check pipe', 'is no file'],
      ['check /dev/zero', 'is no file'],
      ['check dangling.yaml', 'is a link to something that is not there'],
    ] as const) {
      const ended = await run(cwd, line);
      expect(ended.code, line).toBe(3);
      expect(ended.stderr).toContain(words);
    }
  });

  test('a folder that can’t be made ends the run, with its path', { timeout: 60_000 }, async () => {
    const ended = await run(workshop({ small }), 'kit small --out /proc/nowhere/kits');
    expect(ended.code).toBe(3);
    expect(ended.stderr).toContain('/proc/nowhere/kits');
  });

  test('grids drawn stand beside the budget, and come out the same again', { timeout: 120_000 }, async () => {
    const cwd = workshop({ small });
    const drawn = async (seed: number) => {
      const { stdout, code } = await run(cwd, `check small --samples 3000 --seed ${seed} --json`);
      expect(code).toBe(0);
      return JSON.parse(stdout).kits[0].samples;
    };
    const once = await drawn(4);
    expect(once).toMatchObject({ grids: 3000, seed: 4 });
    for (const { drawn: share, standard_error: error, budget } of [...once.lines, once.all])
      expect(Math.abs(share - budget)).toBeLessThan(4 * error + 1e-3);
    expect(await drawn(4)).toEqual(once);
    const told = await run(cwd, 'check small --samples 3000 --seed 4');
    expect(told.stdout).toContain('3000 grids drawn (seed 4)');
    expect(told.stdout).toContain('Every line comes right with exactly 3 emitters');
  });

  test('without NO_COLOR or with it, a pipe gets no escape sequences', async () => {
    for (const env of [{}, { NO_COLOR: '1' }, { FORCE_COLOR: '1' }]) {
      const { stdout, stderr } = await run(workshop(), 'catalog', { env });
      expect(stdout + stderr).not.toContain('\u001b');
    }
  });
});

describe('new', () => {
  test('writes a preset that the reader takes, and never over another', async () => {
    const cwd = workshop();
    const made = await run(cwd, 'new fern --rows 1 --columns 30,24 --pitch 24 --printer bed-180');
    expect(made).toMatchObject({ code: 0, stderr: '' });
    const text = readFileSync(join(cwd, 'presets/fern.yaml'), 'utf8');
    expect(text).toContain('columns: [30, 24]');
    expect(text).toContain('printer: "bed-180"');
    const again = await run(cwd, 'new fern --rows 2 --columns 2 --pitch 24');
    expect(again.code).toBe(3);
    expect(again.stderr).toContain('presets/fern.yaml: is there already');
    expect(readFileSync(join(cwd, 'presets/fern.yaml'), 'utf8')).toBe(text);
  });

  test('tells every wrong figure at once', async () => {
    const { stderr } = await run(workshop(), 'new fern --rows 0 --columns 65 --pitch 1 --material bras');
    for (const path of ['grid.rows', 'grid.columns', 'grid.pitch', 'material']) expect(stderr).toContain(path);
  });

  test('exit 3 where the presets’ folder can’t be made', async () => {
    const cwd = scratch();
    writeFileSync(join(cwd, 'presets'), 'a file');
    const ended = await run(cwd, 'new fern --rows 1 --columns 1 --pitch 24');
    expect(ended.code).toBe(3);
    expect(ended.stderr).toContain('presets');
  });
});

describe('catalog', () => {
  test('names every entry; a kind shows each figure with its source', async () => {
    const cwd = workshop();
    expect((await run(cwd, 'catalog')).stdout).toMatch(/materials\n[\s\S]*petg[\s\S]*printers\n[\s\S]*bed-220/);
    const { stdout } = await run(cwd, 'catalog threads');
    // ISO 261: M2.5 has a pitch of .45; ISO 273 medium: 2.9.
    expect(stdout).toMatch(/M2\.5\n[\s\S]*pitch +0\.45 mm \[\d+\]\n[\s\S]*clearance +2\.9 mm \[\d+\]/);
    expect(stdout).toMatch(/Sources\n\[1\]/);
  });

  test('--json gives values and sources', async () => {
    const { stdout } = await run(workshop(), 'catalog threads --json');
    const { threads } = JSON.parse(stdout);
    expect(threads.M3.pitch.value).toBe(0.5);
    expect(threads.M3.pitch.source).toMatch(/ISO/);
  });
});

describe('wrong presets', () => {
  const wrong = 'grid:\n  rovs: 4\n  columns: -2\n  pitch: wide\nmateriel: petg\n';

  test('every mistake of every preset, with line and column; exit 2 and nothing made, not even of the good one', async () => {
    const cwd = workshop({ small, wrong, broken: 'grid: [1, 2\n' });
    const ended = await run(cwd, 'kit');
    expect(ended.code).toBe(2);
    expect(ended.stdout).toBe('');
    for (const place of ['wrong.yaml:2:3', 'wrong.yaml:3:12', 'wrong.yaml:4:10', 'wrong.yaml:5:1', 'broken.yaml:']) {
      expect(ended.stderr).toContain(place);
    }
    expect(ended.stderr).toMatch(/rows/);
    expect(existsSync(join(cwd, 'out'))).toBe(false);
  });

  test('--json gives them as data', async () => {
    const { code, stdout } = await run(workshop({ wrong }), 'check --json');
    const { failures } = JSON.parse(stdout);
    expect(code).toBe(2);
    expect(failures[0]).toMatchObject({ error: 'preset', file: 'presets/wrong.yaml' });
    expect(failures[0].mistakes.map((m: { path: string }) => m.path)).toContain('grid.rovs');
  });

  test('two of one name: exit 2', async () => {
    const cwd = workshop({ small });
    writeFileSync(join(cwd, 'small.yaml'), small);
    const ended = await run(cwd, 'kit small small.yaml');
    expect(ended.code).toBe(2);
    expect(ended.stderr).toContain('small');
  });

  test('one that is not there: exit 3, with its neighbour’s name', async () => {
    const ended = await run(workshop({ small }), 'kit smal');
    expect(ended.code).toBe(3);
    expect(ended.stderr).toContain('did you mean small');
  });

  test('a pitch too small for the barrel: exit 2, the least one named, at its place', async () => {
    const cwd = workshop({ tight: 'grid:\n  rows: 1\n  columns: 3\n  pitch: 8\n' });
    const ended = await run(cwd, 'kit');
    expect(ended.code).toBe(2);
    expect(ended.stderr).toMatch(/tight\.yaml:4:10 +grid\.pitch\n[\s\S]*least pitch[\s\S]*is \d+(\.\d+)?\s+mm/);
    expect(existsSync(join(cwd, 'out'))).toBe(false);
  });
});

describe('kits', () => {
  test('kit writes a whole kit; a second run gives the same bytes', { timeout: 60_000 }, async () => {
    const cwd = workshop({ small });
    const first = await run(cwd, 'kit');
    expect(first.stderr).toContain('1 of 1: small made');
    expect(first.code).toBe(0);
    expect(first.stdout).toContain('Never look into a beam');
    const before = tree(join(cwd, 'out'));
    const names = Object.keys(before);
    for (const name of ['small/kit.json', 'small/parts.csv', 'small/summary.txt', 'small/stl/tilt-mount.stl'])
      expect(names).toContain(name);
    const json = JSON.parse(before['small/kit.json']!);
    for (const { file, posed, mesh } of json.parts)
      for (const path of [file, posed, mesh]) if (path) expect(names).toContain(`small/${path}`);
    expect(readdirSync(join(cwd, 'out'))).toEqual(['small']);
    expect((await run(cwd, 'kit small.yaml --json')).code).toBe(3);
    expect((await run(cwd, 'kit presets/small.yaml --json')).code).toBe(0);
    expect(tree(join(cwd, 'out'))).toEqual(before);
  });

  test('workers make the same bytes as one thread', { timeout: 120_000 }, async () => {
    const cwd = workshop({ small, other: 'grid: { rows: 2, columns: 1, pitch: 25 }\n' });
    expect((await run(cwd, 'kit --jobs 1 --out one')).code).toBe(0);
    const side = await run(cwd, 'kit --jobs 2 --out two --json');
    expect(side.code).toBe(0);
    expect(JSON.parse(side.stdout).kits.map((k: { name: string; status: string }) => [k.name, k.status])).toEqual([
      ['other', 'made'],
      ['small', 'made'],
    ]);
    expect(tree(join(cwd, 'two'))).toEqual(tree(join(cwd, 'one')));
  });

  test('check writes nothing', { timeout: 60_000 }, async () => {
    const cwd = workshop({ small });
    const ended = await run(cwd, 'check small --json');
    expect(ended.code).toBe(0);
    expect(JSON.parse(ended.stdout).kits[0]).toMatchObject({
      name: 'small',
      status: 'passed',
      folder: null,
      files: [],
    });
    expect(readdirSync(cwd)).toEqual(['presets']);
  });

  test('an error keeps the last good kit; accepting its code by name makes the kit', { timeout: 120_000 }, async () => {
    const cwd = workshop({ small });
    expect((await run(cwd, 'kit')).code).toBe(0);
    const good = tree(join(cwd, 'out'));
    // A printer that bows its parts by 2 mm in 100 turns the mounts by more than half of a tilt of 3°; an open one would grow with it.
    const bowed = 'printer: { base: bed-220, warp_per_100: 2 }\naim: { tilt: 3 }\n';
    writeFileSync(join(cwd, 'presets/small.yaml'), small + bowed);
    const refused = await run(cwd, 'kit --json');
    expect(refused.code).toBe(1);
    const [kit] = JSON.parse(refused.stdout).kits;
    const errors = kit.findings
      .filter((f: { severity: string }) => f.severity === 'error')
      .map((f: { code: string }) => f.code);
    expect(kit.status).toBe('refused');
    expect([...new Set(errors)]).toEqual(['rail/alignment']);
    expect(tree(join(cwd, 'out'))).toEqual(good);
    const accepted = await run(cwd, 'kit --accept rail/alignment');
    expect(accepted.code).toBe(0);
    expect(accepted.stdout).toContain('(accepted)');
    const json = JSON.parse(tree(join(cwd, 'out'))['small/kit.json']!);
    expect(json.findings.find((f: { severity: string }) => f.severity === 'error')).toMatchObject({ accepted: true });
  });

  test('a beam that is too strong is refused, whatever else is accepted', { timeout: 60_000 }, async () => {
    const cwd = workshop({ strong: `${small}emitters: { part: { base: barrel-6x12, power_mw: 400 } }\n` });
    const ended = await run(cwd, 'kit --json --accept rail/alignment');
    const [kit] = JSON.parse(ended.stdout).kits;
    expect(kit.findings[0]).toMatchObject({ severity: 'error', code: 'eye-safety/too-strong' });
    expect(ended.code).toBe(1);
    expect(existsSync(join(cwd, 'out'))).toBe(false);
  });

  test('exit 3 with the path where the folder can’t be written', { timeout: 60_000 }, async () => {
    const cwd = workshop({ small });
    writeFileSync(join(cwd, 'taken'), '');
    const ended = await run(cwd, 'kit --out taken/deeper');
    expect(ended.code).toBe(3);
    expect(ended.stderr).toContain('taken/deeper');
  });

  test('an orphan of an interrupted run comes back even when the next run is refused', async () => {
    const cwd = workshop({ wrong: 'grid: 3\n' });
    mkdirSync(join(cwd, 'out/.small.beamloom-old'), { recursive: true });
    writeFileSync(join(cwd, 'out/.small.beamloom-old/kit.json'), 'the last good one');
    expect((await run(cwd, 'kit')).code).toBe(2);
    expect(tree(join(cwd, 'out'))).toEqual({ 'small/kit.json': 'the last good one' });
  });
});

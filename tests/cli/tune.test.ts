import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { beamloom, scratch, tree } from './built.js';

const GRID = 'grid: { rows: 1, columns: 2, pitch: 24 }\n';

/** A working folder with these presets. */
function workshop(presets: Readonly<Record<string, string>>): string {
  const cwd = scratch();
  mkdirSync(join(cwd, 'presets'));
  for (const [name, text] of Object.entries(presets)) writeFileSync(join(cwd, 'presets', `${name}.yaml`), text);
  return cwd;
}
const tune = (cwd: string, ...words: readonly string[]) => beamloom(['tune', ...words], { cwd });
const few = ['--vary', 'leaf.length', '6,8', '--vary', 'leaf.thickness', '0.86,1.26'] as const;
const preset = (cwd: string, name = 'fern') => readFileSync(join(cwd, 'presets', `${name}.yaml`), 'utf8');

describe('a sweep', () => {
  test('tells its designs and writes table, data and figure beside the kits', async () => {
    const cwd = workshop({ fern: GRID });
    const ended = await tune(cwd, 'fern', ...few);
    expect(ended).toMatchObject({ code: 0, stderr: '' });
    expect(ended.stdout).toContain('Fern: 4 designs of its leaf');
    expect(ended.stdout).toContain('Written: out/fern-tune/ (tune.csv, tune.json, tune.svg)');
    expect(Object.keys(tree(join(cwd, 'out')))).toEqual([
      'fern-tune/tune.csv',
      'fern-tune/tune.json',
      'fern-tune/tune.svg',
    ]);
    expect(preset(cwd)).toBe(GRID);
  });

  test('takes the only preset there is, and asks which where there are more', async () => {
    expect((await tune(workshop({ fern: GRID }), ...few)).stdout).toContain('Fern');
    const ended = await tune(workshop({ fern: GRID, moss: GRID }), ...few);
    expect(ended).toMatchObject({ code: 2, stdout: '' });
    expect(ended.stderr).toContain('fern, moss');
  });

  test('with --json: the same data as tune.json, with the folder', async () => {
    const cwd = workshop({ fern: GRID });
    const { stdout, code } = await tune(cwd, 'fern', '--json', ...few);
    const { folder, files, applied, ...data } = JSON.parse(stdout);
    expect({ code, folder, files, applied }).toEqual({
      code: 0,
      folder: 'out/fern-tune',
      files: ['tune.csv', 'tune.json', 'tune.svg'],
      applied: null,
    });
    expect(data).toEqual(JSON.parse(readFileSync(join(cwd, folder, 'tune.json'), 'utf8')));
  });

  test('more than 500 designs are shared out to two threads: the same rows in the same order', {
    timeout: 120_000,
  }, async () => {
    const cwd = workshop({ fern: GRID });
    const large = await tune(
      cwd,
      'fern',
      '--json',
      '--vary',
      'leaf.length',
      '6..8.4/0.1',
      '--vary',
      'leaf.thickness',
      '0.86..1.06/0.01',
    );
    const { designs } = JSON.parse(large.stdout);
    // by hand: 25 lengths, 21 thicknesses
    expect(designs).toHaveLength(525);
    const small = JSON.parse(
      (await tune(cwd, 'fern', '--json', '--vary', 'leaf.length', '6..8.4/0.1', '--vary', 'leaf.thickness', '0.9'))
        .stdout,
    );
    const same = designs.filter((d: { thickness_mm: number }) => d.thickness_mm === 0.9);
    const bare = ({ number: _n, unbeaten: _u, ...rest }: Record<string, unknown>) => rest;
    expect(same.map(bare)).toEqual(small.designs.map(bare));
    expect(designs.map((d: { number: number }) => d.number)).toEqual(designs.map((_: unknown, i: number) => i + 1));
  });

  test('exit 1 when nothing passes, and the figures are written all the same', async () => {
    const cwd = workshop({ fern: `${GRID}aim: { tilt: 9 }\n` });
    const ended = await tune(cwd, 'fern', ...few);
    expect(ended.code).toBe(1);
    expect(ended.stdout).toContain('Nothing passes');
    expect(existsSync(join(cwd, 'out/fern-tune/tune.svg'))).toBe(true);
  });
});

describe('folders', () => {
  test('replaces an earlier sweep whole', async () => {
    const cwd = workshop({ fern: GRID });
    await tune(cwd, 'fern', ...few);
    writeFileSync(join(cwd, 'out/fern-tune/old.txt'), 'old');
    await tune(cwd, 'fern', '--vary', 'leaf.length', '7');
    expect(Object.keys(tree(join(cwd, 'out'))).sort()).toEqual([
      'fern-tune/tune.csv',
      'fern-tune/tune.json',
      'fern-tune/tune.svg',
    ]);
  });

  test('neither a kit nor anything else of that name is touched', async () => {
    const cwd = workshop({ fern: GRID });
    mkdirSync(join(cwd, 'out/fern-tune'), { recursive: true });
    writeFileSync(join(cwd, 'out/fern-tune/kit.json'), '{\n  "format": "beamloom-kit/1"\n}\n');
    const ended = await tune(cwd, 'fern', ...few);
    expect(ended.code).toBe(3);
    expect(ended.stderr).toContain('not a sweep');
    expect(Object.keys(tree(join(cwd, 'out')))).toEqual(['fern-tune/kit.json']);
  });
});

describe('wrong input: exit 2, one clear answer, nothing written', () => {
  test.for([
    {
      row: 'a range written backwards',
      words: ['--vary', 'leaf.length', '12..8/0.5'],
      says: /backwards; write 8\.\.12\/0\.5/,
    },
    {
      row: 'a million designs',
      words: ['--vary', 'leaf.length', '8..12.995/0.005', '--vary', 'leaf.thickness', '0.86..1.859/0.001'],
      says: /1.000.000 designs, .* 50.000/,
    },
    {
      row: 'a leaf longer than the mount',
      words: ['--vary', 'leaf.length', '8..48/4'],
      says: /48 mm is longer than the whole mount/,
    },
    {
      row: 'under two print lines',
      words: ['--vary', 'leaf.thickness', '0.5'],
      says: /0\.5 mm thick is under two print lines, 0\.86 mm/,
    },
    { row: 'no travel', words: ['--vary', 'aim.tilt', '0'], says: /from 0\.2 to 10 °/ },
    { row: 'a plastic that is none', words: ['--vary', 'material', 'petg,brass'], says: /no "brass"/ },
    { row: 'what can’t be varied', words: ['--vary', 'grid.rows', '2'], says: /what can be varied/ },
    { row: 'half a flag', words: ['--vary', 'leaf.length'], says: /arguments/ },
    { row: 'a design that is not there', words: [...few, '--pick', '5'], says: /the sweep has 4 designs/ },
    { row: 'no number', words: [...few, '--pick', 'best'], says: /number of a design/ },
    { row: 'two presets', words: ['moss'], says: /moss/ },
  ])('$row', async ({ words, says }) => {
    const cwd = workshop({ fern: GRID });
    const ended = await tune(cwd, 'fern', ...words);
    expect(ended).toMatchObject({ code: 2, stdout: '' });
    expect(ended.stderr.replaceAll(/\s+/g, ' ')).toMatch(says);
    expect(Object.keys(tree(cwd))).toEqual(['presets/fern.yaml']);
  });

  test.for([
    {
      row: 'a leaf longer than its mount',
      lines: 'leaf: { length: 50 }\n',
      says: /fern\.yaml:2:\d+ +leaf\.length[\s\S]*50 mm is longer/,
    },
    {
      row: 'under two print lines',
      lines: 'leaf:\n  thickness: 0.5\n',
      says: /fern\.yaml:3:\d+ +leaf\.thickness[\s\S]*two print lines/,
    },
    { row: 'no travel', lines: 'aim: { tilt: 0 }\n', says: /fern\.yaml:2:\d+ +aim\.tilt/ },
    { row: 'a plastic without its figures', lines: 'material: { modulus: 2000 }\n', says: /missing: poisson/ },
  ])('in the preset: $row, with line and column', async ({ lines, says }) => {
    const cwd = workshop({ fern: GRID + lines });
    const ended = await tune(cwd, 'fern');
    expect(ended).toMatchObject({ code: 2, stdout: '' });
    expect(ended.stderr).toMatch(says);
    expect(existsSync(join(cwd, 'out'))).toBe(false);
  });

  test('exit 3 for a preset that is not there', async () => {
    expect(await tune(workshop({ fern: GRID }), 'fir')).toMatchObject({ code: 3, stdout: '' });
  });
});

describe('--apply', () => {
  const text = `# for the bench\n${GRID}\nleaf: # the spring\n  length: 6 # mm, measured\nprinter: bed-220 # in the shed\n`;

  test('writes the best design; everything else stays, and the preset then gets that leaf', async () => {
    const cwd = workshop({ fern: text });
    const ended = await tune(cwd, 'fern', '--apply', '--json', ...few);
    expect(ended.code).toBe(0);
    const { applied, best, designs } = JSON.parse(ended.stdout);
    const chosen = designs[best - 1];
    expect(applied).toEqual({
      'leaf.layout': chosen.layout,
      'leaf.legs': chosen.legs,
      'leaf.length': chosen.length_mm,
      'leaf.thickness': chosen.thickness_mm,
    });
    const lines = preset(cwd).split('\n');
    expect(lines).toEqual([
      '# for the bench',
      GRID.trim(),
      '',
      'leaf: # the spring',
      `  length: ${chosen.length_mm} # mm, measured`,
      `  layout: ${chosen.layout}`,
      `  legs: ${chosen.legs}`,
      `  thickness: ${chosen.thickness_mm}`,
      'printer: bed-220 # in the shed',
      '',
    ]);
    // A sweep of one other thing starts from there.
    const again = JSON.parse((await tune(cwd, 'fern', '--json', '--vary', 'aim.tilt', '3')).stdout);
    expect(again.designs[0]).toMatchObject({
      layout: chosen.layout,
      legs: chosen.legs,
      length_mm: chosen.length_mm,
      thickness_mm: chosen.thickness_mm,
      strain_pct: chosen.strain_pct,
    });
  });

  test('writes the one that is picked, with what else was varied', async () => {
    const cwd = workshop({ fern: GRID });
    const ended = await tune(
      cwd,
      'fern',
      '--apply',
      '--pick',
      '2',
      '--vary',
      'material',
      'asa,petg',
      '--vary',
      'leaf.length',
      '8',
    );
    expect(ended.code).toBe(0);
    expect(ended.stdout).toContain('Applied to presets/fern.yaml');
    expect(preset(cwd)).toMatch(/length: 8\n/);
    expect(preset(cwd)).toMatch(/material: petg\n/);
  });

  test('refuses a design that fails, and says why: exit 1, the preset as it was', async () => {
    const cwd = workshop({ fern: text });
    const ended = await tune(
      cwd,
      'fern',
      '--apply',
      '--pick',
      '1',
      '--vary',
      'leaf.legs',
      '1',
      '--vary',
      'leaf.length',
      '6',
    );
    expect(ended.code).toBe(1);
    expect(ended.stdout.replaceAll(/\s+/g, ' ')).toMatch(/Not applied: 1, in-line, 6 × .*strain/);
    expect(preset(cwd)).toBe(text);
  });

  test('refuses when nothing passes', async () => {
    const steep = `${GRID}aim: { tilt: 9 }\n`;
    const cwd = workshop({ fern: steep });
    expect((await tune(cwd, 'fern', '--apply', ...few)).code).toBe(1);
    expect(preset(cwd)).toBe(steep);
  });

  test('a link stays a link, permissions stay, and no other file is left', async () => {
    const cwd = workshop({});
    writeFileSync(join(cwd, 'real.yaml'), GRID);
    chmodSync(join(cwd, 'real.yaml'), 0o640);
    symlinkSync(join(cwd, 'real.yaml'), join(cwd, 'presets/fern.yaml'));
    expect((await tune(cwd, 'fern', '--apply', ...few)).code).toBe(0);
    expect(lstatSync(join(cwd, 'presets/fern.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(cwd, 'real.yaml'), 'utf8')).toContain('leaf:');
    expect(statSync(join(cwd, 'real.yaml')).mode & 0o777).toBe(0o640);
    expect(Object.keys(tree(cwd)).filter((path) => !path.startsWith('out/'))).toEqual([
      'presets/fern.yaml',
      'real.yaml',
    ]);
  });
});

describe('what no leaf may be is refused alike by every command', () => {
  test.each([
    ['longer than its mount', 'leaf: { length: 50 }\n', 'leaf.length', /longer than the whole mount/],
    ['thinner than two lines', 'leaf: { thickness: 0.6 }\n', 'leaf.thickness', /under two print lines, 0\.86 mm/],
    ['a notch wider than its mount', 'leaf: { layout: notch, length: 20 }\n', 'leaf.length', /notch of radius 20 mm/],
  ])('%s', async (_, lines, path, says) => {
    const cwd = workshop({ fern: GRID + lines });
    const told = await Promise.all(['kit', 'check', 'tune'].map((command) => beamloom([command, 'fern'], { cwd })));
    // What kit and check tell of their progress aside.
    const answers = told.map(({ stderr }) => stderr.replace(/^1 of 1.*\n/, ''));
    for (const [i, { code, stdout }] of told.entries()) {
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(answers[i]).toBe(answers[0]);
    }
    const said = answers[0]!.replaceAll(/\s+/g, ' ');
    expect(said).toMatch(/1 mistake, so nothing is made/);
    expect(said).toContain(`fern.yaml:2:`);
    expect(said).toContain(path);
    expect(said).toMatch(says);
    expect(existsSync(join(cwd, 'out'))).toBe(false);
  });
});

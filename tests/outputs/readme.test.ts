import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { CODES } from '../../src/checks/index.js';
import { layOut } from '../../src/layout/lay-out.js';
import { CAUTIONS } from '../../src/outputs/cautions.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { presetSchema } from '../../src/spec/schema.js';

const ROOT = resolve(import.meta.dirname, '../..');
const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const readme = read('README.md');
const LARGEST = 150_000;

describe('what the README says stays true', () => {
  test.for(CAUTIONS)('it carries the caution: %s', (caution) => {
    expect(readme.split('\n')).toContain(`- ${caution}`);
  });

  test('it shows the two commands, each in a block of its own', () => {
    const blocks = [...readme.matchAll(/```sh\n([\s\S]*?)```/g)].map((match) => match[1]!.trim());
    expect(blocks).toEqual(['npm ci && npm run kit', 'npm ci && npm test']);
    const { scripts } = JSON.parse(read('package.json'));
    for (const name of ['kit', 'test', 'beamloom']) expect(scripts).toHaveProperty(name);
  });

  const presets = [...readme.matchAll(/```yaml\n([\s\S]*?)```/g)].map((match) => match[1]!);
  test('its presets are read and laid out; the first is the shipped one without remarks', () => {
    expect(presets).toHaveLength(3);
    for (const text of presets) expect(layOut(readPreset(text, 'example.yaml')).grid.columns).toHaveLength(6);
    const path = 'greenhouse-bench.yaml';
    expect(readPreset(presets[0]!, path)).toEqual(readPreset(read(`presets/${path}`), path));
  });

  test('its table holds every key of a preset', () => {
    const table = [...readme.matchAll(/^\| (`.*?) \|/gm)].flatMap((row) => row[1]!.match(/`[^`]+`/g) ?? []);
    const keys = Object.entries(presetSchema.shape).flatMap(([key, value]) => {
      const inner = value instanceof z.ZodOptional ? value.unwrap() : value;
      return inner instanceof z.ZodObject ? Object.keys(inner.shape).map((below) => `${key}.${below}`) : [key];
    });
    expect(keys.length).toBeGreaterThan(20);
    const short = (key: string) => `\`.${key.split('.')[1]}\``;
    expect(keys.filter((key) => !table.includes(`\`${key}\``) && !table.includes(short(key)))).toEqual([]);
  });

  test('the code that it accepts as an example is a finding’s', () => {
    const [, code] = /--accept (\w[\w-]*\/[\w-]+)/.exec(readme)!;
    expect(CODES).toContain(code);
  });
});

test.for(['README.md', 'DEVELOPERS.md'])('%s: files it links or shows are there, pictures are small', (path) => {
  const targets = [...read(path).matchAll(/\]\((?!https?:)([^)#]+)\)/g)].map((match) => match[1]!);
  expect(targets.length).toBeGreaterThan(0);
  for (const target of targets) {
    const file = join(ROOT, dirname(path), target);
    expect(existsSync(file), target).toBe(true);
    if (target.endsWith('.png')) expect(statSync(file).size, target).toBeLessThanOrEqual(LARGEST);
  }
});

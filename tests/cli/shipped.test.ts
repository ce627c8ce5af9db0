import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { beamloom } from './built.js';

const ROOT = resolve(import.meta.dirname, '../..');

test('every preset that is shipped passes its checks without an error', { timeout: 300_000 }, async () => {
  const ended = await beamloom(['check', '--json'], { cwd: ROOT });
  const { kits } = JSON.parse(ended.stdout);
  const names = readdirSync(resolve(ROOT, 'presets')).filter((name) => name.endsWith('.yaml'));
  expect(kits.map((kit: { preset: string }) => kit.preset)).toEqual(names.map((name) => `presets/${name}`).sort());
  expect(names.length).toBeGreaterThanOrEqual(5);
  for (const { name, status, findings } of kits) {
    expect({ name, status, errors: findings.filter((f: { severity: string }) => f.severity === 'error') }).toEqual({
      name,
      status: 'passed',
      errors: [],
    });
  }
  expect(ended.code).toBe(0);
});

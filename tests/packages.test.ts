/** What the program loads at run time is installed where nothing else is: `npm ci --omit=dev`. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');
const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  readonly dependencies: Readonly<Record<string, string>>;
};

/** The view is bundled into one script when it is built, with what it imports. */
const loaded = readdirSync(join(ROOT, 'src'), { recursive: true })
  .map(String)
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts') && !path.startsWith('viewer'))
  .flatMap((path) => packagesOf(readFileSync(join(ROOT, 'src', path), 'utf8')));

/** @returns names of the packages that a module imports for more than their types */
function packagesOf(text: string): readonly string[] {
  const values = text.replace(/^import type [^;]*;/gm, '');
  return [...values.matchAll(/(?:^(?:import|export|\})[^'\n]* from |^import |\bimport\()'([^'.][^']*)'/gm)]
    .map(([, name]) => name!)
    .filter((name) => !name.startsWith('node:'))
    .map((name) =>
      name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/'),
    );
}

test('every package that the program loads is one of its dependencies, and each of these is loaded', () => {
  expect(packagesOf("import { a } from '@x/y/z.js';\nimport type { b } from 'q';\nawait import('w');")).toEqual([
    '@x/y',
    'w',
  ]);
  expect([...new Set(loaded)].toSorted()).toEqual(Object.keys(dependencies).toSorted());
});

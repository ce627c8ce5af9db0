import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = resolve(import.meta.dirname, '../src');

/** Imports go one way: a file may import from its own folder and from those that stand earlier. Those of one line don't see each other. */
const ORDER: readonly (readonly string[])[] = [
  ['units.ts', 'errors.ts', 'findings.ts', 'data.ts', 'positive.ts'],
  ['mechanics', 'optics', 'electrics'],
  ['materials', 'components', 'printers', 'ambients'],
  ['solid'],
  ['spec'],
  ['layout'],
  ['tune'],
  ['parts'],
  ['kit'],
  ['checks'],
  ['viewer'],
  ['outputs'],
  ['pipeline.ts'],
  ['cli'],
];
const LONGEST = 300;

const sources = readdirSync(SRC, { recursive: true })
  .map(String)
  .filter((path) => path.endsWith('.ts'))
  .map((path) => ({ path, text: readFileSync(join(SRC, path), 'utf8') }))
  .sort((a, b) => (a.path < b.path ? -1 : 1));

const topOf = (path: string) => path.split('/')[0]!;
const rankOf = (path: string) => ORDER.findIndex((line) => line.includes(topOf(path)));

/** What a file imports, re-exports or loads later, type imports included. */
const importsOf = (text: string): readonly string[] =>
  [...text.matchAll(/(?:^|[;}\s])(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1]!);

/** Everything but comments and plain strings: what the program does. */
const codeOf = (text: string) =>
  text.replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, (found) =>
    found.startsWith('/') ? '' : "''",
  );

const isNode = (name: string) => name.startsWith('node:');

/** @returns what is wrong with the imports of one file */
function importMistakes(path: string, text: string): readonly string[] {
  return importsOf(text).flatMap((name) => {
    if (!name.startsWith('.')) {
      const forEdge = isNode(name) || /^(yargs|cli-|tinyglobby)/.test(name);
      return forEdge && topOf(path) !== 'cli' ? [`${path} imports ${name}`] : [];
    }
    const target = relative(SRC, resolve(SRC, path, '..', name)).replace(/\.js$/, '.ts');
    if (topOf(target) === topOf(path)) return [];
    return rankOf(target) >= 0 && rankOf(target) < rankOf(path) ? [] : [`${path} imports ${target}`];
  });
}

/** @returns the edge's own words that a file outside cli uses */
const impure = (text: string): readonly string[] =>
  codeOf(text).match(
    /(?<![.\w])(?:console|process|setTimeout|setInterval|setImmediate|performance|fetch|globalThis|Buffer|crypto)\b(?!\s*[?]?:)|Math\.random\b|\bDate\b\s*[.(]/g,
  ) ?? [];

describe('the rules see what they forbid', () => {
  test.for([
    { path: 'solid/a.ts', text: `import { x } from '../spec/spec.js';`, want: ['solid/a.ts imports spec/spec.ts'] },
    {
      path: 'solid/a.ts',
      text: `import type {\n  X,\n} from '../kit/types.js';`,
      want: ['solid/a.ts imports kit/types.ts'],
    },
    {
      path: 'mechanics/a.ts',
      text: `export { y } from '../optics/y.js';`,
      want: ['mechanics/a.ts imports optics/y.ts'],
    },
    { path: 'units.ts', text: `import { FileError } from './errors.js';`, want: ['units.ts imports errors.ts'] },
    { path: 'kit/a.ts', text: `const m = await import('../cli/main.js');`, want: ['kit/a.ts imports cli/main.ts'] },
    { path: 'outputs/a.ts', text: `import { join } from "node:path";`, want: ['outputs/a.ts imports node:path'] },
    { path: 'pipeline.ts', text: `import yargs from 'yargs';`, want: ['pipeline.ts imports yargs'] },
    { path: 'layout/a.ts', text: `import { z } from '../../tests/z.js';`, want: ['layout/a.ts imports ../tests/z.ts'] },
    {
      path: 'cli/a.ts',
      text: `import 'node:fs'; import { x } from '../pipeline.js'; import { y } from './b.js';`,
      want: [],
    },
  ])('imports: $text', ({ path, text, want }) => expect(importMistakes(path, text)).toEqual(want));

  test.for([
    { text: 'console.log(1);', want: ['console'] },
    { text: 'const t = Date.now() + Math.random();', want: ['Date.', 'Math.random'] },
    { text: "// console\nconst a = 'process'; /* Date.now() */ const post = b.process;", want: [] },
    { text: 'process.exit();', want: ['process'] },
  ])('impure: $text', ({ text, want }) => expect(impure(text)).toEqual(want));
});

test('every source file lies in a folder that has its place in the order', () => {
  expect(sources.length).toBeGreaterThan(50);
  expect(sources.map(({ path }) => path).filter((path) => rankOf(path) < 0)).toEqual([]);
});

test('imports go one way, and only cli/ imports node: and what is the terminal’s', () => {
  expect(sources.flatMap(({ path, text }) => importMistakes(path, text))).toEqual([]);
});

test('only cli/ touches console, process, time, chance and the like', () => {
  const found = sources
    .filter(({ path }) => topOf(path) !== 'cli')
    .map(({ path, text }) => ({ path, words: impure(text) }));
  expect(found.filter(({ words }) => words.length > 0)).toEqual([]);
});

test(`no source file is longer than ${LONGEST} lines`, () => {
  const long = sources
    .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }))
    .filter(({ lines }) => lines > LONGEST);
  expect(long).toEqual([]);
});

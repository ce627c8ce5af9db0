#!/usr/bin/env node
/**
 * How long the backbone alone takes: every check but those of printability, and the shapes, kit.json, parts.csv and summary.txt;
 * without pictures, drawings, sheets, 3MF and report. Bundled like the program, from the start of a process to its end.
 *
 *   npm run build && node tests/benchmark/backbone.mjs [rounds]
 *
 * The number of rounds is fixed, the median counts. Nothing else should run meanwhile.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';

const ROOT = resolve(import.meta.dirname, '../..');
const KITS = [
  { preset: 'greenhouse-bench', what: '4 × 6', wanted: 2500 },
  { preset: 'seed-library', what: '12 × 24', wanted: 7000 },
];
const from = (path) => JSON.stringify(join(ROOT, '.build', path));
const PROGRAM = `
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { CHECKS } from ${from('checks/index.js')};
import { makeKit } from ${from('pipeline.js')};
import { kitJson } from ${from('outputs/kit-json.js')};
import { partsCsv } from ${from('outputs/parts-csv.js')};
import { summary } from ${from('outputs/summary.js')};
import { loadManifold } from ${from('solid/manifold-kernel.js')};
import { readPreset } from ${from('spec/read-preset.js')};
for (const name of ['overhang', 'walls', 'first layer', 'orientation']) CHECKS.splice(CHECKS.findIndex((check) => check.name === name), 1);
const [, , preset, out] = process.argv;
const { files } = makeKit(readPreset(readFileSync(preset, 'utf8'), preset.split('/').at(-1)), {
  ...(await loadManifold()),
  hash: (bytes) => createHash('sha256').update(bytes).digest('hex'),
  outputs: { kitJson, partsCsv, summary },
  compression: {},
  viewer: '',
  progress: () => {},
  accept: [],
});
for (const { path, bytes } of files) {
  mkdirSync(dirname(join(out, path)), { recursive: true });
  writeFileSync(join(out, path), bytes);
}
console.log(JSON.stringify({ files: files.length, memory: process.resourceUsage().maxRSS / 1024 }));
`;

const work = mkdtempSync(join(tmpdir(), 'backbone-'));
// Beside the program: the kernel's own file is found from there.
const bundle = join(ROOT, '.build', 'backbone.mjs');
try {
  const program = join(work, 'program.mjs');
  writeFileSync(program, PROGRAM);
  await build({
    entryPoints: [program],
    outfile: bundle,
    bundle: true,
    minifySyntax: true,
    minifyWhitespace: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: ['manifold-3d'],
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
    },
    logLevel: 'error',
  });
  for (const { preset, what, wanted } of KITS) {
    const runs = Array.from({ length: Number(process.argv[2] ?? 5) }, () => {
      const started = performance.now();
      const told = JSON.parse(
        execFileSync(process.execPath, [
          bundle,
          join(ROOT, 'presets', `${preset}.yaml`),
          join(work, preset),
        ]).toString(),
      );
      return { passed: performance.now() - started, ...told };
    });
    const median = (key) => runs.map((run) => run[key]).toSorted((a, b) => a - b)[Math.floor(runs.length / 2)];
    console.log(
      `${what} (${runs[0].files} files): ${median('passed').toFixed(0)} ms, ${median('passed') <= wanted ? 'within' : 'OVER'} ${wanted} ms; peak ${median('memory').toFixed(0)} MB, ${median('memory') <= 400 ? 'within' : 'OVER'} 400 MB`,
    );
  }
} finally {
  rmSync(work, { recursive: true, force: true });
  rmSync(bundle, { force: true });
}

#!/usr/bin/env node
/**
 * Are the kits' 3MF files accepted by a strict reader of its own? `npm run test:3mf` after `npm run kit`: builds a small reader on
 * lib3mf and gives it every file under out/. Where compiler or library are not installed it says so and ends as skipped.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const HEADERS = '/usr/include/lib3mf';
const out = process.argv[2] ?? 'out';
const skip = (why) => {
  console.log(`skipped: ${why}`);
  process.exit(0);
};
if (spawnSync('g++', ['--version']).status !== 0) skip('no g++');
if (!existsSync(HEADERS)) skip('no lib3mf (Debian: lib3mf-dev)');
const files = existsSync(out)
  ? readdirSync(out, { recursive: true })
      .map(String)
      .filter((path) => path.endsWith('.3mf'))
      .sort()
  : [];
if (files.length === 0) skip(`no 3MF file under ${out}/: run \`npm run kit\` first`);

const folder = mkdtempSync(join(tmpdir(), 'beamloom-3mf-'));
try {
  const program = join(folder, 'read');
  const source = fileURLToPath(new URL('read.cpp', import.meta.url));
  execFileSync('g++', ['-w', '-fpermissive', `-I${HEADERS}`, source, '-o', program, '-l3MF'], { stdio: 'inherit' });
  const { status } = spawnSync(
    program,
    files.map((path) => join(out, path)),
    { stdio: 'inherit' },
  );
  console.log(status === 0 ? `${files.length} of ${files.length} accepted` : 'refused: see above');
  process.exitCode = status === 0 ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

#!/usr/bin/env node
/**
 * How long the built program takes for a whole kit, all checks and files, and for a check alone, and how much memory: from the
 * start of the process to its end.
 *
 *   npm run build && node tests/benchmark/kit.mjs [rounds] [other]
 *
 * `other` is a folder with a second build in its `.build/`: the two take turns, and their ratio is told. The kits take turns, too,
 * the number of rounds is fixed, the median counts. Nothing else should run on the machine meanwhile: beside the time that passed
 * stands the processor time of all the process's threads, which suffers less from company.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const ROUNDS = Number(process.argv[2] ?? 7);
const OTHER = process.argv[3] === undefined ? null : resolve(process.argv[3]);
const MOST_MEMORY = 400;
/** What a kit may take beyond its check [ms]. */
const MOST_BEYOND = 1500;
const KITS = [
  { preset: 'greenhouse-bench', what: '4 × 6', wanted: 2500 },
  { preset: 'seed-library', what: '12 × 24', wanted: 7000 },
];
const FIGURES = ['passed', 'processor', 'memory'];

/** In the measured process, as it ends: processor time [ms] and peak memory [MB] to file descriptor 3. */
const TELL = `import { writeSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
if (isMainThread) process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  writeSync(3, JSON.stringify({ processor: (userCPUTime + systemCPUTime) / 1000, memory: maxRSS / 1024 }));
});`;

const out = mkdtempSync(join(tmpdir(), 'kits-'));
const builds = OTHER === null ? [ROOT] : [ROOT, OTHER];
const series = KITS.flatMap((kit) =>
  ['kit', 'check'].map((command) => ({ ...kit, command, runs: builds.map(() => []) })),
);
try {
  for (let round = 0; round < ROUNDS; round++)
    for (const { preset, command, runs } of series)
      for (const [i, build] of builds.entries())
        runs[i].push(await run(build, command, join('presets', `${preset}.yaml`)));
} finally {
  rmSync(out, { recursive: true, force: true });
}

console.log(
  `node ${process.version}, ${ROUNDS} rounds, median (least)${OTHER === null ? '' : '; the other build below'}`,
);
for (const one of series) {
  const told = one.runs.map((runs) => Object.fromEntries(FIGURES.map((name) => [name, figure(runs, name)])));
  for (const [i, found] of told.entries())
    console.log(`${i === 0 ? name(one) : ' '.repeat(32)} ${line(found, i === 0 ? one : {})}`);
  if (told.length > 1)
    console.log(
      `${' '.repeat(32)} ratio: ${FIGURES.map((of) => `${of} ${(told[0][of].median / told[1][of].median).toFixed(3)}`).join(', ')}`,
    );
}
for (const { preset } of KITS) {
  const [kit, check] = ['kit', 'check'].map((command) =>
    series.find((one) => one.preset === preset && one.command === command),
  );
  const beyond = builds.map((_, i) => figure(kit.runs[i], 'passed').median - figure(check.runs[i], 'passed').median);
  const [own, ...others] = beyond.map((ms) => `${ms.toFixed(0)} ms`);
  console.log(
    `${preset}: kit beyond check ${own}, ${verdict(beyond[0], MOST_BEYOND)} ${MOST_BEYOND} ms${others.map((ms) => `; the other build ${ms}`).join('')}`,
  );
}

function figure(runs, name) {
  const sorted = runs.map((one) => one[name]).toSorted((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)], least: sorted[0] };
}

function name({ preset, what, command }) {
  return `${command.padEnd(5)} ${preset.padEnd(17)} ${what.padEnd(8)}`;
}

function line({ passed, processor, memory }, { command, wanted }) {
  const both = ({ median, least }, unit) => `${median.toFixed(0)} (${least.toFixed(0)}) ${unit}`;
  const against = command === 'kit' ? ` ${verdict(passed.median, wanted)} ${wanted} ms` : '';
  const least = command === undefined ? '' : `, ${verdict(memory.median, MOST_MEMORY)} ${MOST_MEMORY} MB`;
  return `${both(passed, 'ms').padEnd(16)}${against}; processor, all threads ${both(processor, 'ms')}; peak ${both(memory, 'MB')}${least}`;
}

function run(build, command, preset) {
  return new Promise((done, fail) => {
    const started = performance.now();
    const child = spawn(
      process.execPath,
      [
        '--import',
        `data:text/javascript,${encodeURIComponent(TELL)}`,
        join(build, '.build/cli/main.js'),
        command,
        preset,
        ...(command === 'kit' ? ['--out', out] : []),
      ],
      { cwd: ROOT, stdio: ['ignore', 'ignore', 'pipe', 'pipe'] },
    );
    let [told, complaints] = ['', ''];
    child.stdio[3].on('data', (piece) => {
      told += piece;
    });
    child.stderr.on('data', (piece) => {
      complaints += piece;
    });
    child.on('error', fail);
    child.on('close', (code) => {
      const passed = performance.now() - started;
      if (code === 0) done({ passed, ...JSON.parse(told) });
      else fail(new Error(`${command} ${preset} ended with ${code}\n${complaints}`));
    });
  });
}

function verdict(found, limit) {
  return found <= limit ? 'within' : 'OVER';
}

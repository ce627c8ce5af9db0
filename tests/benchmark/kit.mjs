#!/usr/bin/env node
/**
 * How long the built program takes for a whole kit, all checks and files, and how much memory: from the start of the process
 * to its end.
 *
 *   npm run build && node tests/benchmark/kit.mjs [rounds]
 *
 * The kits take turns, the number of rounds is fixed, the median counts. Nothing else should run on the machine meanwhile: beside
 * the time that passed stands the processor time of all the process's threads, which suffers less from company.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const ROUNDS = Number(process.argv[2] ?? 7);
const MOST_MEMORY = 400;
const kits = [
  { preset: 'greenhouse-bench', what: '4 × 6', wanted: 2500, runs: [] },
  { preset: 'seed-library', what: '12 × 24', wanted: 7000, runs: [] },
];

/** In the measured process, as it ends: processor time [ms] and peak memory [MB] to file descriptor 3. */
const TELL = `import { writeSync } from 'node:fs';
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  writeSync(3, JSON.stringify({ processor: (userCPUTime + systemCPUTime) / 1000, memory: maxRSS / 1024 }));
});`;

const out = mkdtempSync(join(tmpdir(), 'kits-'));
try {
  for (let round = 0; round < ROUNDS; round++)
    for (const { preset, runs } of kits) runs.push(await run(join('presets', `${preset}.yaml`)));
} finally {
  rmSync(out, { recursive: true, force: true });
}
console.log(`node ${process.version}, ${ROUNDS} rounds, median (least)`);
for (const { preset, what, wanted, runs } of kits) {
  const figure = (name) => {
    const sorted = runs.map((one) => one[name]).toSorted((a, b) => a - b);
    return { median: sorted[Math.floor(sorted.length / 2)], least: sorted[0] };
  };
  const [passed, processor, memory] = ['passed', 'processor', 'memory'].map(figure);
  const both = ({ median, least }, unit) => `${median.toFixed(0)} (${least.toFixed(0)}) ${unit}`;
  console.log(
    `${preset.padEnd(17)} ${what.padEnd(8)} ${both(passed, 'ms').padEnd(16)} ${verdict(passed.median, wanted)} ${wanted} ms; ` +
      `processor, all threads ${both(processor, 'ms')}; peak ${both(memory, 'MB')}, ${verdict(memory.median, MOST_MEMORY)} ${MOST_MEMORY} MB`,
  );
}

function run(preset) {
  return new Promise((done, fail) => {
    const started = performance.now();
    const child = spawn(
      process.execPath,
      [
        '--import',
        `data:text/javascript,${encodeURIComponent(TELL)}`,
        join(ROOT, '.build/cli/main.js'),
        'kit',
        preset,
        '--out',
        out,
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
      else fail(new Error(`${preset} ended with ${code}\n${complaints}`));
    });
  });
}

function verdict(found, limit) {
  return found <= limit ? 'within' : 'OVER';
}

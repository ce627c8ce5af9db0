#!/usr/bin/env node
/**
 * What each kind of output adds to a kit, and how soon its report can be used: `node tests/benchmark/outputs.mjs [preset]` after a build.
 *
 * The kit is made five times in one process; the median of each output's time is printed beside that of the whole. The page is opened
 * five times in chromium, offline, until its 3D view stands; left out where no chromium is installed.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { compression } from '../../.build/cli/compression.js';
import { viewerScript } from '../../.build/cli/viewer-script.js';
import { layBeds } from '../../.build/outputs/beds/lay-beds.js';
import { OUTPUTS } from '../../.build/outputs/index.js';
import { makeKit } from '../../.build/pipeline.js';
import { loadManifold } from '../../.build/solid/manifold-kernel.js';
import { readPreset } from '../../.build/spec/read-preset.js';

const RUNS = 5;
const path = process.argv[2] ?? 'presets/greenhouse-bench.yaml';
const text = readFileSync(path, 'utf8');
const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
const times = new Map();
for (const [name, output] of Object.entries(OUTPUTS))
  OUTPUTS[name] = (context) => {
    const start = performance.now();
    const files = output(context);
    times.set(name, [...(times.get(name) ?? []), performance.now() - start]);
    return files;
  };

const { kernel, profiles } = await loadManifold();
const whole = [];
const layings = [];
let page;
for (let run = 0; run < RUNS; run++) {
  const start = performance.now();
  kernel.scope(() => {
    const { files, context } = makeKit(readPreset(text, basename(path)), {
      kernel,
      profiles,
      hash: (bytes) => createHash('sha256').update(bytes).digest('hex'),
      compression,
      viewer: viewerScript(),
      outputs: OUTPUTS,
      progress: () => {},
      accept: [],
    });
    whole.push(performance.now() - start);
    // Once more, by itself: the beds are laid before the outputs begin.
    const laying = performance.now();
    layBeds(context);
    layings.push(performance.now() - laying);
    page = files.find((file) => file.path === 'report.html')?.bytes;
    return { keep: [], value: null };
  });
}
let sum = 0;
for (const [name, of] of times) {
  const ms = median(of);
  sum += ms;
  console.log(`${name.padEnd(12)} ${ms.toFixed(0).padStart(6)} ms`);
}
console.log(`${'all outputs'.padEnd(12)} ${sum.toFixed(0).padStart(6)} ms of ${median(whole).toFixed(0)} ms`);
console.log(`${'beds laid'.padEnd(12)} ${median(layings).toFixed(0).padStart(6)} ms before them`);
console.log(`report.html  ${(page.length / 1e6).toFixed(2)} MB`);

const browserPath = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((one) => existsSync(one));
if (browserPath === undefined) console.log('page: no chromium here');
else {
  const folder = mkdtempSync(join(tmpdir(), 'beamloom-page-'));
  const file = join(folder, 'report.html');
  writeFileSync(file, page);
  const browser = await chromium.launch({
    executablePath: browserPath,
    args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
  });
  const ready = [];
  for (let run = 0; run < RUNS; run++) {
    const tab = await browser.newPage();
    const start = performance.now();
    await tab.goto(pathToFileURL(file).href);
    await tab.waitForFunction(() => document.documentElement.dataset.view === 'ready');
    ready.push(performance.now() - start);
    await tab.close();
  }
  await browser.close();
  rmSync(folder, { recursive: true });
  console.log(`page usable after ${median(ready).toFixed(0)} ms (${ready.map((ms) => ms.toFixed(0)).join(', ')})`);
}

#!/usr/bin/env node
/**
 * What the checks of printability add to a run: kits checked in fresh processes with all checks and without those, in turn.
 *
 *   npm run build && node tests/benchmark/printability.mjs [rounds] [preset]
 *
 * The number of rounds is fixed, the median counts. Nothing else should run meanwhile: beside the
 * time that passed stands the processor time of all the process's threads.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const [, , told, preset = 'greenhouse-bench'] = process.argv;
const NAMES = ['overhang', 'walls', 'first layer', 'orientation'];

if (process.env.PRINTABILITY) {
  const load = (path) => import(join(ROOT, '.build', path));
  const { CHECKS } = await load('checks/index.js');
  if (process.env.PRINTABILITY === 'without')
    for (const name of NAMES)
      CHECKS.splice(
        CHECKS.findIndex((check) => check.name === name),
        1,
      );
  const { makeKit } = await load('pipeline.js');
  const { readPreset } = await load('spec/read-preset.js');
  const { loadManifold } = await load('solid/manifold-kernel.js');
  const spec = readPreset(readFileSync(join(ROOT, 'presets', `${preset}.yaml`), 'utf8'), `${preset}.yaml`);
  let [started, before] = [0, null];
  const tools = {
    ...(await loadManifold()),
    hash: () => '',
    outputs: null,
    accept: [],
    progress: (stage) => {
      if (stage === 'checks') [started, before] = [performance.now(), process.cpuUsage()];
    },
  };
  makeKit(spec, tools);
  const passed = performance.now() - started;
  const { user, system } = process.cpuUsage(before);
  console.log(JSON.stringify({ passed, processor: (user + system) / 1000 }));
} else {
  const runs = { with: [], without: [] };
  for (let round = 0; round < Number(told ?? 9); round++)
    for (const mode of ['with', 'without'])
      runs[mode].push(
        JSON.parse(
          execFileSync(process.execPath, [import.meta.filename, '1', preset], {
            env: { ...process.env, PRINTABILITY: mode },
          }).toString(),
        ),
      );
  const median = (mode, figure) => {
    const all = runs[mode].map((one) => one[figure]).toSorted((a, b) => a - b);
    return all[Math.floor(all.length / 2)];
  };
  console.log(`node ${process.version}, ${preset}, ${runs.with.length} rounds, median`);
  for (const figure of ['passed', 'processor']) {
    const [all, less] = [median('with', figure), median('without', figure)];
    console.log(
      `${figure.padEnd(10)} ${all.toFixed(0)} ms with, ${less.toFixed(0)} without: ${(all - less).toFixed(0)} more`,
    );
  }
}

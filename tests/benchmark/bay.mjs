#!/usr/bin/env node
/**
 * What an electronics bay of ten modules adds to a run: the same kit checked without and with it in fresh processes, in turn;
 * and how well sets of modules are packed.
 *
 *   npm run build && node tests/benchmark/bay.mjs [rounds]
 *
 * The number of rounds is fixed, the median counts. Nothing else should run meanwhile.
 */
import { execFileSync } from 'node:child_process';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const GRID = 'grid: { rows: 4, columns: 6, pitch: 22 }\n';
const TEN =
  '[controller, { part: multiplexer, count: 2 }, radio, display, charger, converter, switch, lamp, battery-pouch]';
const bay = (place, list) => `bay: { place: ${place}, modules: ${list} }\n`;
const load = (path) => import(join(ROOT, '.build', path));

if (process.env.BAY !== undefined) {
  const { makeKit } = await load('pipeline.js');
  const { readPreset } = await load('spec/read-preset.js');
  const { loadManifold } = await load('solid/manifold-kernel.js');
  const spec = readPreset(GRID + process.env.BAY, 'benchmark.yaml');
  const tools = {
    ...(await loadManifold()),
    hash: () => '',
    accept: [],
    outputs: null,
    progress: () => {},
  };
  const started = performance.now();
  makeKit(spec, tools);
  console.log(performance.now() - started);
} else {
  const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
  const modes = { without: '', attached: bay('far', TEN), apart: bay('apart', TEN) };
  const runs = Object.fromEntries(Object.keys(modes).map((mode) => [mode, []]));
  for (let round = 0; round < Number(process.argv[2] ?? 7); round++)
    for (const [mode, text] of Object.entries(modes))
      runs[mode].push(
        Number(
          execFileSync(process.execPath, [import.meta.filename], { env: { ...process.env, BAY: text } }).toString(),
        ),
      );
  const without = median(runs.without);
  console.log(`kit of 4 × 6, laid out, drawn and checked, without a bay ${without.toFixed(0)} ms`);
  for (const mode of ['attached', 'apart']) {
    const time = median(runs[mode]);
    console.log(
      `with ten modules, ${mode}: ${time.toFixed(0)} ms, ${(time - without).toFixed(0)} ms more, ${(time / without).toFixed(2)} times`,
    );
  }

  const { layOut } = await load('layout/lay-out.js');
  const { readPreset } = await load('spec/read-preset.js');
  const sets = {
    ten: TEN,
    five: '[controller, multiplexer, display, switch, converter]',
    boards: '[controller, { part: multiplexer, count: 4 }]',
  };
  for (const [name, list] of Object.entries(sets))
    for (const place of ['far', 'apart']) {
      const started = performance.now();
      const layout = layOut(readPreset(GRID + bay(place, list), 'benchmark.yaml'));
      const all = performance.now() - started;
      const begun = performance.now();
      layOut(readPreset(GRID, 'benchmark.yaml'));
      console.log(
        `${name}, ${place}: ${(100 * layout.bay.fill).toFixed(0)} % of the floor by area, ${layout.bay.units.length} trays, laid out in ${(all - (performance.now() - begun)).toFixed(0)} ms`,
      );
    }
}

#!/usr/bin/env node
/**
 * How long the light's budget takes, and how many drawn channels a second are aligned by true rotations.
 *
 *   npm run build && node tests/benchmark/light.mjs [presets/seed-library.yaml]
 *
 * The budget without and with the search for what would help most, medians of fixed rounds after a warm-up.
 */
import { readFileSync } from 'node:fs';
import { layOut } from '../../.build/layout/lay-out.js';
import { aimFigures, tiltRange } from '../../.build/layout/light/aim.js';
import { lightBudget } from '../../.build/layout/light/budget.js';
import { drawsOf, sampleChannels } from '../../.build/optics/sample.js';
import { readPreset } from '../../.build/spec/read-preset.js';

const ROUNDS = 15;
const CHANNELS = 1_000_000;

const file = process.argv[2] ?? 'presets/seed-library.yaml';
const layout = layOut(readPreset(readFileSync(file, 'utf8'), file));
const budget = lightBudget(layout);
const { inputs, lines } = budget.aim;

const timed = (run) => {
  const times = Array.from({ length: ROUNDS }, () => {
    const started = performance.now();
    run();
    return performance.now() - started;
  }).toSorted((a, b) => a - b);
  return times[Math.floor(ROUNDS / 2)];
};
const four = timed(() => aimFigures(layout.spec, { ways: lines, inputs, points: 6 }));
const eight = timed(() => aimFigures(layout.spec, { ways: lines, inputs, points: 16 }));
const all = timed(() => lightBudget(layout));
const coarse = aimFigures(layout.spec, { ways: lines, inputs, points: 6 });
const fine = aimFigures(layout.spec, { ways: lines, inputs, points: 16 });
console.log(`${file}: ${lines.map(({ line, count }) => `${count} ${line}s`).join(', ')}, median of ${ROUNDS} rounds`);
console.log(`whole grid, 6 points a panel   ${four.toFixed(1)} ms (all ${coarse.all.toFixed(6)})`);
console.log(`whole grid, 16 points a panel  ${eight.toFixed(1)} ms (all ${fine.all.toFixed(6)})`);
console.log(`with signal, fingers, levers   ${all.toFixed(1)} ms`);

const bench = {
  distance: lines[0].distance,
  exit: budget.exit,
  range: tiltRange(inputs),
  tolerance: lines[0].tolerance,
  slide: inputs.slide,
};
const scatter = { boresight: inputs.boresight, wedge: inputs.wedge, yaw: inputs.mountError, tilt: inputs.mountError };
const started = performance.now();
const { share, error } = sampleChannels({ draws: drawsOf(1), scatter, bench }, CHANNELS);
console.log(
  `${CHANNELS} drawn channels       ${((performance.now() - started) / 1000).toFixed(2)} s (${share.toFixed(6)} ± ${error.toFixed(6)}, by the integral ${fine.lines[0].chance.toFixed(6)})`,
);

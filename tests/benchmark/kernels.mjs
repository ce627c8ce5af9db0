#!/usr/bin/env node
/**
 * How long the solids of a kit take: on the kernel in use, on @jscad/modeling's booleans, and by bare calls of manifold-3d.
 *
 *   npm run build && node tests/benchmark/kernels.mjs [presets/greenhouse-bench.yaml]
 *
 * The part code runs once and its calls are noted, finished outlines included and lettering left out; then each side draws
 * the same calls and reads every part's mesh. The sides take turns, the number of rounds is fixed, the median counts.
 */
import { readFileSync } from 'node:fs';
import Module from 'manifold-3d';
import { drawKit } from '../../.build/kit/draw-kit.js';
import { layOut } from '../../.build/layout/lay-out.js';
import { jscadKernel } from '../../.build/solid/jscad-kernel.js';
import { loadManifoldKernel } from '../../.build/solid/manifold-kernel.js';
import { meshVolume } from '../../.build/solid/mesh-measures.js';
import { readPreset } from '../../.build/spec/read-preset.js';

const ROUNDS = 9;
const SLOW_ROUNDS = 3;

const file = process.argv[2] ?? 'presets/greenhouse-bench.yaml';
const layout = layOut(readPreset(readFileSync(file, 'utf8'), file));
const { calls, wanted } = note(layout);
const kernel = await loadManifoldKernel();
const library = await Module();
library.setup();

const sides = {
  'kernel in use': { rounds: ROUNDS, draw: () => drawOn(kernel), times: [] },
  'bare calls': { rounds: ROUNDS, draw: drawBare, times: [] },
  '@jscad/modeling': { rounds: SLOW_ROUNDS, draw: () => drawOn(jscadKernel()), times: [] },
};
for (const side of [sides['kernel in use'], sides['bare calls']]) side.draw();
for (let round = 0; round < ROUNDS; round++)
  for (const side of Object.values(sides)) {
    if (round >= side.rounds) continue;
    const started = performance.now();
    const meshes = side.draw();
    side.times.push(performance.now() - started);
    side.volume = volumeOf(meshes);
  }

const base = median(sides['kernel in use'].times);
console.log(
  `${file}: ${calls.length} calls, ${wanted.length} meshes, one warm-up round, ${ROUNDS} rounds (${SLOW_ROUNDS} on @jscad/modeling), median`,
);
for (const [name, { times, volume }] of Object.entries(sides))
  console.log(
    `${name.padEnd(16)} ${median(times).toFixed(0).padStart(7)} ms  ${(median(times) / base).toFixed(2).padStart(6)} times  ${volume.toFixed(1)} mm³ in all`,
  );

/** The calls that draw the kit; a solid is the number of the call that made it. */
function note(from) {
  const made = [];
  const call =
    (name) =>
    (...args) =>
      made.push({ name, args }) - 1;
  const noting = Object.fromEntries(
    ['extrude', 'revolve', 'move', 'union', 'subtract', 'intersect'].map((name) => [name, call(name)]),
  );
  const kit = drawKit(from, { kernel: noting, lettering: () => [] });
  const ends = new Set([...kit.parts.values()].flatMap(({ solid, posed }) => [solid, ...Object.values(posed ?? {})]));
  return { calls: made, wanted: [...ends] };
}

/** Every mesh is read, so that no side can leave work undone. */
function drawOn(k) {
  const run = () => {
    const solids = [];
    const get = (i) => solids[i];
    for (const { name, args } of calls)
      solids.push(
        name === 'extrude' || name === 'revolve'
          ? k[name](...args)
          : name === 'move'
            ? k.move(get(args[0]), args[1])
            : name === 'union'
              ? k.union(args[0].map(get))
              : name === 'subtract'
                ? k.subtract(get(args[0]), args[1].map(get))
                : k.intersect(get(args[0]), get(args[1])),
      );
    return { keep: [], value: wanted.map((i) => k.mesh(get(i))) };
  };
  return k.scope ? k.scope(run) : run().value;
}

function drawBare() {
  const { Manifold, CrossSection } = library;
  const solids = [];
  const get = (i) => solids[i];
  const section = (outlines, use) => {
    const cross = new CrossSection(outlines, 'Positive');
    const solid = use(cross);
    cross.delete();
    return solid;
  };
  const columns = (m) => [0, 1, 2, 3].flatMap((c) => [0, 1, 2, 3].map((r) => m[4 * r + c]));
  const bare = {
    extrude: (outlines, height) => section(outlines, (cross) => Manifold.extrude(cross, height)),
    revolve: (outlines, segments) => section(outlines, (cross) => Manifold.revolve(cross, segments)),
    move: (solid, matrix) => get(solid).transform(columns(matrix)),
    union: (all) => Manifold.union(all.map(get)),
    subtract: (body, cutters) => Manifold.difference([get(body), ...cutters.map(get)]),
    intersect: (a, b) => get(a).intersect(get(b)),
  };
  for (const { name, args } of calls) solids.push(bare[name](...args));
  const meshes = wanted.map((i) => {
    const { vertProperties, triVerts } = get(i).getMesh();
    return { positions: vertProperties, triangles: triVerts };
  });
  for (const solid of solids) solid.delete();
  return meshes;
}

function volumeOf(meshes) {
  return meshes.reduce((sum, mesh) => sum + meshVolume(mesh), 0);
}

function median(times) {
  const sorted = times.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

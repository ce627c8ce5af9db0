#!/usr/bin/env node
/**
 * Times a sweep of 10 000 designs, whole process, and beside it a general finite-element program on one such design, whole
 * process too: node tests/benchmark/sweep.mjs, after npm run build.
 *
 * The sweep: 100 lengths, 50 thicknesses, one and two legs; each design is laid out and solved three times (as drawn, and 0.05 mm
 * thinner and thicker), five states each. The other program (CalculiX, Debian: calculix-ccx, if it is there): one straight leaf of
 * 8 quadratic beam elements and a stiff arm, geometric nonlinearity, 20 steps, no contact.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';

const PROGRAM = resolve(import.meta.dirname, '../../.build/cli/main.js');
const SWEEP = [
  '--vary',
  'leaf.length',
  '4..13.9/0.1',
  '--vary',
  'leaf.thickness',
  '0.86..1.35/0.01',
  '--vary',
  'leaf.legs',
  '1,2',
];
const DESIGNS = 10_000;
const RUNS = 5;

const folder = mkdtempSync(join(tmpdir(), 'beamloom-sweep-'));
try {
  console.log(`${cpus().length} × ${cpus()[0].model}, load ${loadavg()[0].toFixed(1)} before, node ${process.version}`);
  mkdirSync(join(folder, 'presets'));
  writeFileSync(join(folder, 'presets/bench.yaml'), 'grid: { rows: 4, columns: 6, pitch: 22 }\n');
  const sweep = timed(process.execPath, [PROGRAM, 'tune', 'bench', ...SWEEP]);
  console.log(
    `sweep of ${DESIGNS} designs: ${said(sweep)}: ${((1000 * sweep.cpu) / DESIGNS).toFixed(2)} ms of processor a design`,
  );
  const small = timed(process.execPath, [PROGRAM, 'tune', 'bench', '--vary', 'leaf.length', '8']);
  console.log(`one design: ${said(small)}`);
  if (spawnSync('ccx', ['-v']).error) console.log('ccx is not installed: nothing to compare with');
  else {
    writeFileSync(join(folder, 'leaf.inp'), beamDeck());
    const runs = Array.from({ length: RUNS }, () => timed('ccx', ['leaf']));
    const fastest = runs.toSorted((a, b) => a.wall - b.wall)[0];
    console.log(`ccx, one design, fastest of ${RUNS}: ${said(fastest)}`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Wall and processor time of a process and its threads [s]. */
function timed(command, args) {
  const shell = '"$0" "$@" > out.txt; code=$?; times > times.txt; exit $code';
  const began = performance.now();
  const { status, stderr } = spawnSync('/bin/sh', ['-c', shell, command, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, OMP_NUM_THREADS: '1' },
  });
  const wall = (performance.now() - began) / 1000;
  if (status !== 0) throw new Error(`${command} ended with ${status}: ${stderr}`);
  // The second line of `times` is the children's: user, system.
  const children = readFileSync(join(folder, 'times.txt'), 'utf8').split('\n')[1];
  const parts = [...children.matchAll(/(\d+)m([\d.]+)s/g)].map(([, minutes, seconds]) => 60 * minutes + +seconds);
  return { wall, cpu: parts[0] + parts[1] };
}

function said({ wall, cpu }) {
  return `${wall.toFixed(2)} s, ${cpu.toFixed(2)} s of processor`;
}

/** A leaf 10 × 1 × 12 mm of E 3000 with a stiff arm, moved 1.7 mm at the screw, 14 mm from the leaf's middle. */
function beamDeck() {
  const leaf = Array.from({ length: 17 }, (_, i) => `${i + 1}, ${(10 * i) / 16}, 0, 0`);
  const arm = [`18, 14.5, 0, 0`, `19, 19, 0, 0`];
  const elements = Array.from({ length: 8 }, (_, i) => `${i + 1}, ${2 * i + 1}, ${2 * i + 2}, ${2 * i + 3}`);
  return `*NODE, NSET=ALL
${[...leaf, ...arm].join('\n')}
*ELEMENT, TYPE=B32R, ELSET=LEAF
${elements.join('\n')}
*ELEMENT, TYPE=B32R, ELSET=ARM
9, 17, 18, 19
*MATERIAL, NAME=PLASTIC
*ELASTIC
3000, 0.36
*BEAM SECTION, ELSET=LEAF, MATERIAL=PLASTIC, SECTION=RECT
1, 12
0, 1, 0
*BEAM SECTION, ELSET=ARM, MATERIAL=PLASTIC, SECTION=RECT
8, 12
0, 1, 0
*BOUNDARY
1, 1, 6
*STEP, NLGEOM, INC=100
*STATIC, DIRECT
0.05, 1
*BOUNDARY
19, 2, 2, 1.7
*NODE PRINT, NSET=ALL
U
*END STEP
`;
}

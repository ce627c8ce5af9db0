#!/usr/bin/env node
import { correctionOf, peakFactorsOf } from '../../.build/layout/leaf-figures.js';
/**
 * How many leaves a second are solved on one core, and how good the answers are: 20 load steps to 8.2° of lever travel, contact of the
 * screw's flat tip with its pin, friction .3.
 *
 *   npm run build && node tests/benchmark/leaf-solve.mjs
 *
 * Errors: the worst over all designs and steps in flex, thrust and strain, against 32 elements a leg and a half circle. The meshes take
 * turns, the number of rounds is fixed, the median counts. The fewest elements within .1 % are marked.
 */
import { centreOfRotation, leafPath } from '../../.build/layout/leaf-shape.js';
import { pinContact } from '../../.build/mechanics/nonlinear/contact.js';
import { solveLeafPath } from '../../.build/mechanics/nonlinear/leaf-path.js';

const ROUNDS = 15;
const STEPS = 20;
const TOLERANCE = 1e-3;
const FINE = { straight: 32, halfCircle: 32 };
const MESHES = [1, 2, 3, 4].map((n) => ({ straight: n, halfCircle: n }));
const AIMS = { straight: 1000, folded: 400 };
const RADIANS = Math.PI / 180;

const kinds = {
  'straight, in line': {
    aim: AIMS.straight,
    leaves: grid({ layout: 'in-line', legs: 1, lengths: [8, 10, 12, 14], pitches: [0] }),
  },
  'straight, upright': {
    aim: AIMS.straight,
    leaves: grid({ layout: 'upright', legs: 1, lengths: [8, 10, 12, 14], pitches: [0] }),
  },
  'folded, two legs': {
    aim: AIMS.folded,
    leaves: grid({ layout: 'folded', legs: 2, lengths: [6, 8, 10], pitches: [2.6, 3.4] }),
  },
  'folded, three legs': {
    aim: AIMS.folded,
    leaves: grid({ layout: 'folded', legs: 3, lengths: [6, 8, 10], pitches: [2.6, 3.4] }),
  },
};

console.log(`${STEPS} steps, contact, friction .3; node ${process.version}, one thread; ${ROUNDS} rounds, median`);
for (const [name, { aim, leaves }] of Object.entries(kinds)) {
  const wanted = leaves.map((leaf) => solve(leaf, FINE));
  const errors = MESHES.map((mesh) => worst(leaves, wanted, mesh));
  const least = errors.findIndex((error) => Math.max(...Object.values(error)) <= TOLERANCE);
  const times = MESHES.map(() => []);
  for (let round = 0; round <= ROUNDS; round++)
    for (const [i, mesh] of MESHES.entries()) {
      const started = performance.now();
      for (const leaf of leaves) solve(leaf, mesh);
      // The first round warms up.
      if (round > 0) times[i].push(performance.now() - started);
    }
  console.log(`\n${name}: ${leaves.length} designs, aim ${aim} a second`);
  for (const [i, { straight }] of MESHES.entries()) {
    const rate = (1000 * leaves.length) / median(times[i]);
    const said = Object.entries(errors[i]).map(([figure, error]) => `${figure} ${(100 * error).toFixed(4)} %`);
    const mark = i === least ? `  <- fewest within .1 %, ${rate >= aim ? 'aim met' : 'AIM MISSED'}` : '';
    console.log(
      `  ${straight} element${straight > 1 ? 's' : ' '} a leg and a half circle  ${rate.toFixed(0).padStart(6)} designs/s  ${said.join('  ')}${mark}`,
    );
  }
}

/** Leaves of every thickness, length, lever and pitch. */
function grid({ layout, legs, lengths, pitches }) {
  const out = [];
  for (const thickness of [0.86, 1.05, 1.26])
    for (const length of lengths)
      for (const lever of [14, 17, 20])
        for (const legPitch of pitches) out.push({ layout, legs, length, thickness, legPitch, lever });
  return out;
}

/** A mount whose arm is drawn 4.5° up, in PLA. */
function solve(form, mesh) {
  const body = { ...form, width: 11.5, fillet: 0.5 };
  const plastic = { modulus: { value: 3000 }, poisson: { value: 0.36 } };
  const [u, w] = centreOfRotation(form);
  return solveLeafPath({
    beam: {
      path: leafPath(form),
      thickness: form.thickness,
      width: body.width,
      modulus: plastic.modulus.value,
      poisson: plastic.poisson.value,
      correction: correctionOf(body, plastic),
      mesh,
    },
    contact: pinContact({
      pin: [u - form.lever, w - 4],
      radius: 1.5,
      through: [u - form.lever, w],
      axis: (4.5 - 90) * RADIANS,
    }),
    friction: 0.3,
    peaks: peakFactorsOf(body, plastic),
    steps: Array.from({ length: STEPS }, (_, i) => ({ advance: (8.2 * RADIANS * form.lever * (i + 1)) / STEPS })),
  });
}

function worst(leaves, wanted, mesh) {
  const out = { flex: 0, force: 0, maxStrain: 0, peakStress: 0 };
  for (const [k, leaf] of leaves.entries())
    for (const [i, state] of solve(leaf, mesh).entries())
      for (const figure of Object.keys(out)) {
        const error = Math.abs(state[figure] / wanted[k][i][figure] - 1);
        // Not Math.max: a NaN must show.
        if (!(error <= out[figure])) out[figure] = error;
      }
  return out;
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

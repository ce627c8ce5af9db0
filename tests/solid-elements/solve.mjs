/** Runs the finite-element program on half a prism under a dead force, geometry nonlinear, and reads its answer back. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Share of the load in one increment. */
const INCREMENT = 0.5;
const NEAR = 1e-4;

/**
 * @param {object} options
 * @param {ReturnType<import('./mesh.mjs').meshHalf>} options.mesh
 * @param {{ modulus: number, poisson: number }} options.plastic - E [MPa], ν
 * @param {(at: readonly [number, number]) => boolean} options.fixed - whether a place of the profile is held in all directions
 * @param {{ at: readonly [number, number], force: readonly [number, number] }} options.load - line across the whole width; force
 * on the whole width [N]
 * @param {boolean} [options.linear] - small displacement, one step
 * @param {string} options.folder
 * @returns {{ move: number[][], stress: number[][] }[]} one state per increment; by node: displacement [mm], xx yy zz xy yz zx [MPa]
 */
export function solveHalf({ mesh, plastic, fixed, load, linear = false, folder }) {
  writeFileSync(join(folder, 'half.inp'), inputText({ mesh, plastic, fixed, load, linear }));
  execFileSync('ccx', ['half'], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 2 ** 26,
    env: { ...process.env, OMP_NUM_THREADS: '1' },
  });
  const states = readStates(readFileSync(join(folder, 'half.frd'), 'latin1'), mesh.nodes.length);
  if (states.length !== (linear ? 1 : Math.round(1 / INCREMENT)))
    throw new Error(`the finite-element program stopped after ${states.length} increments`);
  return states;
}

function inputText({ mesh, plastic, fixed, load, linear }) {
  const { nodes, bricks } = mesh;
  const held = nodes.flatMap(({ at }, i) => (fixed(at) ? [i + 1] : []));
  const middle = nodes.flatMap(({ z }, i) => (z === 0 ? [i + 1] : []));
  if (held.length === 0) throw new Error('nothing holds the base');
  return [
    '*NODE, NSET=ALL',
    ...nodes.map(({ at: [x, y], z }, i) => `${i + 1}, ${x}, ${y}, ${z}`),
    '*ELEMENT, TYPE=C3D20R, ELSET=E',
    ...bricks.flatMap((of, i) => elementLines(i + 1, of)),
    '*NSET, NSET=HELD',
    ...held,
    '*NSET, NSET=MIDDLE',
    ...middle,
    '*BOUNDARY',
    'HELD, 1, 3',
    'MIDDLE, 3, 3',
    '*MATERIAL, NAME=M',
    '*ELASTIC',
    `${plastic.modulus}, ${plastic.poisson}`,
    '*SOLID SECTION, ELSET=E, MATERIAL=M',
    ...(linear ? ['*STEP', '*STATIC'] : ['*STEP, NLGEOM, INC=100', '*STATIC, DIRECT', `${INCREMENT}, 1.`]),
    '*CLOAD',
    ...lineLoad(nodes, load),
    '*NODE FILE',
    'U',
    '*EL FILE',
    'S',
    '*END STEP',
    '',
  ].join('\n');
}

const elementLines = (id, of) => {
  const numbers = [id, ...of.map((node) => node + 1)];
  return [`${numbers.slice(0, 11).join(', ')},`, numbers.slice(11).join(', ')];
};

/** Even along the line: sixth, two thirds, sixth of each layer's share. */
function lineLoad(nodes, { at, force }) {
  const line = nodes
    .map((node, i) => ({ ...node, id: i + 1 }))
    .filter((node) => Math.hypot(node.at[0] - at[0], node.at[1] - at[1]) < NEAR)
    .sort((a, b) => a.z - b.z);
  if (line.length < 3) throw new Error(`no line of nodes at (${at})`);
  const share = line.map(() => 0);
  for (let i = 0; i + 2 < line.length; i += 2) {
    const part = (line[i + 2].z - line[i].z) / line.at(-1).z / 2;
    share[i] += part / 6;
    share[i + 1] += (4 * part) / 6;
    share[i + 2] += part / 6;
  }
  return line.flatMap(({ id }, i) =>
    [0, 1].flatMap((axis) => (force[axis] === 0 ? [] : [`${id}, ${axis + 1}, ${share[i] * force[axis]}`])),
  );
}

/** The results file: blocks that begin with the field's name, one line of twelve-character numbers a node. */
function readStates(text, count) {
  const states = [];
  let field = null;
  for (const line of text.split('\n')) {
    if (line.startsWith(' -4')) {
      field = line.slice(5, 13).trim();
      if (field === 'DISP') states.push({ move: new Array(count), stress: new Array(count) });
    } else if (line.startsWith(' -3')) field = null;
    else if (line.startsWith(' -1') && (field === 'DISP' || field === 'STRESS')) {
      const values = [];
      for (let at = 13; at + 12 <= line.length; at += 12) values.push(Number(line.slice(at, at + 12)));
      if (values.some(Number.isNaN)) throw new Error(`not a number in the results: ${line}`);
      states.at(-1)[field === 'DISP' ? 'move' : 'stress'][Number(line.slice(3, 13)) - 1] = values;
    }
  }
  return states;
}

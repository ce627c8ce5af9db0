/**
 * Leaves as the mount draws them against solid elements: CalculiX on a gmsh mesh of 20-node bricks of the drawn section (post, arm and
 * fillets included), geometric nonlinearity, half of the width with mid-width symmetry, 8–15 k nodes, a dead force at the screw. Computed
 * for this project by `tests/solid-elements`, whose recipe it is; by fillets, lengths, widths, thicknesses and ν across and a little beyond
 * the range of the fits. The end corrections' constants were fitted to 72 earlier runs; that one plate length serves all layouts and one
 * allowance the lying ones was chosen after looking at these 29. The stress factors were fitted to about 20 of these themselves (17 in the
 * fit as computed, rounded by hand). So this holds code to solids; it is no blind test of the fits.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { correctionOf, type LeafBody, leafBending, peakFactorsOf } from '../../src/layout/leaf-figures.js';
import { leafPath } from '../../src/layout/leaf-shape.js';
import { plastics } from '../../src/materials/index.js';
import type { Plastic } from '../../src/materials/plastic.js';
import { type LeafState, solveLeafPath } from '../../src/mechanics/nonlinear/leaf-path.js';
import type { Point } from '../../src/mechanics/path.js';
import { deg, type Rad } from '../../src/units.js';

interface Run {
  readonly leaf: LeafBody;
  readonly modulus: number;
  readonly poisson: number;
  readonly force: number;
  /** Of the force, from the leaf's root [mm]. */
  readonly at: Point;
  /** Turn of the arm [°]; bending stress in the middle of the first leg, mean over the width; largest stress at root and turn [MPa]. */
  readonly solid: {
    readonly angleDeg: number;
    readonly middle: number;
    readonly root: number;
    readonly turn?: number;
  };
}

const runs = JSON.parse(readFileSync(new URL('drawn-leaves.json', import.meta.url), 'utf8')) as readonly Run[];
const plasticOf = ({ modulus, poisson }: Run): Plastic => ({
  ...plastics.pla,
  modulus: { value: modulus, source: 'test' },
  poisson: { value: poisson, source: 'test' },
});

test('every layout is among them', () => {
  expect(new Set(runs.map(({ leaf }) => `${leaf.layout} ${leaf.legs}`))).toEqual(
    new Set(['in-line 1', 'upright 1', 'folded 2', 'folded 3']),
  );
});

describe.for(runs.map((run) => ({ row: nameOf(run), run })))('$row', ({ run }) => {
  const { leaf, force, at, solid } = run;
  const plastic = plasticOf(run);
  const beam = {
    path: leafPath(leaf),
    thickness: leaf.thickness,
    width: leaf.width,
    modulus: run.modulus,
    poisson: run.poisson,
  };
  const solve = (patch: object, peaks = { root: 1, turns: [] as readonly number[] }): LeafState =>
    solveLeafPath({
      beam: { ...beam, ...patch },
      load: { at, force: [0, force] },
      peaks,
      stations: true,
      steps: [{}],
    })[0]!;
  const corrected = { correction: correctionOf(leaf, plastic) };
  const peaks = peakFactorsOf(leaf, plastic);
  const state = solve(corrected);

  // The fit claims .5 % rms; the worst of these is off by .8 %.
  test('angle within 1 %', () => expect(ratio(Math.abs(deg(state.flex as Rad)), solid.angleDeg)).toBeLessThan(0.01));

  // Small displacement, shear left out: at most 1 % off at these angles.
  test('angle by the closed forms, which the search goes by, within 2 %', () =>
    expect(
      ratio(deg(((force * leaf.lever) / leafBending(leaf, plastic).stiffness) as Rad), solid.angleDeg),
    ).toBeLessThan(0.02));

  test('stress in the middle of the first leg within 2 %', () => {
    const { left, right } = stressAt(state, leaf.length / 2);
    expect(ratio(Math.abs(left - right) / 2, solid.middle)).toBeLessThan(0.02);
  });

  test('the larger of the peaks at roots and turns within 5 %', () => {
    const most = Math.max(solid.root, solid.turn ?? 0);
    expect(ratio(solve(corrected, peaks).peakStress, most)).toBeLessThan(0.05);
  });

  // They leave out that the force wanders off its arm as the arm turns: an upright leaf's root is bent up to 3 % more than evenly.
  test('by the closed forms within 6 %', () => {
    const { stress, stiffness } = leafBending(leaf, plastic);
    expect(ratio((stress * force * leaf.lever) / stiffness, Math.max(solid.root, solid.turn ?? 0))).toBeLessThan(0.06);
  });
});

test('beam theory alone is up to a sixth and more off', () => {
  const misses = runs.map((run) => {
    const { leaf, force, at, solid, modulus, poisson } = run;
    const { thickness, width } = leaf;
    const [bare] = solveLeafPath({
      beam: { path: leafPath(leaf), thickness, width, modulus, poisson },
      load: { at, force: [0, force] },
      steps: [{}],
    });
    return ratio(Math.abs(deg(bare!.flex as Rad)), solid.angleDeg);
  });
  expect(Math.max(...misses)).toBeGreaterThan(1 / 6);
});

const ratio = (have: number, want: number) => Math.abs(have / want - 1);

function nameOf({ leaf, poisson }: Run): string {
  const { layout, legs, length, thickness, width, fillet } = leaf;
  return `${layout}, ${legs} × ${length} × ${thickness} × ${width}, r ${fillet}, ν ${poisson}`;
}

/** Surface stress after the length s, linear from station to station. */
function stressAt({ stations = [] }: LeafState, s: number) {
  const after = stations.findIndex((station) => station.s > s);
  const [a, b] = [stations[after - 1]!, stations[after]!];
  const share = (s - a.s) / (b.s - a.s);
  return { left: a.left + share * (b.left - a.left), right: a.right + share * (b.right - a.right) };
}

import { describe, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { leafAtFlex } from '../../src/layout/leaf-shape.js';
import { findLeaf, leafFigures, solveLeaf } from '../../src/layout/leaf-solve.js';
import type { LeafDemands, LeafDesign } from '../../src/layout/types.js';
import { plastics as registry } from '../../src/materials/index.js';
import type { Plastic } from '../../src/materials/plastic.js';
import { deg, type Rad, rad } from '../../src/units.js';

const room: LeafDemands = {
  tilt: rad(3),
  shockG: 2,
  movingMass: 8e-6,
  massLever: 9,
  width: 11,
  screwAt: 27,
  post: 6.5,
  lengthMost: 12,
  heightMost: 9,
  legGapLeast: 2.6,
  lineWidth: 0.45,
  layer: 0.2,
  gapTolerance: 0.2,
  layout: undefined,
  legs: undefined,
  length: undefined,
  thickness: undefined,
};
const rooms: readonly { readonly name: string; readonly demands: LeafDemands }[] = [
  { name: 'as shipped', demands: room },
  { name: 'narrow', demands: { ...room, width: 9.6, screwAt: 26, post: 5, heightMost: 8 } },
  { name: 'wide', demands: { ...room, width: 12, screwAt: 28, post: 5, heightMost: 8 } },
  { name: 'short', demands: { ...room, lengthMost: 9 } },
  { name: 'fine nozzle', demands: { ...room, lineWidth: 0.28, layer: 0.12, gapTolerance: 0.15 } },
];
const plastics = (['pla', 'petg', 'asa', 'pa12'] as const).map((name) => ({
  name,
  plastic: registry[name] as Plastic,
}));
const cases = rooms.flatMap(({ name, demands }) =>
  plastics.map(({ name: plasticName, plastic }) => ({ row: `${name}, ${plasticName}`, demands, plastic })),
);

/** Least distance between faces of neighbouring legs, on the bent centreline. */
function leastGap(design: LeafDesign, flex: Rad): number {
  const { points } = leafAtFlex(design, flex);
  const turn = (Math.PI * design.legPitch) / 2;
  let s = 0;
  const legs: [number, number][][] = Array.from({ length: design.legs }, () => []);
  points.forEach(([u, w], i) => {
    if (i > 0) s += Math.hypot(u - points[i - 1]![0], w - points[i - 1]![1]);
    const leg = Math.floor(s / (design.length + turn));
    if (s - leg * (design.length + turn) <= design.length + 1e-6) legs[leg]?.push([u, w]);
  });
  let gap = Infinity;
  for (let k = 1; k < legs.length; k++)
    for (const [u, w] of legs[k]!) for (const [x, y] of legs[k - 1]!) gap = Math.min(gap, Math.hypot(u - x, w - y));
  return gap - design.thickness;
}

// The rules a design must keep are recomputed here from beam theory and its own figures, not read from the solver.
describe.for(cases)('$row', ({ demands, plastic }) => {
  const { design: d } = solveLeaf(demands, { plastic, preset: 'test' });
  const figures = leafFigures(d, demands, plastic);
  const lowest = d.preload + 2 * d.tilt;

  test('stays in its room and keeps its proportions', () => {
    expect(d.length).toBeLessThanOrEqual(demands.lengthMost);
    expect((d.legs - 1) * d.legPitch + d.thickness).toBeLessThanOrEqual(demands.heightMost + 1e-9);
    expect(d.fillet).toBeGreaterThanOrEqual(0.5 * d.thickness);
    expect(demands.post).toBeGreaterThanOrEqual(5 * d.thickness - 1e-9);
    expect(Math.abs(d.length / 0.5 - Math.round(d.length / 0.5))).toBeLessThan(1e-9);
    // Whole print lines by hand: w + (n − 1)(w − h (1 − π/4)).
    const lines = 1 + (d.thickness - demands.lineWidth) / (demands.lineWidth - demands.layer * (1 - Math.PI / 4));
    expect(Math.abs(lines - Math.round(lines))).toBeLessThan(0.02);
    expect(Math.round(lines)).toBeGreaterThanOrEqual(2);
  });

  test('legs don’t meet when the stop touches at its latest', () => {
    if (d.legs === 1) return expect(d.legPitch).toBe(0);
    expect(d.legPitch).toBeGreaterThanOrEqual(d.thickness + 2 * d.fillet - 1e-9);
    expect(leastGap(d, (lowest + d.stopLatest) as Rad)).toBeGreaterThan(0.3);
  });

  test('strain, stress and stop', () => {
    expect(figures.strain).toBeLessThanOrEqual(plastic.sustainedStrain.value);
    // t θ / 2L alone is the least a leaf of that length can be strained.
    const path = d.legs * d.length + ((d.legs - 1) * Math.PI * d.legPitch) / 2;
    expect(figures.strain).toBeGreaterThan((0.95 * d.thickness * lowest) / (2 * path));
    expect(figures.stopStrain).toBeLessThanOrEqual(plastic.shortTermStrain.value);
    expect(figures.stopStress).toBeLessThanOrEqual(plastic.strength.value / 1.5);
    expect(d.stopMargin * d.chinLever).toBeGreaterThanOrEqual(demands.gapTolerance - 1e-9);
    expect((d.stopLatest - d.stopMargin) * d.chinLever).toBeGreaterThanOrEqual(demands.gapTolerance - 1e-9);
  });

  test('a year on, and .05 mm thinner, the screw still pushes under the shock', () => {
    const left = 1 / (1 + plastic.creepA.value * 8760 ** plastic.creepN.value);
    const thin = (1 - 0.05 / d.thickness) ** 3;
    // 8 g at 9 mm under 2 g: 2 · 8e-6 · 9806.65 · 9 = 1.41216 N·mm.
    expect(figures.stiffness * d.preload * left * thin).toBeGreaterThanOrEqual(1.41216 - 1e-5);
    expect(d.bias).toBeCloseTo(d.preload + d.tilt, 12);
    expect(deg(d.tilt)).toBeCloseTo(3, 12);
  });

  test('levers reach from the leaf’s centre to screw and chin: together the mount but for half the post', () => {
    expect(d.lever + d.chinLever).toBeCloseTo(demands.screwAt - demands.post / 2, 9);
  });
});

describe('choice', () => {
  const petg = { plastic: registry.petg, preset: 'test' };

  test('says why for what it chose, and nothing for what was pinned', () => {
    expect(solveLeaf(room, petg).solved.map(({ path }) => path)).toEqual([
      'leaf.layout',
      'leaf.legs',
      'leaf.length',
      'leaf.thickness',
    ]);
    const pinned = solveLeaf({ ...room, legs: 2, thickness: 0.86 }, petg);
    expect(pinned.design).toMatchObject({ legs: 2, thickness: 0.86, layout: 'folded' });
    expect(pinned.solved.map(({ path }) => path)).toEqual(['leaf.layout', 'leaf.length']);
    for (const { why } of pinned.solved) expect(why).toMatch(/\S/);
  });

  test('straight where straight will do, folded where it won’t', () => {
    expect(solveLeaf({ ...room, tilt: rad(2.5) }, petg).design.layout).toBe('in-line');
    // At 7° and a near 14 no straight leaf up to 14 long holds PLA at .5 % (by hand: .86 · .1222/28 · 1.4 = .52 %).
    expect(solveLeaf({ ...room, lengthMost: 14 }, { ...petg, plastic: registry.pla }).design.layout).toBe('folded');
  });

  // ASA holds .5 % for years. Of two leaves that hold as drawn the one that holds .05 mm thicker too is taken, whatever it costs in zone.
  test('prefers a leaf that holds printed .05 mm thicker, and says so', () => {
    const options = { plastic: registry.asa, preset: 'test' };
    const { design, sturdy, solved } = solveLeaf(room, options);
    expect(sturdy).toBe(true);
    const thick = leafFigures({ ...design, thickness: design.thickness + 0.05 }, room, registry.asa);
    expect(thick.strain).toBeLessThanOrEqual(registry.asa.sustainedStrain.value);
    expect(solved.find(({ path }) => path === 'leaf.thickness')!.why).toContain('thicker or thinner too');
  });

  test('takes one that does not where there is no other, and says what it would bear', () => {
    const options = { plastic: registry.asa, preset: 'test' };
    const { design } = solveLeaf(room, options);
    // As strained as it may be: by trial down to a figure at which the pinned leaf just holds.
    const { strain } = leafFigures(design, room, registry.asa);
    const just = { ...registry.asa, sustainedStrain: { value: strain * 1.001, source: 'test' } };
    const { layout, legs, length } = design;
    const pinned = {
      ...room,
      layout,
      legs,
      length,
      thickness: undefined,
      heightMost: (legs - 1) * design.legPitch + design.thickness,
    };
    const fragile = solveLeaf(pinned, { ...options, plastic: just });
    expect(fragile.sturdy).toBe(false);
    const thick = leafFigures({ ...fragile.design, thickness: fragile.design.thickness + 0.05 }, room, just);
    expect(thick.strain).toBeGreaterThan(strain * 1.001);
    expect(fragile.solved.find(({ path }) => path === 'leaf.thickness')!.why).toMatch(
      /printed 0.05 mm thicker it is strained for years by 0\.\d+ %/,
    );
  });

  test('a larger shock asks for more preload, never less', () => {
    const preloads = [0.5, 1, 2, 3].map(
      (shockG) => solveLeaf({ ...room, shockG, legs: 2, length: 6, thickness: 0.86 }, petg).design.preload,
    );
    expect([...preloads].sort((a, b) => a - b)).toEqual(preloads);
    expect(preloads[3]!).toBeGreaterThan(preloads[0]!);
  });

  test('the screw may stand where each leaf puts it', () => {
    const screwAt = ({ length, legs, legPitch }: { length: number; legs: number; legPitch: number }) =>
      15 + length + (legs > 1 ? legPitch / 2 : 0);
    const { design } = solveLeaf(room, { ...petg, screwAt });
    expect(design.lever + design.chinLever).toBeCloseTo(screwAt(design) - room.post / 2, 9);
  });
});

describe('conflicts', () => {
  const mistakes = (demands: LeafDemands, plastic: Plastic = registry.petg) => {
    try {
      solveLeaf(demands, { plastic, preset: 'bench' });
    } catch (error) {
      if (error instanceof PresetError) return error.mistakes;
      throw error;
    }
    return [];
  };

  test('a pinned thickness that no length saves: says which would do', () => {
    const found = mistakes({ ...room, thickness: 2.4, post: 12 });
    expect(found.map(({ path }) => path)).toContain('leaf.thickness');
    const hint = found.find(({ path }) => path === 'leaf.thickness')!.hint!;
    const would = Number(/; ([\d.]+) would do/.exec(hint)![1]);
    expect(findLeaf({ ...room, post: 12, thickness: would }, { plastic: registry.petg })).toBeDefined();
  });

  test('too much tilt for one leg: the tilt that it names works, a little more does not', () => {
    const found = mistakes({ ...room, legs: 1 }, registry.pla);
    const hint = found.find(({ path }) => path === 'aim.tilt')!.hint!;
    const most = Number(/at most ([\d.]+)/.exec(hint)![1]);
    const at = (tiltDeg: number) => findLeaf({ ...room, tilt: rad(tiltDeg), legs: 1 }, { plastic: registry.pla });
    expect(at(most)).toBeDefined();
    expect(at(most + 0.11)).toBeUndefined();
    expect(found.map(({ path }) => path)).toContain('leaf.legs');
  });

  test('no room at all: says what must grow', () => {
    const found = mistakes({ ...room, lengthMost: 3 });
    expect(found.find(({ path }) => path === 'leaf')!.hint).toMatch(/mm longer/);
  });

  test('contradicting pins', () => {
    expect(mistakes({ ...room, layout: 'in-line', legs: 3 }).map(({ path }) => path)).toEqual(
      expect.arrayContaining(['leaf.layout']),
    );
  });

  test('a notch can’t do ±3°', () => {
    expect(findLeaf({ ...room, layout: 'notch' }, { plastic: registry.petg })).toBeUndefined();
    expect(mistakes({ ...room, layout: 'notch' })[0]!.path).toBe('leaf.layout');
  });

  test('hopeless: one mistake all the same, and quickly said', () => {
    const found = mistakes({ ...room, lengthMost: 1, heightMost: 0.1, post: 0.3 });
    expect(found).toHaveLength(1);
    expect(found[0]!.hint).toMatch(/no single demand/);
    expect(found[0]!.hint).toContain('a room of 1 × 0.1 mm');
    // Where one can be drawn, what it misses and by how much.
    expect(mistakes({ ...room, lengthMost: 9, heightMost: 0.1, post: 0.3 })[0]!.hint).toMatch(
      /height [\d.]+ against 0\.1 mm/,
    );
  });
});

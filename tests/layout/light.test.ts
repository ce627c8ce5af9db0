/** The light's budget of real layouts, against lengths taken from the placed kit and chances counted by drawing. */
import { beforeAll, describe, expect, test } from 'vitest';
import { layOut } from '../../src/layout/lay-out.js';
import { lightBudget } from '../../src/layout/light/budget.js';
import { sampleGrids } from '../../src/layout/light/sample-grids.js';
import { drawsOf } from '../../src/optics/sample.js';
import { apply } from '../../src/solid/matrix.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { deg, rad } from '../../src/units.js';
import { type Drawn, draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';

let shop: Workshop;
let made: Drawn;
beforeAll(async () => {
  shop = await openWorkshop();
  made = draw(shop, shipped('greenhouse-bench'));
});

const across = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((v, i) => v - b[i]!));

describe('ways', () => {
  test('from the barrel’s front to the detector, as placed', () => {
    const { aim } = lightBudget(made.layout);
    for (const [i, name] of ['column-0', 'row-0'].entries()) {
      const beam = made.kit.beams.find((one) => one.name === name)!;
      // The beam ends at the tube's mouth; the detector lies behind the tube.
      const depth = made.layout.spec.receivers.part.apertureDepth.value;
      expect(aim.lines[i]!.distance).toBeCloseTo(across(beam.from, beam.to) + depth, 6);
    }
  });
  test('the exit turns about the axis of tilt: seen from the barrel at its two ends', () => {
    const { exit } = lightBudget(made.layout);
    const barrel = made.kit.placements.find(({ name }) => name === 'column-0-barrel')!;
    const [low, high] = (['lowest', 'highest'] as const).map((pose) => apply(barrel.rides![pose], [0, 0, 0]));
    // Chord over angle: the exit's distance from the axis; a folded leaf's axis wanders a little.
    const radius = across(low!, high!) / (2 * Math.sin(made.layout.mount.leaf.tilt));
    expect(Math.hypot(...exit)).toBeGreaterThan(0.9 * radius);
    expect(Math.hypot(...exit)).toBeLessThan(1.1 * radius);
  });
});

describe('chances', () => {
  test('grids drawn and aligned by true rotations come right as often as the budget says', () => {
    for (const preset of [
      shipped('greenhouse-bench'),
      'grid: { rows: 3, columns: 5, pitch: 40 }\naim: { tilt: 2, mount_error: 0.8 }\n',
    ]) {
      const budget = lightBudget(draw(shop, preset).layout);
      const drawn = sampleGrids(budget, { grids: 8000, seed: 3 });
      for (const { share, error, chance } of [...drawn.lines, drawn.all])
        expect(Math.abs(share - chance)).toBeLessThan(4 * error + 1e-3);
    }
  });
  test('the same seed gives the same shares, and progress ends at one', () => {
    const budget = lightBudget(made.layout);
    const seen: number[] = [];
    const once = sampleGrids(budget, { grids: 1000, seed: 5 }, (share) => seen.push(share));
    expect(once).toEqual(sampleGrids(budget, { grids: 1000, seed: 5 }));
    expect(once).not.toEqual(sampleGrids(budget, { grids: 1000, seed: 6 }));
    expect(seen).toEqual([0.5, 1]);
  });
  test('errors, tilt and slide reach the budget from the preset', () => {
    const { aim } = lightBudget(
      draw(shop, 'grid: { rows: 2, columns: 3, pitch: 24 }\naim: { tilt: 2, mount_error: 0.4 }\n').layout,
    );
    expect(deg(aim.inputs.boresight)).toBeCloseTo(1, 9);
    expect(deg(aim.inputs.mountError)).toBeCloseTo(0.4, 9);
    expect(deg(aim.inputs.tilt)).toBeCloseTo(2, 6);
    expect(aim.inputs.slide).toBe(1.5);
    expect(aim.needed).toBe(5);
    // Half of the centred light on a detector of .5, w about 1.06: between .6 and .8 off.
    expect(aim.inputs.tolerance[0]).toBeGreaterThan(0.6);
    expect(aim.inputs.tolerance[0]).toBeLessThan(0.8);
  });
});

test('what helps most is what the budget lacks', () => {
  const paths = (preset: string) => lightBudget(draw(shop, preset).layout).levers.map(({ path }) => path);
  // Far too little tilt for errors of 1°.
  expect(paths('grid: { rows: 2, columns: 3, pitch: 24 }\naim: { tilt: 1 }\n')[0]).toBe('aim.tilt');
  // True barrels in crooked mounts, which may not lean.
  const tooTrue = paths(
    'grid: { rows: 2, columns: 3, pitch: 24 }\naim: { tilt: 3, mount_error: 1, wedge: 0 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: 0.2 } }\n',
  );
  expect(tooTrue.slice(0, 2)).toEqual(['aim.wedge', 'aim.mount_error']);
});

test('one turn of the screw: pitch over arm, times the way, by hand', () => {
  const { aim } = lightBudget(made.layout);
  const { lever, step, arm } = aim.lines[1];
  // M2.5: .45 a turn (ISO 261).
  expect(step.perTurn).toBeCloseTo((0.45 / arm) * lever, 9);
  expect(step.angle).toBeCloseTo(Math.atan(0.45 / arm), 12);
  expect(rad(1)).toBeGreaterThan(step.angle / 3);
});

describe('the tilt wanted', () => {
  /** Share of drawn channels, their yaw rolled out, that a tilt of ±T levels. */
  const level = (se: number, sm: number, tilt: number) => {
    const draws = drawsOf(2);
    let [fit, all] = [0, 0];
    for (let i = 0; i < 200_000; i += 1) {
      const error = se * Math.hypot(draws.normal(), draws.normal());
      const [mx, my] = [sm * draws.normal(), sm * draws.normal()];
      if (Math.abs(mx) > error) continue;
      const h = Math.sqrt(error ** 2 - mx ** 2);
      all += 1;
      if (Math.min(Math.abs(my + h), Math.abs(my - h)) <= tilt) fit += 1;
    }
    return fit / all;
  };
  test.for([
    [1, 0.5],
    [0.5, 1],
    [1.5, 0.3],
  ] as const)('boresight σ %f°, mounts σ %f°: the least half degree that levels 99 of 100', ([se, sm]) => {
    const { solved } = layOut(
      readPreset(
        `grid: { rows: 1, columns: 2, pitch: 30 }\naim: { mount_error: ${sm}, wedge: 0 }\nprinter: { base: bed-220, warp_per_100: 0.05 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: ${se} } }\n`,
        'tested.yaml',
      ),
    );
    const tilt = solved.find(({ path }) => path === 'aim.tilt')!.value as number;
    expect(tilt % 0.5).toBe(0);
    expect(level(se, sm, tilt)).toBeGreaterThan(0.989);
    expect(level(se, sm, tilt - 0.5)).toBeLessThan(0.991);
  });
});

describe('a lean on purpose', () => {
  const why = (text: string) =>
    layOut(readPreset(`grid: { rows: 2, columns: 3, pitch: 30 }\n${text}`, 'tested.yaml')).solved.find(
      ({ path }) => path === 'aim.wedge',
    )!;
  test('is not needed where barrels are more crooked than mounts', () => {
    expect(why('')).toMatchObject({ value: 0 });
    expect(why('').why).toMatch(/^no lean given/);
  });
  test('is drawn where they are too true: it must make good the mount’s yaw', () => {
    const told = why(
      'aim: { mount_error: 1.2, tilt: 3 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: 0.2 } }\n',
    );
    const [, lean, after, before] = /leaned by ([\d.]+)°.* ([\d.]+) % .* in place of ([\d.]+) %/
      .exec(told.why)!
      .map(Number);
    expect(told.value).toBe(lean);
    expect(lean).toBeGreaterThanOrEqual(1);
    expect(after).toBeGreaterThan(before! + 10);
  });
});

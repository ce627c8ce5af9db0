/** Barrels too true for their mounts: the lean is solved, drawn, checked, and worth it; and kits in which none is drawn. */
import { beforeAll, describe, expect, test } from 'vitest';
import { fits } from '../../src/checks/fits.js';
import { interference } from '../../src/checks/interference.js';
import { stray } from '../../src/checks/stray.js';
import { transformBox } from '../../src/checks/tree.js';
import type { PresetError } from '../../src/errors.js';
import { POSES } from '../../src/kit/types.js';
import { lightBudget } from '../../src/layout/light/budget.js';
import { sampleGrids } from '../../src/layout/light/sample-grids.js';
import { drawSleeve } from '../../src/parts/emitter-sleeve.js';
import { apply, applyDirection, invertRigid, multiply, rotation } from '../../src/solid/matrix.js';
import type { Matrix, Vec3 } from '../../src/solid/mesh.js';
import { rad } from '../../src/units.js';
import { type Drawn, draw, findingsOf, openWorkshop, sceneOf, type Workshop } from './make.js';

let shop: Workshop;
let leaned: Drawn;
let plain: Drawn;

const kitOf = (aim: string, more = '') => `grid: { rows: 2, columns: 3, pitch: 30 }
emitters: { part: { base: barrel-6x12, boresight_sigma_deg: 0.2 } }
aim: { mount_error: 0.8${aim} }
${more}`;

beforeAll(async () => {
  shop = await openWorkshop();
  leaned = draw(shop, kitOf(''));
  plain = draw(shop, kitOf(', wedge: 0'));
}, 60_000);

const solvedOf = ({ layout }: Drawn, path: string) => layout.solved.find((one) => one.path === path);
const matrixOf = ({ kit }: Drawn, name: string): Matrix => kit.placements.find((one) => one.name === name)!.matrix;
const along = (m: Matrix): Vec3 => applyDirection(m, [0, 0, 1]);
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

describe('barrels of σ 0.2° in mounts of σ 0.8°', () => {
  test('a lean is solved and stands in the spec, with its reason', () => {
    const told = solvedOf(leaned, 'aim.wedge')!;
    expect(told.value).toBe(leaned.layout.spec.aim.wedgeDeg);
    expect(told.value).toBeGreaterThanOrEqual(1);
    expect(told.why).toMatch(/too true.*sleeve bored askew.* in place of /);
    expect(solvedOf(leaned, 'emitters.sleeve')!.why).toContain(`bored askew by ${told.value}°`);
  });

  test('no check finds an error', () => {
    expect(findingsOf(shop, kitOf('')).filter(({ severity }) => severity === 'error')).toEqual([]);
  }, 60_000);

  test('channels come right as Rice’s law says, and grids drawn at random agree', () => {
    const [before, after] = [plain, leaned].map(({ layout }) => lightBudget(layout)) as [never, never];
    const seen = { grids: 20_000, seed: 5 };
    const [without, withLean] = [sampleGrids(before, seen), sampleGrids(after, seen)];
    for (const { lines, all } of [without, withLean])
      for (const { share, chance, error } of [...lines, all]) expect(Math.abs(share - chance)).toBeLessThan(4 * error);
    for (const i of [0, 1]) {
      expect(withLean.lines[i]!.chance).toBeGreaterThan(without.lines[i]!.chance + 0.05);
      expect(withLean.lines[i]!.share).toBeGreaterThan(without.lines[i]!.share + 0.05);
    }
    expect(withLean.all.share).toBeGreaterThan(without.all.share + 0.3);
  }, 60_000);

  test('by hand: a barrel truer than can be leaned by 1.6° undoes two of its mounts’ σ, 95.4 %, and slide and spot add to it', () => {
    // |yaw| ≤ 1.6° = 2 σ: 0.9545 (table of the normal distribution); the tilt reaches everything.
    const true1 = lightBudget(
      draw(shop, kitOf(', wedge: 1.6, tilt: 4').replace('sigma_deg: 0.2', 'sigma_deg: 0.05')).layout,
    ).aim;
    const [line] = true1.lines;
    const { slide } = true1.inputs;
    // What the slide and the spot's radius make good, as an angle about the axis of tilt: so much more of the yaw.
    const more = (slide + line.tolerance) / line.lever;
    const z = (rad(1.6) * (line.distance / line.lever) + more) / rad(0.8);
    // Two-sided normal table, z = 3.0: 0.99730; 3.3: 0.99903.
    expect(z).toBeGreaterThan(3);
    expect(z).toBeLessThan(3.3);
    expect(line.chance).toBeGreaterThan(0.9965);
    expect(line.chance).toBeLessThan(0.9992);
  }, 60_000);

  test('aligned, every barrel stands level along its beam, its sleeve tilted down by the lean', () => {
    const lean = rad(leaned.layout.spec.aim.wedgeDeg!);
    for (const { name, line, from, to } of leaned.kit.beams) {
      const way: Vec3 = line === 'column' ? [0, Math.sign(to[1] - from[1]), 0] : [Math.sign(to[0] - from[0]), 0, 0];
      const barrel = matrixOf(leaned, `${name}-barrel`);
      expect(dot(along(barrel), way)).toBeCloseTo(1, 9);
      const sleeve = along(matrixOf(leaned, `${name}-collar`));
      expect(dot(sleeve, way)).toBeCloseTo(Math.cos(lean), 9);
      expect(sleeve[2]).toBeCloseTo(-Math.sin(lean), 9);
      // The beam leaves from the emitter's front, which lies on the sleeve's axis.
      expect(apply(barrel, [0, 0, 0])).toEqual(from.map((v) => expect.closeTo(v, 6)));
      const inSleeve = apply(invertRigid(matrixOf(leaned, `${name}-collar`)), from);
      expect(inSleeve[0]).toBeCloseTo(0, 6);
      expect(inSleeve[1]).toBeCloseTo(0, 6);
      // About ten millimetres ahead of the axis of tilt: 10 sin 1.5° = 0.26 lower than a level arm's.
      expect(leaned.layout.spec.beam.height - from[2]).toBeGreaterThan(0.1);
      expect(leaned.layout.spec.beam.height - from[2]).toBeLessThan(0.5);
    }
  });

  test('rolled all round, sleeve, barrel and the straight part of its wires run into nothing, at any tilt', () => {
    const scene = sceneOf(shop, leaned.kit);
    const stem = 'row-0';
    const [sleeve, barrel] = ['collar', 'barrel'].map((what) => scene.byName.get(`${stem}-${what}`)!) as [never, never];
    const own = new Set([`${stem}-collar`, `${stem}-barrel`, `${stem}-wires`]);
    const others = scene.bodies.filter(({ name }) => !own.has(name) && /^row-0|left/.test(name));
    expect(others.length).toBeGreaterThan(8);
    const { body } = leaned.layout.mount.sleeve!;
    for (const pose of POSES) {
      const about = (sleeve as (typeof scene.bodies)[number]).at[pose];
      for (let turn = 0; turn < 360; turn += 36) {
        const roll = multiply(about.matrix, rotation('z', rad(turn)), invertRigid(about.matrix));
        const rolled = [sleeve, barrel].map((one: (typeof scene.bodies)[number]) => {
          const matrix = multiply(roll, one.at[pose].matrix);
          return { ...one.at[pose], matrix, box: transformBox(one.at[pose].shape.box, matrix) };
        });
        const wires = scene.bar(
          apply(rolled[1]!.matrix, [0, 0, -body.length]),
          applyDirection(rolled[1]!.matrix, [0, 0, -1]),
          {
            diameter: leaned.layout.mount.wire.diameter,
            length: 6,
          },
        );
        for (const other of others)
          for (const moved of [...rolled, wires])
            expect(scene.overlap(other.at[pose], moved), `${other.name} ${pose} ${turn}°`).toBeLessThanOrEqual(0.01);
      }
    }
  }, 60_000);

  test('the barrel lies within the sleeve’s own outside: what rolls is round', () => {
    const { positions } = shop.kernel.mesh(leaned.kit.parts.get(leaned.layout.spec.emitters.name)!.solid);
    const into = multiply(invertRigid(matrixOf(leaned, 'row-0-collar')), matrixOf(leaned, 'row-0-barrel'));
    const { barrel } = leaned.layout.mount;
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = apply(into, [positions[i]!, positions[i + 1]!, positions[i + 2]!]);
      expect(Math.hypot(x, y)).toBeLessThan(barrel.radius - 1);
      expect(z).toBeGreaterThan(-1e-6);
      expect(z).toBeLessThan(barrel.length);
    }
  });

  test('the step at the bench says where the mark goes', () => {
    const step = leaned.kit.assembly.find(({ title }) => /^Push each sleeve/.test(title))!;
    expect(step.title).toMatch(/flat between two of its notches up.*by 1\.5°/);
    expect(plain.kit.assembly.some(({ title }) => /flat between/.test(title))).toBe(false);
  });
});

describe('what the checks see', () => {
  const checked = (drawn: Drawn) => ({
    kit: drawn.kit,
    spec: drawn.layout.spec,
    kernel: shop.kernel,
    scene: sceneOf(shop, drawn.kit),
  });
  const straightened = (): Drawn => ({
    ...leaned,
    kit: {
      ...leaned.kit,
      placements: leaned.kit.placements.map((one) => {
        if (one.name !== 'row-0-barrel') return one;
        const lean = rotation('y', -rad(leaned.layout.spec.aim.wedgeDeg!));
        return { ...one, matrix: multiply(one.matrix, lean) };
      }),
    },
  });
  test('a barrel pushed straight into a bore that leans overlaps it', () => {
    expect(interference.run(checked(leaned))).toEqual([]);
    const found = interference.run(checked(straightened()));
    expect(found.map(({ code, subject }) => [code, subject])).toContainEqual([
      'interference/overlap',
      'row-0-barrel / row-0-collar',
    ]);
  });
  test('a leaning bore a tenth too wide is no press fit', () => {
    expect(fits.run(checked(leaned))).toEqual([]);
    const { mount } = leaned.layout;
    const { bore, rearBore } = mount.sleeve!;
    const part = leaned.kit.parts.get('emitter-sleeve')!;
    const solid = drawSleeve(shop.kernel, {
      ...mount,
      sleeve: { ...mount.sleeve!, bore: bore + 0.1, rearBore: rearBore + 0.1 },
    });
    const parts = new Map([...leaned.kit.parts, [part.id, { ...part, solid }]]);
    const found = fits.run(checked({ ...leaned, kit: { ...leaned.kit, parts } }));
    expect(found.map(({ code, subject }) => [code, subject])).toContainEqual([
      'fit/not-as-drawn',
      'row-0-barrel / row-0-collar',
    ]);
    expect(found).toHaveLength(leaned.kit.beams.length);
  });
  test('hoods made for straight barrels do not stop beams that lean by 4° besides', () => {
    const light = lightBudget(plain.layout);
    const ask = (wedge: number) =>
      stray.run({
        ...checked(plain),
        light: { ...light, aim: { ...light.aim, inputs: { ...light.aim.inputs, wedge } } },
      });
    expect(ask(0)).toEqual([]);
    expect(new Set(ask(rad(4)).map(({ code }) => code))).toEqual(new Set(['eye-safety/stray-before']));
    const own = draw(shop, kitOf(', wedge: 4'));
    expect(stray.run({ ...checked(own), light: lightBudget(own.layout) })).toEqual([]);
    // 4° more over the 123 mm and more to the hood: 123 tan 4° = 8.6 higher.
    const heights = [plain, own].map(({ layout }) => Math.max(...layout.hood.panels.map(({ height }) => height)));
    expect(heights[1]! - heights[0]!).toBeGreaterThan(8.6);
  }, 60_000);
  test('a lean that the tilt can’t undo is refused with the figure that would do', () => {
    let refused: unknown;
    try {
      draw(shop, kitOf(', wedge: 2.5, tilt: 2'));
    } catch (error) {
      refused = error;
    }
    expect((refused as PresetError).mistakes).toMatchObject([
      { code: 'preset/lean-beyond-tilt', path: 'aim.wedge', hint: expect.stringContaining('at most 2°') },
    ]);
    expect(draw(shop, kitOf(', wedge: 2, tilt: 2')).layout.spec.aim.wedgeDeg).toBe(2);
  });
});

describe('none is drawn', () => {
  const wheels = ({ kit }: Drawn) => [...kit.parts.keys()].filter((id) => /sleeve|collar/.test(id));
  test('where barrels are as crooked as their mounts', () => {
    const usual = draw(shop, 'grid: { rows: 2, columns: 3, pitch: 30 }\n');
    expect(solvedOf(usual, 'aim.wedge')).toMatchObject({ value: 0, why: expect.stringMatching(/^no lean given/) });
    expect(wheels(usual)).toEqual(['roll-collar']);
  });
  test('where the preset forbids it; what it would be worth is told', () => {
    expect(solvedOf(plain, 'aim.wedge')).toBeUndefined();
    expect(wheels(plain)).toEqual(['roll-collar']);
    const { levers, aim } = lightBudget(plain.layout);
    const lever = levers.find(({ path }) => path === 'aim.wedge')!;
    expect(lever.change).toMatch(/leaned by [\d.]+° on purpose/);
    expect(lever.all).toBeGreaterThan(aim.all + 0.3);
    expect(lightBudget(leaned.layout).levers.map(({ path }) => path)).not.toContain('aim.wedge');
  });
  test('where the sleeves have no room at the pitch', () => {
    const tight = draw(shop, kitOf('').replace('pitch: 30', 'pitch: 13.2'));
    expect(solvedOf(tight, 'aim.wedge')).toMatchObject({
      value: 0,
      why: expect.stringMatching(/^none is drawn, though .* no room for mounts and sockets side by side$/),
    });
    expect(wheels(tight)).toEqual(['roll-collar']);
  });
  test('as far as a tilt given in the preset reaches, no further', () => {
    expect(draw(shop, kitOf(', tilt: 1')).layout.spec.aim.wedgeDeg).toBe(1);
  });
});

/** Beams that are not aimed yet, on a real kit: they end in something opaque, and the check sees when they don't. */
import { beforeAll, describe, expect, test } from 'vitest';
import { makeScene } from '../../src/checks/scene.js';
import { stray } from '../../src/checks/stray.js';
import type { Kit } from '../../src/kit/types.js';
import { lightBudget } from '../../src/layout/light/budget.js';
import { strayError } from '../../src/layout/light/stray.js';
import { multiply, translation } from '../../src/solid/matrix.js';
import type { Vec3 } from '../../src/solid/mesh.js';
import { type Drawn, draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';
import { random } from '../optics/random.js';

let shop: Workshop;
const drawn = new Map<string, Drawn>();
beforeAll(async () => {
  shop = await openWorkshop();
  for (const name of ['greenhouse-bench', 'foyer-row']) drawn.set(name, draw(shop, shipped(name)));
}, 60_000);

function ask(name: string, change: (kit: Kit) => Kit = (kit) => kit) {
  const { layout, kit } = drawn.get(name)!;
  const changed = change(kit);
  return stray.run({
    kit: changed,
    light: lightBudget(layout),
    spec: layout.spec,
    scene: makeScene(changed, shop.kernel),
  });
}
const lowered =
  (which: RegExp, by: number) =>
  (kit: Kit): Kit => ({
    ...kit,
    placements: kit.placements.map((one) =>
      which.test(one.name) ? { ...one, matrix: multiply(translation([0, 0, -by]), one.matrix) } : one,
    ),
  });

describe.each(['greenhouse-bench', 'foyer-row'])('%s', (name) => {
  test('every beam is stopped, before and after', () => expect(ask(name)).toEqual([]));

  test('rays drawn within the errors, from the barrels’ fronts, all meet something printed', () => {
    const { layout, kit } = drawn.get(name)!;
    const scene = makeScene(kit, shop.kernel);
    const error = strayError(lightBudget(layout).aim.inputs);
    const next = random(8);
    const either = (most: number) => most * (2 * next() - 1);
    for (const beam of kit.beams) {
      const along = beam.line === 'column' ? 1 : 0;
      const sign = beam.to[along]! > beam.from[along]! ? 1 : -1;
      const wall = scene.bodies.filter(
        ({ part, name: body }) => part.kind === 'printed' && !body.startsWith(`${beam.name}-`),
      );
      for (let i = 0; i < 40; i += 1) {
        // Yaw and tilt of the body, then off it by the boresight error in any direction: small enough to add.
        const [off, turn] = [error.boresight * Math.sqrt(next()), 2 * Math.PI * next()];
        const yaw = either(error.yaw) + off * Math.cos(turn);
        const tilt = either(error.tilt[1]) + off * Math.sin(turn);
        const [forth, aside] = [sign * 600, 600 * Math.tan(yaw)];
        const to: Vec3 = [
          beam.from[0] + (along === 0 ? forth : aside),
          beam.from[1] + (along === 0 ? aside : forth),
          beam.from[2] + 600 * Math.tan(tilt),
        ];
        expect(
          wall.some((body) => scene.hits(body.at.level, beam.from, to)),
          `${beam.name}, yaw ${yaw}, tilt ${tilt}`,
        ).toBe(true);
      }
    }
  });
});

describe('what is not stopped is an error', () => {
  test('a hood too low by three millimetres', () => {
    // Two millimetres stand over the highest spot, reckoned to the panel's inner face; its outer one is 2.4 further.
    const found = ask('greenhouse-bench', lowered(/^right-hood/, 3));
    expect(new Set(found.map(({ code }) => code))).toEqual(new Set(['eye-safety/stray-before']));
    expect(found.map(({ subject }) => subject)).toEqual(['row-0', 'row-1', 'row-2', 'row-3']);
    expect(found[0]).toMatchObject({ severity: 'error', limit: 0, unit: 'mm' });
    expect(found[0]!.measured).toBeCloseTo(1, 0);
    expect(ask('greenhouse-bench', lowered(/^right-hood/, 1.5))).toEqual([]);
  });
  test('no hood at all', () => {
    const bare = (kit: Kit): Kit => ({ ...kit, placements: kit.placements.filter(({ name }) => !/-hood-/.test(name)) });
    expect(ask('greenhouse-bench', bare).length).toBeGreaterThanOrEqual(4);
  });
  test('a far side that stands under the beams', () => {
    const found = ask('greenhouse-bench', lowered(/^(?:right|far-right|near-right)-(?:rail|cover|post)/, 40));
    expect(found.map(({ code }) => code)).toContain('eye-safety/stray-after');
  });
});

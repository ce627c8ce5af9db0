import { beforeAll, expect, test } from 'vitest';
import { handling } from '../../src/checks/handling.js';
import type { Kit } from '../../src/kit/types.js';
import { box } from '../../src/solid/shapes.js';
import { type Drawn, draw, openWorkshop, sceneOf, shipped, type Workshop } from '../kit/make.js';

let shop: Workshop;
let sound: Drawn;
beforeAll(async () => {
  shop = await openWorkshop();
  sound = draw(shop, shipped('greenhouse-bench'));
});

const ask = (kit: Kit) =>
  handling.run({ kit, spec: sound.layout.spec, kernel: shop.kernel, scene: sceneOf(shop, kit) });

test('every collar of the greenhouse kit can be turned, upright and leaned half a notch either way', () => {
  const { kit } = sound;
  expect(kit.handling).toHaveLength(10);
  for (const one of kit.handling!) {
    expect(one.stands).toHaveLength(3);
    // Ten notches: half of 36° each side. By hand.
    const [left, , right] = one.stands;
    expect(Math.acos(left!.out[0] * right!.out[0] + left!.out[1] * right!.out[1])).toBeCloseTo((36 * Math.PI) / 180, 9);
  }
  expect(ask(kit)).toEqual([]);
});

test('a cover without its slots is in the way of every collar under it', () => {
  const { kit } = sound;
  const { kernel } = shop;
  const cover = kit.parts.get('cover-far')!;
  const { min, max } = kernel.box(cover.solid);
  const closed = { ...kit, parts: new Map(kit.parts).set('cover-far', { ...cover, solid: box(kernel, min, max) }) };
  const findings = ask(closed);
  expect(new Set(findings.map(({ subject }) => subject))).toEqual(
    new Set([0, 1, 2, 3, 4, 5].map((i) => `column-${i}-collar`)),
  );
  for (const finding of findings) expect(finding).toMatchObject({ code: 'handling/blocked', severity: 'error' });
});

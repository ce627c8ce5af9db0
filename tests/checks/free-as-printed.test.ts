/** Mounts of every layout fall into arm and base when their spring is cut. */
import { beforeAll, expect, test } from 'vitest';
import { freeAsPrinted } from '../../src/checks/free-as-printed.js';
import { makeScene } from '../../src/checks/scene.js';
import { draw, openWorkshop, type Workshop } from '../kit/make.js';

let shop: Workshop;
beforeAll(async () => {
  shop = await openWorkshop();
});

const GRID = 'grid: { rows: 1, columns: 2, pitch: 30 }\n';

test.for([
  ['in-line', 'leaf: { layout: in-line }\naim: { tilt: 2 }\n'],
  ['upright', 'leaf: { layout: upright }\naim: { tilt: 1.5 }\n'],
  ['two legs', 'leaf: { layout: folded, legs: 2 }\n'],
  ['three legs', 'leaf: { layout: folded, legs: 3 }\naim: { tilt: 2 }\n'],
  ['notch', 'leaf: { layout: notch }\naim: { tilt: 0.5 }\nmaterial: pa12\n'],
] as const)('%s', ([, text]) => {
  shop.kernel.scope(() => {
    const { kit, layout } = draw(shop, GRID + text);
    expect(kit.parts.get('tilt-mount')!.springCut).toBeDefined();
    const found = freeAsPrinted.run({
      kit,
      spec: layout.spec,
      kernel: shop.kernel,
      scene: makeScene(kit, shop.kernel),
    });
    expect(found).toEqual([]);
    return { keep: [], value: null };
  });
});

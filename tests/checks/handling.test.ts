import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { handling } from '../../src/checks/handling.js';
import { makeScene } from '../../src/checks/scene.js';
import { drawKit } from '../../src/kit/draw-kit.js';
import type { Kit } from '../../src/kit/types.js';
import { layOut } from '../../src/layout/lay-out.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { box } from '../../src/solid/shapes.js';
import { text } from '../../src/solid/text.js';
import { readPreset } from '../../src/spec/read-preset.js';
import type { Spec } from '../../src/spec/spec.js';

let kernel: MeasuringKernel;
let kit: Kit;
let spec: Spec;
beforeAll(async () => {
  const library = await loadManifold();
  kernel = library.kernel;
  spec = readPreset(readFileSync('presets/greenhouse-bench.yaml', 'utf8'), 'greenhouse-bench.yaml');
  kit = drawKit(layOut(spec), { kernel, lettering: (line, options) => text(library.profiles, line, options) });
});

const ask = (of: Kit) => handling.run({ kit: of, spec, kernel, scene: makeScene(of, kernel) });

test('every collar of the greenhouse kit can be turned, upright and leaned half a notch either way', () => {
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
  const cover = kit.parts.get('cover-far')!;
  const { min, max } = kernel.box(cover.solid);
  const closed = { ...kit, parts: new Map(kit.parts).set('cover-far', { ...cover, solid: box(kernel, min, max) }) };
  const findings = ask(closed);
  expect(new Set(findings.map(({ subject }) => subject))).toEqual(
    new Set([0, 1, 2, 3, 4, 5].map((i) => `column-${i}-collar`)),
  );
  for (const finding of findings) expect(finding).toMatchObject({ code: 'handling/blocked', severity: 'error' });
});

/** How far off its middle a beam has to be stopped. */
import { expect, test } from 'vitest';
import { strayRadius } from '../../src/layout/light/stray.js';
import { spec } from '../checks/sound-figures.js';

const emitting = (figures: Readonly<Record<string, number>>) => ({
  emitters: {
    ...spec.emitters,
    part: {
      ...spec.emitters.part,
      ...Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, { value, source: 'this test' }])),
    },
  },
});

test('a laser’s narrow beam: its 1/e² radius, (2 + .3)/2 at 300 mm', () => {
  expect(strayRadius(emitting({ beamDiameter: 2, divergenceMrad: 1 }), 300)).toBeCloseTo(1.15, 9);
});

test('a wide one: as far as a pupil still gets .39 mW of it (class 1 in the red, IEC 60825-1 as restated)', () => {
  const wide = { beamDiameter: 2, divergenceMrad: 50, powerMw: 5, wavelengthNm: 650 };
  const radius = strayRadius(emitting(wide), 300)!;
  // w = 8.5; drawn light: the share of it in a circle of 3.5 that begins at that radius is .39/5.
  expect(radius).toBeLessThan(8.5);
  let inside = 0;
  const steps = 400;
  for (let i = 0; i < steps; i += 1)
    for (let j = 0; j < steps; j += 1) {
      const [x, y] = [3.5 * (2 * ((i + 0.5) / steps) - 1), 3.5 * (2 * ((j + 0.5) / steps) - 1)];
      if (Math.hypot(x, y) > 3.5) continue;
      inside += Math.exp((-2 * ((radius + 3.5 + x) ** 2 + y ** 2)) / 8.5 ** 2);
    }
  const share = (inside * (7 / steps) ** 2 * 2) / (Math.PI * 8.5 ** 2);
  expect(5 * share).toBeCloseTo(0.39, 2);
});

test('a diode’s cone spreads so thin that no pupil gets class 1 of it', () => {
  expect(
    strayRadius(emitting({ beamDiameter: 5, divergenceMrad: 349, powerMw: 4, wavelengthNm: 640 }), 300),
  ).toBeNull();
});

test('where no class is estimated all of the beam counts', () => {
  expect(strayRadius(emitting({ beamDiameter: 2, divergenceMrad: 50, wavelengthNm: 450 }), 300)).toBeCloseTo(8.5, 9);
});

import { describe, expect, test } from 'vitest';
import { blindDepth, bounceAngle, ledNeighbour, radiiApart } from '../../src/optics/crosstalk.js';
import { diffuseRejection, discViewFactor, viewAngles, vignetting } from '../../src/optics/tube.js';
import { deg, rad } from '../../src/units.js';
import { random } from './random.js';

const tube = { aperture: 3, detector: 1, depth: 12 };

describe('a tube of 3 over a detector of 1, 12 deep', () => {
  test('view angles (WMO’s slope, opening and limit angle, from memory): tan = 1/12, 1.5/12, 2/12', () => {
    const { full, half, cutOff } = viewAngles(tube);
    expect(deg(full)).toBeCloseTo(4.763642, 6);
    expect(deg(half)).toBeCloseTo(7.125016, 6);
    expect(deg(cutOff)).toBeCloseTo(9.462322, 6);
  });
  test('lets through a sixty-fifth of diffuse light', () => {
    expect(diffuseRejection(tube)).toBeCloseTo(65.109, 3);
  });
  test('a detector wider than its aperture is refused', () => {
    expect(() => viewAngles({ ...tube, detector: 4 })).toThrow('wider');
  });
});

describe('view factor of coaxial discs', () => {
  test('Siegel & Howell’s example: r1 .1, r2 .2, a .5 → .1339', () => {
    expect(discViewFactor(0.1, 0.2, 0.5)).toBeCloseTo(0.1339, 4);
  });
  test('reciprocity: A1 F12 = A2 F21; a huge disc takes all', () => {
    expect(0.1 ** 2 * discViewFactor(0.1, 0.2, 0.5)).toBeCloseTo(0.2 ** 2 * discViewFactor(0.2, 0.1, 0.5), 12);
    expect(discViewFactor(0.1, 1e4, 0.5)).toBeCloseTo(1, 6);
  });
  test('rays drawn by Lambert’s law from the first disc meet the second as often', () => {
    const [next, n] = [random(9), 300_000];
    let met = 0;
    for (let i = 0; i < n; i += 1) {
      const [r, a] = [0.1 * Math.sqrt(next()), 2 * Math.PI * next()];
      const [sin, b] = [Math.sqrt(next()), 2 * Math.PI * next()];
      const way = (0.5 * sin) / Math.sqrt(1 - sin * sin);
      if (Math.hypot(r * Math.cos(a) + way * Math.cos(b), r * Math.sin(a) + way * Math.sin(b)) < 0.2) met += 1;
    }
    const want = discViewFactor(0.1, 0.2, 0.5);
    expect(Math.abs(met / n - want)).toBeLessThan(4 * Math.sqrt((want * (1 - want)) / n));
  });
});

test('vignetting of equal discs: two circles half a tenth and half their diameter apart', () => {
  const at = (x: number) => vignetting({ diameter: 3, depth: 12, angle: Math.atan((x * 3) / 12) });
  expect(at(0.1)).toBeCloseTo(0.87288857, 8);
  expect(at(0.5)).toBeCloseTo(0.39100222, 8);
  expect(at(0)).toBe(1);
  expect(at(1.01)).toBe(0);
});

describe('crosstalk', () => {
  test('a laser’s neighbour keeps k beam radii off: exp(−2 k²) = X', () => {
    expect(radiiApart(1e-2)).toBeCloseTo(1.517427, 6);
    expect(radiiApart(1e-4)).toBeCloseTo(2.145966, 6);
    expect(radiiApart(1e-6)).toBeCloseTo(2.628261, 6);
  });
  test('an LED’s neighbour gets nearly all of it: 19 apart, 300 off, half angle 10°', () => {
    expect(ledNeighbour({ halfAngle: rad(10), pitch: 19, distance: 300 })).toBeCloseTo(0.907892, 6);
    expect(ledNeighbour({ halfAngle: rad(10), pitch: 0, distance: 300 })).toBe(1);
  });
  test('only a tube 31.6 deep would be blind to it', () => {
    const depth = blindDepth({ aperture: 3, detector: 1, distance: 300, pitch: 19 });
    expect(depth).toBeCloseTo(31.579, 3);
    // Its cut-off is then the neighbour's angle.
    expect(viewAngles({ ...tube, depth }).cutOff).toBeCloseTo(Math.atan(19 / 300), 12);
  });
  test('mirrored in the deck it comes in under 1.9°, inside the tube’s view', () => {
    expect(deg(bounceAngle(5, 300))).toBeCloseTo(1.909152, 6);
  });
});

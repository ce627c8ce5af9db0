import { describe, expect, test } from 'vitest';
import { leafBending, leafFigures, lineFigures } from '../../src/layout/leaf-figures.js';
import { centreOfRotation, leafLength, leafPath } from '../../src/layout/leaf-shape.js';
import type { LeafDemands, LeafDesign } from '../../src/layout/types.js';
import { plastics as registry } from '../../src/materials/index.js';
import type { Plastic } from '../../src/materials/plastic.js';
import { integrate } from '../../src/mechanics/path.js';
import { deg, type Rad, rad } from '../../src/units.js';

/** Textbook plastic: figures fixed here, so that the registry may change. */
const figure = (value: number) => ({ value, source: 'test' });
const stiff: Plastic = {
  ...registry.pla,
  modulus: figure(3000),
  poisson: figure(0.36),
  strength: figure(50),
  creepA: figure(0.3),
  creepN: figure(0.25),
};

const straight = {
  layout: 'in-line',
  legs: 1,
  length: 10,
  thickness: 1,
  width: 12,
  legPitch: 0,
  fillet: 0.5,
  lever: 14,
} as const;
const two = {
  layout: 'folded',
  legs: 2,
  length: 5.5,
  thickness: 0.86,
  width: 11,
  legPitch: 3.5,
  fillet: 0.9,
  lever: 16.5,
} as const;
const three = { ...two, legs: 3, length: 6, legPitch: 2.5 } as const;

describe('the centreline in closed form is the one that is drawn', () => {
  test.for([
    straight,
    two,
    three,
    { ...two, legs: 5, length: 4.5 },
    { ...straight, layout: 'notch', length: 3.2 } as const,
  ])('$layout, $legs legs', (body) => {
    const { length, centre, spread } = lineFigures(body);
    expect(length).toBeCloseTo(leafLength(body), 9);
    expect(centre).toBeCloseTo(centreOfRotation(body)[0], 9);
    expect(spread).toBeCloseTo(
      integrate(leafPath(body), ([u]) => (u - centre) ** 2),
      6,
    );
  });
});

describe('bending', () => {
  // A nonlinear computation for this project (corrections in; 7°, b 12, a 14, r .5, E 3000, ν .36): K, strain %, peak MPa printed to
  // three, two and three figures. Linear theory leaves out about .7 % of strain at 7°, so 1.5 %; K to its last figure.
  test.for([
    { t: 0.8, l: 10, K: 168, strain: 0.67, peak: 30.1 },
    { t: 1, l: 10, K: 323, strain: 0.82, peak: 38.4 },
    { t: 1, l: 14, K: 227, strain: 0.65, peak: 30 },
    { t: 1.2, l: 10, K: 549, strain: 0.97, peak: 47 },
  ])('straight, t $t, l $l: K $K, $strain %, $peak MPa at 7°', ({ t, l, K, strain, peak }) => {
    const bending = leafBending({ ...straight, thickness: t, length: l }, stiff);
    expect(Math.abs(bending.stiffness - K)).toBeLessThan(0.5);
    expect(Math.abs((100 * bending.strain * rad(7)) / strain - 1)).toBeLessThan(0.015);
    expect(Math.abs((bending.stress * rad(7)) / peak - 1)).toBeLessThan(0.015);
    expect(bending.corrected).toBe(true);
  });

  // CalculiX 2.20, 20-node bricks, geometric nonlinearity: 2.6 N at a = 14 peaks at 34.7 MPa in line and 28.8 upright (r .5). The
  // fitted factors claim +8/−2 %.
  test.for([
    { layout: 'in-line', peak: 34.7 },
    { layout: 'upright', peak: 28.8 },
  ] as const)('$layout against solid elements: $peak MPa under 2.6 N', ({ layout, peak }) => {
    const bending = leafBending({ ...straight, layout }, stiff);
    const ratio = (bending.stress * 2.6 * 14) / bending.stiffness / peak;
    expect(ratio).toBeGreaterThan(0.96);
    expect(ratio).toBeLessThan(1.08);
  });

  // An independent nonlinear integration of the bent path (200 steps a leg, force normal to a pad 3 below the last leg), E 3000:
  // largest strain .5123 % (two legs) and .3264 % (three) at 9°, screw force 1.0151 and .6416 N. Linear theory stays within 1 %.
  test.for([
    { row: 'two legs', body: two, strain: 0.5123, force: 1.0151 },
    { row: 'three legs, without the curved bar’s factor', body: three, strain: 0.3264, force: 0.6416 },
  ])('fold, $row', ({ body, strain, force }) => {
    const { stiffness, strain: most, stress, corrected } = leafBending(body, stiff);
    expect(corrected).toBe(false);
    expect(Math.abs((stiffness * rad(9)) / body.lever / force - 1)).toBeLessThan(0.01);
    if (body.legs === 2) expect(Math.abs((100 * most * rad(9)) / strain - 1)).toBeLessThan(0.01);
    else {
      // The front turn bends most, and its inner face more: R / (t/2) = 2.907, between the handbook's 1.30 at 3 and 1.52 at 2.
      const ratio = (100 * most * rad(9)) / strain;
      expect(ratio).toBeGreaterThan(1.3);
      expect(ratio).toBeLessThan(1.35);
    }
    expect(stress).toBeGreaterThanOrEqual(3000 * most);
  });

  test('three legs: K = E I / (3 l + π p), by hand 3000 · 11 · .636056 / 12 / (18 + 7.85398)', () =>
    expect(leafBending(three, stiff).stiffness).toBeCloseTo(67.657, 2));

  test('a notch at 7° is strained by 3.1 % (Paros & Weisbord by hand)', () =>
    expect(leafBending({ ...straight, layout: 'notch', length: 3 }, stiff).strain * rad(7)).toBeCloseTo(0.03128, 5));
});

describe('figures over the travel', () => {
  const demands: LeafDemands = {
    tilt: rad(2.7),
    shockG: 2.5,
    movingMass: 8e-6,
    massLever: 17,
    width: 12,
    screwAt: 24,
    post: 5.5,
    lengthMost: 12,
    heightMost: 8,
    legGapLeast: 2.6,
    lineWidth: 0.45,
    layer: 0.2,
    gapTolerance: 0.2,
    layout: undefined,
    legs: undefined,
    length: undefined,
    thickness: undefined,
  };
  const design: LeafDesign = {
    ...straight,
    chinLever: 7.75,
    preload: rad(1.6),
    tilt: rad(2.7),
    bias: rad(4.3),
    stopMargin: rad(1.5),
    stopLatest: rad(3),
  };
  const have = leafFigures(design, demands, stiff);

  // By hand from K = 323.0: shock 2.5 · 8e-6 · 9806.65 · 17 = 3.33426 N·mm; left after a year 1 / (1 + .3 · 8760^.25) = .256257.
  test('preload, now and after a year', () => {
    expect(have.preloadMoment.shock).toBeCloseTo(3.33426, 4);
    expect(have.preloadMoment.now).toBeCloseTo(323.0 * rad(1.6), 1);
    expect(have.preloadMoment.afterYear / have.preloadMoment.now).toBeCloseTo(0.256257, 5);
    expect(deg(have.preloadNeeded)).toBeCloseTo(deg((3.33426 / (323.0 * 0.256257)) as Rad), 2);
  });
  test('set and back-off of a leaf held at 7° for a year', () => {
    expect(deg(have.setAfterYear)).toBeCloseTo(7 * (1 - 0.256257), 4);
    expect(deg(have.backOff)).toBeCloseTo(7 * 0.256257 - deg((3.33426 / 323.0) as Rad), 2);
  });
  test('screw force K φ / a at the three poses', () => {
    expect(have.force.highest).toBeCloseTo((323.0 * rad(1.6)) / 14, 2);
    expect(have.force.level).toBeCloseTo((323.0 * rad(4.3)) / 14, 2);
    expect(have.force.lowest).toBeCloseTo((323.0 * rad(7)) / 14, 2);
  });
  test('55 Hz with 8 g at 17 mm on a bar of 24', () => expect(have.frequency).toBeCloseTo(55, 0));
  test('a turn per mm: a / (a² + l²/12), by hand 14 / (196 + 10.1675²/12)', () =>
    expect(have.turnPerAdvance).toBeCloseTo(14 / 204.6148, 5));
  test('stop strain counts the flex at its latest: 10° where the lowest beam is 7°', () =>
    expect(have.stopStrain / have.strain).toBeCloseTo(10 / 7, 9));
  test('safety is strength over peak', () => expect(have.safety * have.peakStress).toBeCloseTo(50, 9));
});

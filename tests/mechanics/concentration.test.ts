import { describe, expect, test } from 'vitest';
import { curvedFactor, midWidthFactor, rootFactor, shoulderFactor } from '../../src/mechanics/concentration.js';

// Young & Budynas, Roark's Formulas, 7th ed., Table 17.1, stepped bar in bending; an independent evaluation of its polynomials.
test.for([
  { D: 6, d: 1, r: 0.25, want: 1.4563 },
  { D: 6, d: 1, r: 0.5, want: 1.2468 },
  { D: 6, d: 1, r: 1, want: 1.1081 },
  { D: 2, d: 1, r: 0.5, want: 1.2454 },
])('shoulder D $D, d $d, r $r: Kt $want', ({ D, d, r, want }) =>
  expect(shoulderFactor({ outer: D, inner: d, fillet: r })).toBeCloseTo(want, 4),
);

test.for([
  [1, 2, 0.5],
  [6, 1, 0.1],
  [6, 5.9, 1],
] as const)('no factor for D %d, d %d, r %d', ([outer, inner, fillet]) =>
  expect(() => shoulderFactor({ outer, inner, fillet })).toThrow(RangeError),
);

describe('mid-width and root', () => {
  test('an even strip without lateral strain bears the same all over its width', () => {
    expect(midWidthFactor(0, 1)).toBe(1);
    expect(midWidthFactor(0, 1, 'beside a leg')).toBe(1);
  });
  test.for([
    { where: 'held', want: 1.09711, from: '(1 + 1.35 · .148897) / 1.0947' },
    { where: 'beside a leg', want: 1.02911, from: '(1 + .85 · .148897) / 1.0947' },
  ] as const)('$where at ν .36, m 1.0947: $want, by hand $from', ({ where, want }) =>
    expect(midWidthFactor(0.36, 1.0947, where)).toBeCloseTo(want, 4),
  );

  // CalculiX, 20-node bricks, l 10, t 1, b 12, r .5, ν .36 between square blocks, not among the runs of the fit: 1.405 times the
  // beam's root stress under a force 19 from the root. The fit claims 3 %.
  test('root factor within 3 % of a solid that it was not fitted to (1.405)', () => {
    const have = rootFactor({ thickness: 1, fillet: 0.5, arm: 19, poisson: 0.36, plate: 1.0947 });
    expect(Math.abs(have / 1.405 - 1)).toBeLessThan(0.03);
  });

  // Roark's stepped bar is plane and 4–6 % low against plane elements.
  test.for([0.5, 1] as const)(
    'without lateral strain, r $0 t, even moment: Roark’s stepped bar of D 6 within 6 %%',
    (r) => {
      const roark = shoulderFactor({ outer: 6, inner: 1, fillet: r });
      const have = rootFactor({ thickness: 1, fillet: r, arm: Infinity, poisson: 0, plate: 1 });
      expect(Math.abs(have / roark - 1)).toBeLessThan(0.06);
    },
  );

  test('refuses a force within the fillet, a fillet of none, ν .6, m .9', () => {
    const root = { thickness: 1, fillet: 0.5, arm: 19, poisson: 0.36, plate: 1.09 };
    expect(() => rootFactor({ ...root, arm: 0.4 })).toThrow('arm');
    expect(() => rootFactor({ ...root, fillet: 0 })).toThrow('fillet');
    expect(() => midWidthFactor(0.6, 1)).toThrow('ν');
    expect(() => midWidthFactor(0.3, 0.9)).toThrow('m must');
  });
});

describe('curved bar, rectangular section', () => {
  // Roark's Table 9.1 and Boresi & Schmidt after Wilson & Quereau, k_i against R over half the depth (from memory). The
  // table is printed to two decimals; at 1.4 it stands 1.3 % above its own formula, so 1.5 %.
  test.for([
    { ratio: 1.2, want: 2.89 },
    { ratio: 1.4, want: 2.13 },
    { ratio: 1.6, want: 1.79 },
    { ratio: 1.8, want: 1.63 },
    { ratio: 2, want: 1.52 },
    { ratio: 3, want: 1.3 },
    { ratio: 4, want: 1.2 },
    { ratio: 6, want: 1.12 },
    { ratio: 8, want: 1.09 },
    { ratio: 10, want: 1.07 },
  ])('R = $ratio half depths: $want', ({ ratio, want }) => {
    const t = 1.26;
    expect(Math.abs(curvedFactor((ratio * t) / 2, t) / want - 1)).toBeLessThan(0.015);
  });
  test('by hand at R = 1.4, half depth 1: e = 1.4 − 2/ln 6 = .283779, k = 2 · .716221 / (6 · .283779 · .4) = 2.10321', () =>
    expect(curvedFactor(1.4, 2)).toBeCloseTo(2.10321, 4));
  test('refuses a bar that fills its own bend', () => expect(() => curvedFactor(0.5, 1.1)).toThrow('radius'));
});

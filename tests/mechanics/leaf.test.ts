import { describe, expect, test } from 'vitest';
import { endAllowance, endCorrection, plateFactor } from '../../src/mechanics/end-correction.js';
import {
  inLineScrewStiffness,
  leafInertia,
  leafStiffness,
  leafStrain,
  uprightScrewStiffness,
} from '../../src/mechanics/leaf.js';
import { printedThickness } from '../../src/mechanics/printed-thickness.js';
import { rad } from '../../src/units.js';

const wide = { length: 10, width: 12, thickness: 1 };
const thick = { length: 13, width: 11, thickness: 1.3 };

// Howell, Compliant Mechanisms (2001), small-length pivot K = EI/l (from memory); at the screw Castigliano's theorem.
describe('leaf as a hinge', () => {
  test.for([
    {
      row: 'I = 1',
      leaf: wide,
      E: 3000,
      a: 14,
      K: 300,
      inLine: 1.4682,
      upright: 1.5306,
      from: 'hand: 3000/(10·204.33)',
    },
    {
      row: 'no ones',
      leaf: thick,
      E: 2600,
      a: 17,
      K: 402.7833,
      inLine: 1.328952,
      upright: 1.393714,
      from: 'hand: 2600·2.0139167/13, /(289 + 14.08333), /289',
    },
  ])('$row: $K N·mm/rad, $inLine and $upright N/mm, $from', ({ leaf, E, a, K, inLine, upright }) => {
    expect(leafStiffness(leaf, E)).toBeCloseTo(K, 4);
    expect(inLineScrewStiffness(leaf, a, E)).toBeCloseTo(inLine, 4);
    expect(uprightScrewStiffness(leaf, a, E)).toBeCloseTo(upright, 4);
  });

  test('I of 11 × 1.3 by hand: 11 · 2.197 / 12', () => expect(leafInertia(thick)).toBeCloseTo(2.0139167, 6));

  test('a stiff extension of no length: a cantilever with end force, 3 E I / L³ (any handbook)', () => {
    // a = l/2 puts the screw at the leaf's own end.
    expect(inLineScrewStiffness(thick, 6.5, 2600)).toBeCloseTo((3 * 2600 * 2.0139166667) / 13 ** 3, 6);
  });

  test.for([
    { row: 'in line, l 10, a 14: 1.357 times the even one', leaf: wide, lever: 14, want: 0.0061087 * 1.3571429 },
    { row: 'upright: t θ / 2l', leaf: wide, lever: Infinity, want: 0.0061087 },
    { row: 'no ones: 1.3 · .122173 / 26 · (1 + 13/34)', leaf: thick, lever: 17, want: 0.0084443 },
  ])('strain at 7°, $row', ({ leaf, lever, want }) => expect(leafStrain(leaf, rad(7), lever)).toBeCloseTo(want, 6));

  test.for([
    [{ ...wide, length: 0 }, 3000, 'length'],
    [{ ...wide, width: Number.NaN }, 3000, 'width'],
    [{ ...wide, thickness: -1 }, 3000, 'thickness'],
    [wide, Infinity, 'modulus'],
  ] as const)('refuses %j, E %d', ([leaf, E, word]) => expect(() => leafStiffness(leaf, E)).toThrow(word));

  test('refuses a screw over the leaf itself', () =>
    expect(() => inLineScrewStiffness(wide, 4, 3000)).toThrow('lever'));
});

describe('corrections', () => {
  test('plate factor: 1 for a strip, 1/(1 − ν²) for a plate (Timoshenko & Woinowsky-Krieger)', () => {
    expect(plateFactor({ length: 9e4, width: 3 }, 0.36)).toBeCloseTo(1, 4);
    expect(plateFactor({ length: 3e-4, width: 8 }, 0.36)).toBeCloseTo(1 / (1 - 0.1296), 4);
  });

  test('plate factor at l 10, b 12, ν .36 by hand: 1 + .148897/(1 + .78 · .73352)', () =>
    expect(plateFactor(wide, 0.36)).toBeCloseTo(1.0947, 4));

  test.for([
    { layout: 'in-line', t: 1, r: 0.5, want: 0.2925, from: '.935 − .6 − .0425' },
    { layout: 'upright', t: 1, r: 0.5, want: 0.1675, from: '.81 − .6 − .0425' },
    { layout: 'in-line', t: 1.2, r: 0.5, want: 0.486583, from: '1.2 (.935 − .5 − .029514)' },
    { layout: 'folded', t: 1.3, r: 0.7, want: 0.311424, from: '1.3 (.935 − .646154 − .04929)' },
    { layout: 'folded', t: 0.9, r: 0.9, want: -0.3915, from: '.9 (.935 − 1.2 − .17)' },
  ] as const)('end allowance $layout, t $t, r $r: $want, by hand $from', ({ layout, t, r, want }) =>
    expect(endAllowance(layout, t, r)).toBeCloseTo(want, 5),
  );

  const straight = { layout: 'in-line', legs: 1, developed: 10, fillet: 0.5, ...wide } as const;
  // Three legs 7 long, 4 apart: 3 · 7 + 2 · 2π.
  const fold = {
    layout: 'folded',
    legs: 3,
    length: 7,
    developed: 33.566371,
    thickness: 1.1,
    width: 10,
    fillet: 0.6,
  } as const;

  test('a fold bends as a plate over its centreline by leg: by hand 1 + .148897 / (1 + .78 · 1.118879^1.7) = 1.07659', () => {
    const { plate, length, valid } = endCorrection(fold, 0.36);
    expect(plate).toBeCloseTo(1.07659, 4);
    expect(length).toBeCloseTo(0.252864, 5);
    expect(valid).toBe(true);
  });

  test.for([
    { why: 'too short', leaf: { ...straight, length: 7.9, developed: 7.9 } },
    { why: 'too thick', leaf: { ...straight, thickness: 1.71, fillet: 0.9 } },
    { why: 'too narrow', leaf: { ...straight, width: 7 } },
    { why: 'fillet over 1.12 t', leaf: { ...straight, fillet: 1.13 } },
    { why: 'legs too long', leaf: { ...fold, length: 10.5, developed: 44.066371 } },
    { why: 'legs 6 t apart', leaf: { ...fold, developed: 41.7345 } },
    { why: 'ν over .4', leaf: straight, poisson: 0.45 },
  ])('outside the range that was tried it is carried on, and says so: $why', ({ leaf, poisson = 0.36 }) => {
    const { plate, valid } = endCorrection(leaf, poisson);
    expect(plate).toBeGreaterThan(1);
    expect(valid).toBe(false);
  });

  test.for([
    [{ ...straight, fillet: 1.6 }, 'fillet'],
    [{ ...straight, developed: Number.NaN }, 'developed'],
    [{ ...straight, width: 0 }, 'width'],
  ] as const)('refuses %j', ([leaf, word]) => expect(() => endCorrection(leaf, 0.36)).toThrow(word));
});

// Stadium-shaped lines: common practice; the rows by hand, .45 + (n − 1)(.45 − .2 · .2146).
test.for([
  { n: 1, want: 0.45 },
  { n: 2, want: 0.857 },
  { n: 3, want: 1.264 },
  { n: 4, want: 1.671 },
])('$n lines of .45 at .2 are $want thick', ({ n, want }) =>
  expect(printedThickness(n, 0.45, 0.2)).toBeCloseTo(want, 3),
);

test.for([
  [1.5, 0.45, 0.2],
  [2, 0.45, 0.45],
  [0, 0.45, 0.2],
] as const)('no thickness for %j', ([n, w, h]) => expect(() => printedThickness(n, w, h)).toThrow(RangeError));

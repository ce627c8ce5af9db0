import { describe, expect, test } from 'vitest';
import { bowSlope, endForce, evenLoad, midForce, midTwist } from '../../src/mechanics/beam.js';
import { closedTorsion, openTorsion, sectionFigures, shearModulus } from '../../src/mechanics/section.js';

// Young & Budynas, Roark's Formulas, 7th ed., Table 8.1 (from memory); figures by hand. E I = 2100 · 900 = 1.89e6 N·mm².
describe('beams', () => {
  const common = { length: 240, stiffness: 1.89e6 };
  test.for([
    {
      row: 'even, supported',
      bent: evenLoad({ load: 0.03, ends: 'supported', ...common }),
      sag: 0.685714,
      slope: 0.00914286,
    },
    {
      row: 'even, built in',
      bent: evenLoad({ load: 0.03, ends: 'built-in', ...common }),
      sag: 0.137143,
      slope: 0.00175954,
    },
    {
      row: 'mid force, supported',
      bent: midForce({ force: 20, ends: 'supported', ...common }),
      sag: 3.047619,
      slope: 0.0380952,
    },
    {
      row: 'mid force, built in',
      bent: midForce({ force: 20, ends: 'built-in', ...common }),
      sag: 0.761905,
      slope: 0.00952381,
    },
    {
      row: 'end force',
      bent: endForce({ force: 2.6, length: 14, stiffness: 1.89e6 }),
      sag: 0.00125827,
      slope: 0.000134815,
    },
  ])('$row: sag $sag mm, slope $slope', ({ bent, sag, slope }) => {
    expect(bent.sag / sag).toBeCloseTo(1, 5);
    expect(bent.slope / slope).toBeCloseTo(1, 5);
  });

  test('the built-in slope is the greatest of the deflection line q x²(L − x)²/24EI', () => {
    const [q, L, EI] = [0.03, 240, 1.89e6];
    const line = (x: number) => (q * x ** 2 * (L - x) ** 2) / (24 * EI);
    let steepest = 0;
    for (let x = 0.5; x < L; x += 0.01) steepest = Math.max(steepest, (line(x + 1e-3) - line(x - 1e-3)) / 2e-3);
    expect(evenLoad({ load: q, length: L, stiffness: EI, ends: 'built-in' }).slope / steepest).toBeCloseTo(1, 5);
  });

  test('twist at mid-span: two halves share the torque, 150 · 240 / (4 · 780 · 460)', () =>
    expect(midTwist({ torque: 150, length: 240, stiffness: 780 * 460 })).toBeCloseTo(0.02508361, 7));

  test('a bow of .3 per 100 is .867 over 170: 4 · .867 / 170 at the ends', () =>
    expect(bowSlope(0.3, 100, 170)).toBeCloseTo(0.0204, 9));

  test('refuses a load of nothing', () =>
    expect(() => midForce({ force: 0, ends: 'supported', ...common })).toThrow('force'));
});

describe('sections', () => {
  test('one rectangle 7 × 4: b h³/12', () => {
    const s = sectionFigures([{ y: 2, z: -5, breadth: 7, height: 4 }]);
    expect(s.bendingInZ).toBeCloseTo(37.333333, 5);
    expect(s.bendingInY).toBeCloseTo(114.333333, 5);
  });
  // Channel 50 wide, floor 3.2, walls 2.4 × 18 above it, by hand: area 246.4, z = (160·1.6 + 86.4·12.2)/246.4.
  test('a channel by hand', () => {
    const s = sectionFigures([
      { y: 0, z: 1.6, breadth: 50, height: 3.2 },
      { y: -23.8, z: 12.2, breadth: 2.4, height: 18 },
      { y: 23.8, z: 12.2, breadth: 2.4, height: 18 },
    ]);
    expect(s.area).toBeCloseTo(246.4, 9);
    expect(s.z).toBeCloseTo(5.316883, 5);
    expect(s.y).toBeCloseTo(0, 12);
    // 136.533 + 160 · 13.815219 + 2332.8 + 86.4 · 47.377301
    expect(s.bendingInZ).toBeCloseTo(8773.167, 1);
  });
  test('split rectangles are the whole: law', () => {
    const halves = [
      { y: 0, z: 1.5, breadth: 6, height: 3 },
      { y: 0, z: 4.5, breadth: 6, height: 3 },
    ];
    expect(sectionFigures(halves).bendingInZ).toBeCloseTo((6 * 6 ** 3) / 12, 9);
  });

  // Timoshenko & Goodier; Bredt. By hand: (50 · 3.2³ + 2 · 18 · 2.4³)/3 and 4 (46·17)²/(2·46/2.4 + 2·17/3).
  test('torsion, open and closed', () => {
    expect(
      openTorsion([
        { length: 50, thickness: 3.2 },
        { length: 18, thickness: 2.4 },
        { length: 18, thickness: 2.4 },
      ]),
    ).toBeCloseTo(712.021333, 5);
    const walls = [46, 46]
      .map((length) => ({ length, thickness: 2.4 }))
      .concat([17, 17].map((length) => ({ length, thickness: 3 })));
    expect(closedTorsion(46 * 17, walls)).toBeCloseTo((4 * 782 ** 2) / (92 / 2.4 + 34 / 3), 6);
  });
  // Bredt against the exact thin tube 2 π R³ t.
  test('a thin round tube: 2 π R³ t', () =>
    expect(closedTorsion(Math.PI * 13 ** 2, [{ length: 2 * Math.PI * 13, thickness: 0.7 }])).toBeCloseTo(
      2 * Math.PI * 13 ** 3 * 0.7,
      6,
    ));
  test('G of E 2100, ν .38: 760.87', () => expect(shearModulus(2100, 0.38)).toBeCloseTo(760.8696, 4));
  test('refuses nothing', () => expect(() => sectionFigures([])).toThrow(RangeError));
});

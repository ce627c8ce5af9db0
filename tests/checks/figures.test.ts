import { describe, expect, test } from 'vitest';
import type { CheckContext } from '../../src/checks/context.js';
import { flexure } from '../../src/checks/flexure.js';
import { pitch } from '../../src/checks/pitch.js';
import { stiffness } from '../../src/checks/stiffness.js';
import type { LeafFigures } from '../../src/layout/leaf-figures.js';
import { rad } from '../../src/units.js';
import { frameFigures, leaf, leafFigures, spec } from './sound-figures.js';

type Figures = Pick<CheckContext, 'leaf' | 'leafFigures' | 'frameFigures' | 'spec'>;
const figures: Figures = { leaf, leafFigures, frameFigures, spec };

describe('flexure', () => {
  const ask = (patch: Partial<LeafFigures>) => flexure.run({ ...figures, leafFigures: { ...leafFigures, ...patch } });

  test('passes a leaf within its bounds', () => expect(ask({})).toEqual([]));

  // Limits by hand from the test plastic: 0.7 % held, 45 / 1.5 MPa, 1.5 % for a moment.
  test.for([
    { patch: { strain: 0.0071 }, code: 'flexure/strain-sustained', severity: 'error', measured: 0.71, limit: 0.7 },
    { patch: { stopStress: 30.4 }, code: 'flexure/stress', severity: 'error', measured: 30.4, limit: 30 },
    { patch: { preloadNeeded: rad(1.5) }, code: 'flexure/preload', severity: 'error', measured: 1.4, limit: 1.5 },
    { patch: { stopStrain: 0.0152 }, code: 'flexure/stop', severity: 'error', measured: 1.52, limit: 1.5 },
    { patch: { backOff: rad(4.3) }, code: 'flexure/back-off', severity: 'note', measured: 4.3, limit: 5.6 },
    { patch: { frequency: 38 }, code: 'flexure/frequency', severity: 'note', measured: 38, limit: 40 },
  ] as const)('$code when $measured is beyond $limit', ({ patch, code, severity, measured, limit }) => {
    const [found, ...more] = ask(patch);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code, severity });
    expect(found!.measured).toBeCloseTo(measured, 9);
    expect(found!.limit).toBeCloseTo(limit, 9);
  });

  test('the screw pushes, not too hard, and is locked when it pushes little', () => {
    const code = (highest: number, lowest: number) =>
      ask({ force: { highest, level: (highest + lowest) / 2, lowest } }).map((finding) => finding.code);
    expect(code(-0.1, 4)).toEqual(['flexure/screw-force']);
    expect(code(9, 26)).toEqual(['flexure/screw-force']);
    expect(code(2.5, 6)).toEqual(['flexure/screw-lock']);
  });

  test('a leaf outside the corrections is noted so', () => {
    expect(ask({ corrected: false })).toMatchObject([{ code: 'flexure/uncorrected', severity: 'note' }]);
  });

  test('figures that are none fail', () => {
    expect(ask({ strain: Number.NaN, stopStress: Number.NaN, stopStrain: Number.NaN }).map(({ code }) => code)).toEqual(
      ['flexure/strain-sustained', 'flexure/stress', 'flexure/stop'],
    );
  });
});

describe('pitch', () => {
  test('passes what is far enough apart', () => expect(pitch.run(figures)).toEqual([]));

  test('finds the closest two of each direction', () => {
    const narrow = { ...spec, grid: { columns: [22, 14, 16], rows: [20, 20], labels: null } };
    // Cells of 14 and 16 put their beams 15 apart.
    expect(pitch.run({ ...figures, spec: narrow })).toMatchObject([
      { code: 'pitch/too-small', subject: 'columns 1 and 2', measured: 15, limit: 15.4 },
    ]);
  });

  test('one line alone has no neighbour', () => {
    const single = { ...spec, grid: { columns: [8], rows: [8], labels: null } };
    expect(pitch.run({ ...figures, spec: single })).toEqual([]);
  });
});

describe('stiffness', () => {
  const ask = (patch: Partial<Figures['frameFigures']['rails'][number]>, tolerance = frameFigures.tolerance) =>
    stiffness.run({
      ...figures,
      frameFigures: { ...frameFigures, tolerance, rails: [{ ...frameFigures.rails[0]!, ...patch }] },
    });
  const of = (code: string, findings: ReturnType<typeof ask>) => findings.filter((finding) => finding.code === code);

  test('passes a stiff frame, and states each error as angle and shift', () => {
    const findings = ask({});
    expect(findings.map(({ severity }) => severity)).toEqual(['note', 'note', 'note', 'note']);
    for (const { message } of findings) expect(message).toMatch(/[\d.]+° and [\d.]+ mm at the receiver/);
  });

  test('the press: sag and twist by hand', () => {
    // Roark 8.1: 20 · 180³ / (48 · 2.6e7) = 0.093462 mm; twist 20 · 12 · 180 / (4 · 1.9e7) = 5.684e-4 rad; at 150: 0.085263.
    expect(of('rail/press', ask({}))[0]!.measured).toBeCloseTo(0.093462 + 0.085263, 5);
    expect(of('rail/press', ask({}, 0.17))[0]).toMatchObject({ severity: 'warning', limit: 0.17 });
  });

  test('the weight: twist of an even torque by hand', () => {
    // 0.011 · 180 · 4 = 7.92 N·mm spread evenly; T L / 8 G J = 7.92 · 180 / (8 · 1.9e7) = 9.379e-6 rad = 5.374e-4°.
    expect(of('rail/weight', ask({}))[0]!.measured).toBeCloseTo(5.374e-4, 7);
  });

  test('warp that takes more than half of the tilt is an error', () => {
    // Arc with .15 on 100: 4 · .15 · 200 / 100² = .012 rad = .688°, under 1.4°; twice as long it is 1.375°, and the rest goes over.
    expect(of('rail/alignment', ask({ piece: 200 }))).toEqual([]);
    expect(of('rail/warp', ask({ piece: 200 }))[0]!.measured).toBeCloseTo(0.6875, 3);
    expect(of('rail/alignment', ask({ piece: 400 }))).toMatchObject([{ severity: 'error' }]);
  });

  test("the base gives under the mount's own screw: by hand", () => {
    // 5.2 · 14³ / (3 · 1900 · 207) = 0.012093 mm over a lever of 18: 6.718e-4 rad = 0.038493°.
    expect(of('mount/base-arm', ask({}))[0]!.measured).toBeCloseTo(0.038493, 5);
  });
});

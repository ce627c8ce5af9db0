/** Where a kit stands and what its placements are called is nothing to the checks. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { runChecks } from '../../src/checks/index.js';
import type { Kit } from '../../src/kit/types.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { apply, applyDirection, multiply, rotation, translation } from '../../src/solid/matrix.js';
import { IDENTITY, type Matrix } from '../../src/solid/mesh.js';
import { box } from '../../src/solid/shapes.js';
import { frameFigures, leaf, leafFigures, light, spec, thermal } from './sound-figures.js';
import { change, changeScrew, shifted, soundKit, withThing } from './sound-kit.js';

let k: MeasuringKernel;
let faulty: Kit;
beforeAll(async () => {
  k = await loadManifoldKernel();
  // One fault for each check of shapes; what is added is drawn where it stands, so not on the bed.
  const things = [
    (kit: Kit) => shifted(kit, 'peg', [0.1, 0, 0]),
    (kit: Kit) => withThing(kit, 'finger', box(k, [50, 0, 8], [51, 8, 12])),
    (kit: Kit) => withThing(kit, 'roof', box(k, [2, 12, 16], [20, 28, 17])),
    (kit: Kit) => withThing(kit, 'near', box(k, [4, 28.06, 0.5], [20, 36, 3])),
    (kit: Kit) => withThing(kit, 'post', box(k, [48, 28, 0], [50, 32, 1.7]), { touches: ['base', 'arm'] }),
    (kit: Kit) => shifted(kit, 'stop', [0, 40, 0]),
    (kit: Kit) =>
      changeScrew(kit, 'bracket-screw', { tipRoom: null, tool: { ...kit.screws[0]!.tool, when: 'covers on' } }),
    (kit: Kit) => change(kit, 'lid-screw', { overlaps: [{ with: 'base', most: 6, why: 'formed' }] }),
  ];
  faulty = things.reduce((kit, fault) => fault(kit), soundKit(k));
});

const ask = (kit: Kit) =>
  runChecks({ kit, spec, kernel: k, leaf, leafFigures, frameFigures, light, thermal, leafOff: [] });

/** The kit moved by m, with every placement called something else. */
function moved(kit: Kit, m: Matrix, called: (name: string) => string): Kit {
  const place = (matrix: Matrix) => multiply(m, matrix);
  const orNull = (name: string | null) => (name === null ? null : called(name));
  return {
    ...kit,
    placements: kit.placements.map((p) => ({
      ...p,
      name: called(p.name),
      matrix: place(p.matrix),
      rides: p.rides && { lowest: place(p.rides.lowest), highest: place(p.rides.highest) },
      touches: p.touches.map(called),
      overlaps: p.overlaps.map((o) => ({ ...o, with: called(o.with) })),
    })),
    beams: kit.beams.map((b) => ({
      ...b,
      from: apply(m, b.from),
      to: apply(m, b.to),
      emitter: called(b.emitter),
      receiver: called(b.receiver),
    })),
    screws: kit.screws.map((s) => ({
      ...s,
      placement: called(s.placement),
      head: apply(m, s.head),
      direction: applyDirection(m, s.direction),
      into: s.into.kind === 'nut' ? { ...s.into, nut: called(s.into.nut) } : { ...s.into, part: called(s.into.part) },
    })),
    fits: kit.fits.map((f) => ({ ...f, a: called(f.a), b: called(f.b) })),
    assembly: kit.assembly.map((step) => ({
      ...step,
      joins: step.joins.map(called),
      hardware: step.hardware.map(called),
      moves: step.moves.map((move) => ({
        ...move,
        placement: called(move.placement),
        inFrameOf: orNull(move.inFrameOf),
        direction: move.inFrameOf === null ? applyDirection(m, move.direction) : move.direction,
      })),
    })),
  };
}

const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const length = fc.double({ min: -300, max: 300, noNaN: true });

test('the faulty kit has a fault for each check of shapes', () => {
  const questions = new Set(
    ask(faulty)
      .filter((f) => f.severity === 'error')
      .map(({ code }) => code.split('/')[0]),
  );
  expect([...questions].sort()).toEqual(
    [
      'assembly',
      'bed',
      'clearance',
      'corridor',
      'eye-safety',
      'fit',
      'insertion',
      'interference',
      'print',
      'thread',
      'tool',
    ].sort(),
  );
});

test('moved and relabelled, a kit gives the same findings', () => {
  const before = ask(faulty);
  fc.assert(
    fc.property(angle, angle, angle, fc.tuple(length, length, length), (a, b, c, v) => {
      const m = multiply(translation(v), rotation('z', a), rotation('y', b), rotation('x', c), IDENTITY);
      const after = ask(moved(faulty, m, (name) => `new ${name}`));
      expect(after.map(({ code, subject }) => `${code} ${subject.replaceAll('new ', '')}`)).toEqual(
        before.map(({ code, subject }) => `${code} ${subject}`),
      );
      after.forEach(({ code, measured, limit }, i) => {
        expect(limit).toBe(before[i]!.limit);
        // What lies in the way is sampled along lines, which fall elsewhere: within a line's width.
        if (measured !== null && !code.startsWith('insertion/'))
          expect(Math.abs(measured - before[i]!.measured!)).toBeLessThan(1e-3 + 0.01 * Math.abs(measured));
      });
    }),
    { numRuns: 12 },
  );
});

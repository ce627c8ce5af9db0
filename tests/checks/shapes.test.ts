import { beforeAll, describe, expect, test } from 'vitest';
import { bed } from '../../src/checks/bed.js';
import { clearance } from '../../src/checks/clearance.js';
import type { Check, ShapeContext } from '../../src/checks/context.js';
import { corridors } from '../../src/checks/corridors.js';
import { declarations } from '../../src/checks/declarations.js';
import { fits } from '../../src/checks/fits.js';
import { runChecks } from '../../src/checks/index.js';
import { interference } from '../../src/checks/interference.js';
import type { Kit } from '../../src/kit/types.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { rotation, translation } from '../../src/solid/matrix.js';
import { box } from '../../src/solid/shapes.js';
import { frameFigures, leaf, leafFigures, light, spec, thermal } from './sound-figures.js';
import { change, contextOf, part, shifted, soundKit, withThing } from './sound-kit.js';

let k: MeasuringKernel;
let sound: Kit;
beforeAll(async () => {
  k = await loadManifoldKernel();
  sound = soundKit(k);
});

const ask = (check: Check<ShapeContext>, kit: Kit) => check.run(contextOf(k, kit));
const codes = (check: Check<ShapeContext>, kit: Kit) => ask(check, kit).map((finding) => finding.code);

test('the sound kit passes every check: notes only', () => {
  const findings = runChecks({
    kit: sound,
    spec,
    kernel: k,
    leaf,
    leafFigures,
    frameFigures,
    light,
    thermal,
    leafOff: [],
  });
  // It has neither hood nor covers: beams that are not aimed yet get out, and that is told.
  const weighty = findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code);
  expect(weighty).toEqual(['eye-safety/stray-before', 'eye-safety/stray-after']);
  expect(findings.map(({ code }) => code)).toContain('eye-safety/class');
});

describe('interference', () => {
  test('passes the sound kit', () => expect(ask(interference, sound)).toEqual([]));

  test('finds a part inside another, by its volume', () => {
    // By hand: the bracket, 16 × 16 with a Ø2.9 hole over the base's, sinks in by 0.5; the screw's head and shank go along.
    const findings = ask(interference, shifted(sound, 'bracket', [0, 0, -0.5]));
    const found = findings.find(({ subject }) => subject === 'base / bracket')!;
    expect(found.code).toBe('interference/overlap');
    expect(found.measured).toBeCloseTo(0.5 * (256 - (Math.PI / 4) * 2.9 ** 2), 1);
  });

  test('finds what meets only at one end of the travel', () => {
    // By hand: at 3° an arm's end 10 from its axis goes down by 10 sin 3° = 0.523; a post 0.3 below it is clear when level.
    const kit = withThing(sound, 'post', box(k, [48, 28, -0.01], [50, 32, 1.7]), { touches: ['base', 'arm'] });
    const at = change(kit, 'post', { matrix: translation([0, 0, 0.01]) });
    const [found, ...more] = ask(interference, at);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'interference/overlap', subject: 'arm / post' });
    expect(found!.message).toContain('lowest');
  });

  test('finds what rides into something', () => {
    // The weight's top stands at 7 and rises by 5 sin 3° and a little at the highest beam; level, it is 0.1 clear.
    const kit = withThing(sound, 'roof', box(k, [40, 26, 7.1], [50, 34, 9]), { touches: ['weight', 'arm'] });
    const [found] = ask(interference, kit);
    expect(found).toMatchObject({ code: 'interference/overlap', subject: 'weight / roof' });
    expect(found!.message).toContain('highest');
  });

  test('holds a meant overlap to its most', () => {
    // By hand: 5 mm of ring between Ø2.5 and Ø2.1 is 5 · π/4 · (6.25 − 4.41) = 7.23 mm³.
    const kit = change(sound, 'lid-screw', { overlaps: [{ with: 'base', most: 6, why: 'formed thread' }] });
    const [found, ...more] = ask(interference, kit);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'interference/more-than-meant', limit: 6 });
    expect(found!.measured).toBeGreaterThan(7.23 * 0.9);
    expect(found!.measured).toBeLessThan(7.23);
  });
});

describe('clearance', () => {
  test('passes the sound kit', () => expect(ask(clearance, sound)).toEqual([]));

  test('finds parts that stand too close', () => {
    const kit = withThing(sound, 'near', box(k, [4, 28.06, 0.5], [20, 36, 3]));
    const [found, ...more] = ask(clearance, kit);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'clearance/gap', subject: 'bracket / near', limit: 0.1 });
    expect(found!.measured).toBeCloseTo(0.06, 4);
  });

  test('asks for more where one of them moves', () => {
    // 0.15 beside the arm is enough for parts that stand still, not for one that turns past.
    const kit = withThing(sound, 'fence', box(k, [36, 34.15, 0.5], [44, 38, 6]));
    expect(ask(clearance, kit)).toMatchObject([{ code: 'clearance/gap', subject: 'arm / fence', limit: 0.2 }]);
  });

  test('touch is taken from either side', () => {
    const kit = withThing(sound, 'near', box(k, [4, 28.06, 0.5], [20, 36, 3]), { touches: ['bracket'] });
    expect(ask(clearance, kit)).toEqual([]);
  });
});

describe('fits', () => {
  test('passes the sound kit', () => expect(ask(fits, sound)).toEqual([]));

  test('finds one drawn tighter or looser than its class', () => {
    const [slide, free] = sound.fits;
    expect(codes(fits, { ...sound, fits: [{ ...slide!, wanted: 0.17 }, free!] })).toEqual(['fit/tight']);
    expect(codes(fits, { ...sound, fits: [{ ...slide!, wanted: 0.1 }, free!] })).toEqual(['fit/loose']);
  });

  test('finds a peg that stands aside in its hole', () => {
    const [found, ...more] = ask(fits, shifted(sound, 'peg', [0.1, 0, 0]));
    expect(more).toEqual([]);
    expect(found!.code).toBe('fit/not-as-drawn');
    expect(found!.measured).toBeGreaterThan(0.12);
    expect(found!.measured).toBeLessThan(0.14);
  });

  test('finds a touching fit without the play that it is said to have', () => {
    const [slide] = sound.fits;
    expect(codes(fits, { ...sound, fits: [{ ...slide!, drawn: 0.3, wanted: 0.3 }] })).toEqual(['fit/not-as-drawn']);
    expect(codes(fits, { ...sound, fits: [{ ...slide!, drawn: 0.05, wanted: 0.05 }] })).toEqual(['fit/not-as-drawn']);
  });
});

describe('corridors', () => {
  test('passes the sound kit', () => expect(ask(corridors, sound)).toEqual([]));

  test('finds what stands in a beam', () => {
    const [found, ...more] = ask(corridors, withThing(sound, 'finger', box(k, [50, 0, 8], [51, 8, 12])));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'corridor/blocked', subject: 'row-0' });
    // By hand: half of a Ø4 disc, 1 thick; the tested bar is a 24-gon about it, 0.6 % larger.
    expect(found!.measured).toBeCloseTo(2 * Math.PI * 1.0058, 2);
  });

  test('is not content with the edge of the way either', () => {
    expect(codes(corridors, withThing(sound, 'rim', box(k, [50, 5.8, 8], [51, 8, 16])))).toEqual(['corridor/blocked']);
    expect(codes(corridors, withThing(sound, 'rim', box(k, [50, 6.1, 8], [51, 8, 16])))).toEqual([]);
  });
});

describe('bed', () => {
  const alone = (x: number, y: number, z: number, lift = 0): Kit => ({
    ...sound,
    placements: [],
    parts: new Map([['bar', part('bar', box(k, [0, 0, lift], [x, y, z + lift]))]]),
  });

  test('takes what fits, a quarter turn included', () => {
    // Bed 220 × 220 with 5 kept free along each edge.
    expect(ask(bed, alone(210, 12, 30))).toEqual([]);
    expect(ask(bed, alone(12, 210, 250))).toEqual([]);
  });

  test('says which side is too long, and by how much', () => {
    expect(ask(bed, alone(12, 213, 30))).toMatchObject([{ code: 'bed/too-large', measured: 213, limit: 210 }]);
    expect(ask(bed, alone(12, 213, 30))[0]!.message).toMatch(/213 mm long, 3 mm more/);
    expect(ask(bed, alone(211, 212, 251)).map(({ code }) => code)).toEqual([
      'bed/too-large',
      'bed/too-large',
      'bed/too-high',
    ]);
  });

  test('finds a part that hovers', () => expect(codes(bed, alone(10, 12, 30, 0.2))).toEqual(['bed/not-on-it']));
});

describe('declarations', () => {
  const of = (kit: Kit) => declarations.run({ kit }).map(({ code }) => code);
  const refused = (kit: Kit) =>
    runChecks({ kit, spec, kernel: k, leaf, leafFigures, frameFigures, light, thermal, leafOff: [] }).map(
      ({ code }) => code,
    );

  test('pass the sound kit', () => expect(of(sound)).toEqual([]));

  test('a missing pose is refused, and nothing else is asked', () => {
    const arm = sound.parts.get('arm')!;
    const { level, lowest } = arm.posed!;
    const posed = { level, lowest } as unknown as NonNullable<typeof arm.posed>;
    expect(refused({ ...sound, parts: new Map([...sound.parts, ['arm', { ...arm, posed }]]) })).toEqual([
      'kit/missing-pose',
    ]);
    const rides = { lowest: translation([1, 2, 3]) } as unknown as NonNullable<Kit['placements'][number]['rides']>;
    expect(refused(change(sound, 'weight', { rides }))).toEqual(['kit/missing-pose']);
  });

  test('names, matrices and directions have to hold', () => {
    expect(of(change(sound, 'peg', { touches: ['pegg'] }))).toEqual(['kit/unknown-name']);
    expect(of(change(sound, 'peg', { part: 'pegg' }))).toEqual(['kit/unknown-name']);
    expect(of({ ...sound, placements: [...sound.placements, sound.placements[1]!] })).toEqual(['kit/same-name']);
    const mirror = [-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
    expect(of(change(sound, 'peg', { matrix: mirror }))).toEqual(['kit/not-rigid']);
    expect(of(change(sound, 'peg', { matrix: rotation('x', 0.3).map((m) => 1.01 * m) }))).toEqual(['kit/not-rigid']);
    const [first, second, ...rest] = sound.assembly;
    const [move, ...moves] = second!.moves;
    const long = { ...second!, moves: [{ ...move!, direction: [0, 0, 2] as const }, ...moves] };
    expect(of({ ...sound, assembly: [first!, long, ...rest] })).toEqual(['kit/direction']);
  });
});

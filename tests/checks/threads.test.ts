import { beforeAll, describe, expect, test } from 'vitest';
import { threads } from '../../src/checks/threads.js';
import type { Kit, Screw } from '../../src/kit/types.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { box, cylinder } from '../../src/solid/shapes.js';
import { capScrew, changeScrew, contextOf, LID_AT, part, shifted, soundKit, withThing } from './sound-kit.js';

let k: MeasuringKernel;
let sound: Kit;
beforeAll(async () => {
  k = await loadManifoldKernel();
  sound = soundKit(k);
});

const ask = (kit: Kit) => threads.run(contextOf(k, kit));
const codes = (kit: Kit) => ask(kit).map(({ code }) => code);

/** The kit with another length of screw in a place, declared as the solids stand. */
function withScrew(kit: Kit, name: string, { length, ...patch }: { readonly length: number } & Partial<Screw>): Kit {
  const id = `screw-${length}`;
  const made = part(id, capScrew(k, length), {
    kind: 'bought',
    order: { standard: 'ISO 4762', size: 'M2.5', lengthMm: length },
  });
  return changeScrew(
    {
      ...kit,
      parts: new Map([...kit.parts, [id, made]]),
      placements: kit.placements.map((p) => (p.name === name ? { ...p, part: id } : p)),
    },
    name,
    { lengthMm: length, ...patch },
  );
}

test('the sound kit passes', () => expect(ask(sound)).toEqual([]));

test('a screw has to pass the whole nut and one pitch', () => {
  // From the head's underside at 4 to the nut's far face at −5.8 are 9.8: a screw of 10 passes by 0.2 < P = 0.45 (ISO 261).
  const kit = withScrew(sound, 'bracket-screw', { length: 10, into: { kind: 'nut', nut: 'bracket-nut', beyond: 0.2 } });
  const [found, ...more] = ask(kit);
  expect(more).toEqual([]);
  expect(found).toMatchObject({ code: 'thread/short-of-nut', limit: 0.45 });
  expect(found!.measured).toBeCloseTo(0.2, 4);
});

test('what is declared has to be what is drawn', () => {
  const said = changeScrew(sound, 'bracket-screw', { into: { kind: 'nut', nut: 'bracket-nut', beyond: 2.6 } });
  expect(codes(said)).toEqual(['thread/not-as-drawn']);
  // 3 higher the lid's screw has 2 in the base, not 5.
  expect(
    codes(changeScrew(shifted(sound, 'lid-screw', [0, 0, 3]), 'lid-screw', { head: [LID_AT[0], LID_AT[1], 8.5] })),
  ).toEqual(['thread/not-as-drawn']);
});

test('a formed thread needs 1.5 diameters', () => {
  // 5 long through a lid of 3 leaves 2 < 1.5 · 2.5 = 3.75.
  const kit = withScrew(sound, 'lid-screw', { length: 5, into: { kind: 'formed', part: 'base', engaged: 2 } });
  expect(ask(kit)).toMatchObject([{ code: 'thread/formed-short', measured: 2, limit: 3.75 }]);
});

describe('a vertical hole is drawn wider by what the printer closes it', () => {
  // Pilot 2.1 and .5 of growth: drawn 2.6 wide, no solid of Ø2.5 touches it; printed it is 2.1 again.
  const drawnWide = (): Kit => {
    const base = sound.parts.get('base')!;
    const hole = cylinder(k, {
      from: [LID_AT[0], LID_AT[1], 0.5],
      to: [LID_AT[0], LID_AT[1], 7],
      radius: 1.3,
      fit: 'hole',
    });
    return { ...sound, parts: new Map(sound.parts).set('base', { ...base, solid: k.subtract(base.solid, [hole]) }) };
  };
  const grown = (kit: Kit, growth: number) => {
    const { spec } = contextOf(k, kit);
    const machine = { ...spec.printer.machine, holeGrowth: { value: growth, source: 'test' } };
    return threads.run(contextOf(k, kit, { spec: { ...spec, printer: { name: 'grown', machine } } }));
  };

  test('a thread is formed in it as in one that is not grown', () => {
    expect(grown(drawnWide(), 0.5)).toEqual([]);
  });

  test('a hole that is wider than the growth explains holds no thread', () => {
    expect(grown(drawnWide(), 0.05).map(({ code, measured }) => [code, measured])).toEqual([
      ['thread/not-as-drawn', 0],
    ]);
  });

  test('a screw that is not as deep as it says is found in it too', () => {
    const out = changeScrew(shifted(drawnWide(), 'lid-screw', [0, 0, 3]), 'lid-screw', {
      head: [LID_AT[0], LID_AT[1], 8.5],
    });
    const [found, ...more] = grown(out, 0.5);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'thread/not-as-drawn', limit: 5 });
    expect(found!.measured).toBeCloseTo(2, 3);
  });
});

test('a screw must not bottom, whether it says so or not', () => {
  // 0.4 deeper its tip is 0.1 above the pilot's ground, at −5.5.
  const into = { kind: 'formed', part: 'base', engaged: 5.4 } as const;
  const deeper = changeScrew(shifted(sound, 'lid-screw', [0, 0, -0.4]), 'lid-screw', { into, head: [60, 12, 5.1] });
  expect(codes(deeper)).toEqual(['thread/bottoms']);
  expect(codes(changeScrew(sound, 'lid-screw', { tipRoom: -0.1 }))).toEqual(['thread/bottoms']);
  expect(codes(changeScrew(sound, 'lid-screw', { tipRoom: 0.2 }))).toEqual(['thread/bottoms']);
});

test('a tip that is meant to bear has to', () => {
  const bears = changeScrew(sound, 'bracket-screw', { tipRoom: null });
  expect(codes(bears)).toEqual(['thread/tip-floats']);
  // The screw's tip stands at 4 − 12 = −8.
  expect(codes(withThing(bears, 'pad', box(k, [8, 16, -10], [16, 24, -8])))).toEqual([]);
  expect(codes(withThing(bears, 'pad', box(k, [8, 16, -10], [16, 24, -8.2])))).toEqual(['thread/tip-floats']);
  expect(codes(withThing(sound, 'pad', box(k, [8, 16, -10], [16, 24, -8.2])))).toEqual(['thread/bottoms']);
});

test('only lengths that are stocked, ordered as they are drawn', () => {
  // ISO 4762 lists 12 and 16, not 13, for M2.5.
  const into = { kind: 'nut', nut: 'bracket-nut', beyond: 3.2 } as const;
  expect(codes(withScrew(sound, 'bracket-screw', { length: 13, into }))).toEqual(['thread/not-stocked']);
  expect(codes(changeScrew(sound, 'bracket-screw', { lengthMm: 16 }))).toEqual(['thread/not-stocked']);
});

import { beforeAll, describe, expect, test } from 'vitest';
import { eyeSafety } from '../../src/checks/eye-safety.js';
import { beamsTogether, classLimits, classOf } from '../../src/checks/laser-class.js';
import type { Kit } from '../../src/kit/types.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import type { Spec } from '../../src/spec/spec.js';
import { spec } from './sound-figures.js';
import { contextOf, shifted, soundKit } from './sound-kit.js';

let k: MeasuringKernel;
let sound: Kit;
beforeAll(async () => {
  k = await loadManifoldKernel();
  sound = soundKit(k);
});

const emitting = (powerMw: number, wavelengthNm: number): Spec => ({
  ...spec,
  emitters: {
    ...spec.emitters,
    part: {
      ...spec.emitters.part,
      powerMw: { value: powerMw, source: 'test' },
      wavelengthNm: { value: wavelengthNm, source: 'test' },
    },
  },
});
const ask = (kit: Kit, of: Spec = spec) => eyeSafety.run(contextOf(k, kit, { spec: of }));

describe('class limits', () => {
  // IEC 60825-1:2014 through public restatements; class 3R beyond 700 nm from memory.
  test.for([
    { nm: 650, class1: 0.39, class2: 1, class3R: 5 },
    { nm: 780, class1: 0.563722, class2: null, class3R: 2.890884 },
    { nm: 850, class1: 0.778152, class2: null, class3R: 3.990525 },
    { nm: 940, class1: 1.177781, class2: null, class3R: 6.039905 },
  ])('at $nm nm: class 1 to $class1 mW', ({ nm, class1, class2, class3R }) => {
    const limits = classLimits(nm)!;
    expect(limits.class1).toBeCloseTo(class1, 6);
    expect(limits.class2).toBe(class2);
    // By hand: 2 · 10^(0.002 (λ − 700)).
    expect(limits.class3R).toBeCloseTo(class3R, 2);
  });

  test('none below 500 nm or beyond 1150 nm', () => {
    expect(classLimits(450)).toBeNull();
    expect(classLimits(1200)).toBeNull();
  });

  test('classes by power, and beams that share a 50 mm lens', () => {
    const red = classLimits(650)!;
    expect([0.3, 0.9, 4.9, 5.1].map((power) => classOf(power, red))).toEqual(['1', '2', '3R', '3B or higher']);
    expect(classOf(0.9, classLimits(850)!)).toBe('3R');
    // By hand: ⌊50 / 19⌋ + 1 = 3, no more than there are.
    expect(beamsTogether(19, 6)).toBe(3);
    expect(beamsTogether(19, 2)).toBe(2);
  });
});

test('the sound kit gets its note, and no error', () => {
  const [note, ...more] = ask(sound);
  expect(more).toEqual([]);
  expect(note).toMatchObject({ code: 'eye-safety/class', severity: 'note', measured: 5 });
  expect(note!.message).toMatch(/class 3R.*no classification/s);
});

test('a stronger beam, or one that is not estimated, is an error', () => {
  expect(ask(sound, emitting(5.5, 650))).toMatchObject([
    { code: 'eye-safety/too-strong', severity: 'error', limit: 5 },
  ]);
  expect(ask(sound, emitting(1, 450))).toMatchObject([{ code: 'eye-safety/not-estimated', severity: 'error' }]);
});

describe('every beam ends in a stop', () => {
  const stopsOf = (kit: Kit) => ask(kit).filter(({ code }) => code === 'eye-safety/no-stop');

  test('gone, it is missed by all rays', () => {
    expect(stopsOf(shifted(sound, 'stop', [0, 40, 0]))).toMatchObject([{ subject: 'row-0', measured: 9, limit: 0 }]);
  });

  test('too low, it is missed by the upper ones: middle and rim have to meet it', () => {
    // The beam's middle is at 12, its free way reaches from 10 to 14; the stop now ends at 20.5 − 7 = 13.5.
    const [found, ...more] = stopsOf(shifted(sound, 'stop', [0, 0, -7]));
    expect(more).toEqual([]);
    expect(found!.measured).toBeGreaterThan(0);
    expect(found!.measured).toBeLessThan(5);
  });

  test('a bought part is no stop', () => {
    const stop = sound.parts.get('stop')!;
    const kit = { ...sound, parts: new Map([...sound.parts, ['stop', { ...stop, kind: 'bought' } as typeof stop]]) };
    expect(stopsOf(kit)).toHaveLength(1);
  });
});

import { beforeAll, describe, expect, test } from 'vitest';
import { eyeSafety } from '../../src/checks/eye-safety.js';
import { barrel6x12Infrared } from '../../src/components/emitter-barrel-6x12-infrared.js';
import { led5Infrared } from '../../src/components/emitter-led-5-infrared.js';
import type { Emitter } from '../../src/components/types.js';
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

const having = (part: Emitter, name = 'other'): Spec => ({ ...spec, emitters: { ...spec.emitters, name, part } });
const codes = (of: Spec) => ask(sound, of).map(({ code, severity }) => `${severity} ${code}`);

test('the sound kit gets its note, and no error', () => {
  const [note, ...more] = ask(sound);
  expect(more).toEqual([]);
  expect(note).toMatchObject({ code: 'eye-safety/class', severity: 'note', limit: 0.39 });
  expect(note!.measured).toBeCloseTo(5, 9);
  expect(note!.message).toMatch(/class 3R.*counts at its peak.*no classification/s);
});

describe('how strong', () => {
  // Class 3R ends at 5 mW in the visible, at 2 · 10^.3 = 3.990525 mW at 850 nm (IEC 60825-1:2014 restated; the latter from memory).
  test.for([
    { nm: 650, power: 5, want: ['note eye-safety/class'] },
    { nm: 650, power: 5.5, want: ['error eye-safety/too-strong'] },
    { nm: 650, power: 600, want: ['error eye-safety/too-strong'] },
    { nm: 850, power: 0.7, want: ['warning eye-safety/unseen', 'note eye-safety/class'] },
    { nm: 850, power: 3.9, want: ['warning eye-safety/unseen', 'note eye-safety/class'] },
    { nm: 850, power: 4.1, want: ['error eye-safety/too-strong'] },
    { nm: 450, power: 1, want: ['warning eye-safety/not-estimated'] },
    { nm: 450, power: 5.1, want: ['error eye-safety/too-strong'] },
  ])('$power mW at $nm nm: $want', ({ nm, power, want }) => expect(codes(emitting(power, nm))).toEqual(want));

  test('too strong says by how much, that the panel must not be built, and what to change', () => {
    const [red] = ask(sound, emitting(5.5, 650));
    expect(red).toMatchObject({ limit: 5, unit: 'mW', remedies: ['emitters.part'] });
    expect(red!.measured).toBeCloseTo(5.5, 9);
    expect(red!.message).toMatch(/class 3B.*must not be built.*power_mw.*dimming by pulses does not count/s);
    expect(ask(sound, emitting(600, 650))[0]!.message).toContain('class 4');
  });

  test('the infrared barrel as labelled is too strong; driven below 3.99 mW it is not', () => {
    expect(codes(having(barrel6x12Infrared))).toEqual(['error eye-safety/too-strong']);
    const less = { ...barrel6x12Infrared, powerMw: { value: 3.5, source: 'measured in this test' } };
    expect(codes(having(less))).toEqual(['warning eye-safety/unseen', 'note eye-safety/class']);
  });

  test('infrared that is weak enough still warns: no aversion, no class 2', () => {
    const [warning, note] = ask(sound, emitting(0.9, 850));
    expect(warning!.message).toMatch(/neither blinks nor turns away.*viewing card/s);
    expect(note!.message).toContain('class 3R');
  });

  test('a wide LED counts by what enters an eye', () => {
    const [warning, note] = ask(sound, having(led5Infrared, 'led-5-infrared'));
    expect(warning!.code).toBe('eye-safety/unseen');
    expect(note!.message).toMatch(
      /19 mW at 850 nm, of which 0.489 mW enter an eye 100 mm off, by its figures class 1 /,
    );
  });

  test('below 500 nm: declined, why, and to be treated as class 3B', () => {
    const [found] = ask(sound, emitting(1, 450));
    expect(found!.message).toMatch(/No class is estimated: below 500 nm.*photochemical.*Treat every beam as class 3B/s);
    expect(ask(sound, emitting(5.1, 450))[0]!.message).toMatch(/class 3B at least, by the limit against heat alone/);
  });

  test('beams that a lens gathers are counted where they stand', () => {
    // The sound kit's one beam, put twice more at 20 and 45 along y: three within 50 mm, then one too far.
    const beam = sound.beams.find(({ line }) => line === 'row')!;
    const at = (y: number) => ({ ...beam, from: [beam.from[0], y, beam.from[2]] as const });
    const lensOf = (ys: readonly number[]) =>
      ask({ ...sound, beams: ys.map(at) }).find(({ code }) => code === 'eye-safety/class')!.message;
    expect(lensOf([0, 20, 45])).toContain('3 parallel beams through a 50 mm lens are 15 mW, class 3B');
    expect(lensOf([0, 20, 51])).toContain('2 parallel beams through a 50 mm lens are 10 mW, class 3B');
    expect(lensOf([0, 60])).toContain('1 parallel beam through a 50 mm lens is 5 mW, class 3R');
  });

  test('a bare eye that gets two beams is counted with both', () => {
    const beam = sound.beams.find(({ line }) => line === 'row')!;
    const pair = [0, 6].map((y) => ({ ...beam, from: [beam.from[0], y, beam.from[2]] as const }));
    const found = ask({ ...sound, beams: pair }, emitting(3, 650)).find(({ code }) => code === 'eye-safety/too-strong');
    expect(found!.message).toContain('2 beams reach one eye');
    expect(found!.measured).toBeCloseTo(6, 9);
  });
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

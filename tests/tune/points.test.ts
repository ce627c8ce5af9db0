import { describe, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { planSweep } from '../../src/tune/points.js';
import { readVary } from '../../src/tune/vary.js';

const GRID = 'grid: { rows: 2, columns: 3, pitch: 22 }\n';
const plan = (lines: string, vary: Readonly<Record<string, string>> = {}) => {
  const read = readVary(Object.entries(vary).map(([path, text]) => ({ path, text })));
  if ('mistakes' in read) throw new Error(read.mistakes[0]!.message);
  return planSweep(readPreset(`${GRID}${lines}`, 'sweep.yaml'), read.axes);
};
const points = (lines: string, vary?: Readonly<Record<string, string>>) => {
  const found = plan(lines, vary);
  if ('mistakes' in found) throw new Error(found.mistakes[0]!.message);
  return found.points;
};

describe('what is combined', () => {
  test('every value with every other, the last path fastest, numbered from 1', () => {
    const all = points('', { 'leaf.thickness': '0.86,1.26', 'leaf.length': '8..10/1' });
    expect(all.map(({ number, thickness, length }) => [number, thickness, length])).toEqual([
      [1, 0.86, 8],
      [2, 0.86, 9],
      [3, 0.86, 10],
      [4, 1.26, 8],
      [5, 1.26, 9],
      [6, 1.26, 10],
    ]);
  });

  test('what is not varied is the preset’s, else as solved for it', () => {
    const [pinned] = points('leaf: { layout: folded, legs: 3, length: 7.5 }\n', { 'leaf.thickness': '1.26' });
    expect(pinned).toMatchObject({ layout: 'folded', legs: 3, length: 7.5, thickness: 1.26 });
    const found = plan('', { 'leaf.thickness': '1.26' });
    if ('mistakes' in found) throw new Error('no plan');
    const { layout, legs, length } = found.baseline!.mount.leaf;
    expect(found.points).toMatchObject([{ layout, legs, length }]);
  });

  test.for([
    {
      row: 'legs alone bring their layout',
      lines: '',
      vary: { 'leaf.legs': '1,2,3' },
      want: ['in-line 1', 'folded 2', 'folded 3'],
    },
    {
      row: 'a layout brings its legs',
      lines: '',
      vary: { 'leaf.layout': 'in-line,folded,upright' },
      want: ['in-line 1', 'folded 2', 'folded 3', 'upright 1'],
    },
    {
      row: 'pinned legs keep to layouts that have them',
      lines: 'leaf: { legs: 3 }\n',
      vary: { 'leaf.layout': 'in-line,folded' },
      want: ['folded 3'],
    },
    {
      row: 'both: what goes together',
      lines: '',
      vary: { 'leaf.layout': 'in-line,folded', 'leaf.legs': '1,2,3' },
      want: ['in-line 1', 'folded 2', 'folded 3'],
    },
    {
      row: 'an upright leaf stays upright',
      lines: 'leaf: { layout: upright }\naim: { tilt: 2 }\n',
      vary: { 'leaf.length': '10' },
      want: ['upright 1'],
    },
  ] as const)('$row', ({ lines, vary, want }) =>
    expect(points(lines, vary).map(({ layout, legs }) => `${layout} ${legs}`)).toEqual(want),
  );

  test('combinations left out are counted; if all are, that is a mistake', () => {
    const found = plan('', { 'leaf.layout': 'in-line,folded', 'leaf.legs': '1,2,3' });
    // by hand: of 2 · 3 go in-line 1, folded 2, folded 3
    expect(found).toMatchObject({ left: 3 });
    expect(plan('', { 'leaf.layout': 'folded', 'leaf.legs': '1' })).toMatchObject({
      mistakes: [{ code: 'tune/no-leaf' }],
    });
  });

  test('with nothing given: whole print lines, lengths around the solved one, straight and folded', () => {
    const found = plan('');
    if ('mistakes' in found) throw new Error('no plan');
    expect(found.byDefault).toBe(true);
    const { leaf } = found.baseline!.mount;
    // t = w + (n − 1)(w − h (1 − π/4)), w .45, h .2, to hundredths: common practice of slicing, by hand .857, 1.264, 1.671
    expect(new Set(found.points.map(({ thickness }) => thickness))).toEqual(new Set([0.86, 1.26, 1.67]));
    expect(
      found.points.some(
        (p) =>
          p.layout === leaf.layout &&
          p.legs === leaf.legs &&
          p.length === leaf.length &&
          p.thickness === leaf.thickness,
      ),
    ).toBe(true);
    expect(new Set(found.points.map(({ legs }) => legs))).toEqual(new Set([1, 2, 3]));
  });

  test('a preset that no leaf meets is swept all the same', () => {
    const found = plan('aim: { tilt: 9 }\n');
    expect(found).toMatchObject({ baseline: { holds: false } });
    expect('points' in found && found.points.length).toBeGreaterThan(20);
  });
});

describe('what no leaf may be', () => {
  // Two lines .45 wide in layers of .2: .857, by hand as above.
  test.for([
    {
      row: 'thinner than two lines, varied',
      lines: '',
      vary: { 'leaf.thickness': '0.6..1/0.1' },
      code: 'leaf/too-thin',
      says: /0\.6 mm .* 0\.86 mm/,
    },
    {
      row: 'longer than the mount, varied',
      lines: '',
      vary: { 'leaf.length': '10..50/5' },
      code: 'leaf/too-long',
      says: /50 mm/,
    },
  ] as const)('$row', ({ lines, vary, code, says }) => {
    const found = plan(lines, vary);
    expect(found).toMatchObject({ mistakes: [{ code }] });
    expect('mistakes' in found && found.mistakes[0]!.message).toMatch(says);
  });

  test.for([
    { row: 'thinner than two lines, pinned', lines: 'leaf: { thickness: 0.6 }\n', code: 'leaf/too-thin' },
    { row: 'longer than the mount, pinned', lines: 'leaf: { length: 50 }\n', code: 'leaf/too-long' },
    { row: 'a mount narrower than its barrel', lines: 'leaf: { width: 6 }\n', code: 'preset/mount-too-narrow' },
  ])('the preset’s own: $row', ({ lines, code }) => {
    let thrown: unknown;
    try {
      plan(lines, { 'aim.tilt': '2' });
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(PresetError);
    expect((thrown as PresetError).mistakes.map((mistake) => mistake.code)).toEqual([code]);
  });

  test('a leaf as thick as two lines of a fine nozzle is none too thin there', () => {
    expect(points('printer: bed-220-fine\n', { 'leaf.thickness': '0.6' })).toHaveLength(1);
  });
});

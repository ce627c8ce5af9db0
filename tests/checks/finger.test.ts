import { describe, expect, test } from 'vitest';
import { finger } from '../../src/checks/finger.js';
import { layOut } from '../../src/layout/lay-out.js';
import { lightBudget } from '../../src/layout/light/budget.js';
import type { FingerFigures } from '../../src/layout/light/finger.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { fingers, light } from './sound-figures.js';

const ask = (figures: FingerFigures | null) => finger.run({ light: { ...light, finger: figures } });
const codes = (figures: FingerFigures | null) => ask(figures).map(({ code, severity }) => `${severity} ${code}`);

test('fingers that hit their line are a note', () => {
  expect(codes(fingers(5.4, 8.1))).toEqual(['note finger/keys']);
});

test('a finger too narrow for any receiver to read dark is an error, on each axis', () => {
  expect(codes(fingers(null, 8.1))).toEqual(['error finger/unseen', 'error finger/unseen', 'note finger/keys']);
});

test('touches that fall between lines: from one in twenty on', () => {
  // Scatter 2: P(|x| > 3.92) = .05.
  expect(codes(fingers(3.93, 8.1))).toEqual(['note finger/keys']);
  const [first] = ask(fingers(3.91, 8.1));
  expect(first).toMatchObject({ code: 'finger/missed', severity: 'warning', subject: 'columns', limit: 5 });
  expect(first!.measured).toBeCloseTo(5.06, 1);
});

test('fingers that flip two lines: from one touch in twenty on', () => {
  // Pitch 11, reach b: two lines within b where |x| > 11 − b; scatter 2: P(|x| > 3.92) = .05.
  expect(codes(fingers(5, 7.07, 11))).toEqual(['note finger/keys']);
  expect(codes(fingers(5, 7.09, 11))).toEqual(['warning finger/double', 'warning finger/double', 'note finger/keys']);
});

test('where no receiver ever reads dark nothing is said of fingers', () => {
  expect(codes(null)).toEqual([]);
});

describe('from a preset', () => {
  const figures = (text: string) => lightBudget(layOut(readPreset(text, 'tested.yaml'))).finger!;
  test('a 12 mm finger at beams 5 mm up, by hand', () => {
    const { axes } = figures('grid: { rows: 2, columns: 3, pitch: 24 }\n');
    const [narrow] = axes[0].fingers;
    // 2 √(5 · 7) = 11.83; less about the detector's radius on either side: 5.4.
    expect(narrow!.atBeam).toBeCloseTo(11.832, 3);
    expect(narrow!.reach).toBeGreaterThan(5.3);
    expect(narrow!.reach).toBeLessThan(5.5);
    // Bi & Zhai: √(.0075 · 24² + 1.68) = 2.45 across, √(.0108 · 24² + 1.33) = 2.75 along.
    expect(axes[0].scatter).toBeCloseTo(2.449, 3);
    expect(axes[1].scatter).toBeCloseTo(2.748, 3);
  });
  test('the breadths are the preset’s ends and the usual ones between', () => {
    const { keys } = figures('grid: { rows: 2, columns: 3, pitch: 24 }\nfinger: { least: 14, most: 19 }\n');
    expect(keys.map(({ breadth }) => breadth)).toEqual([14, 16, 18, 19]);
  });
  test('a lone row has no neighbour that could be hit instead', () => {
    const { axes } = figures('grid: { rows: 1, columns: 3, pitch: 14 }\nfinger: { least: 12, most: 24 }\n');
    for (const { hit } of axes[1].fingers) expect([hit.double, hit.wrong]).toEqual([0, 0]);
    // 24 broad is 19.5 at the beams: reach 9.25, so two columns beyond 4.75; scatter 1.775: P(|x| > 4.75) = .0075.
    expect(axes[0].fingers.at(-1)!.hit.double).toBeCloseTo(0.0075, 3);
  });
});

/** What decides the margin, worked out by hand: a corner post reaches 10 along each rail, and .4 stay free beside it. */
import { describe, expect, test } from 'vitest';
import { type Mistake, PresetError } from '../../src/errors.js';
import { layOut } from '../../src/layout/lay-out.js';
import { readPreset } from '../../src/spec/read-preset.js';

const lay = (text: string) => layOut(readPreset(text, 'laid.yaml'));
const marginOf = (text: string) => lay(text).solved.find(({ path }) => path === 'frame.margin')!;
function mistakesOf(text: string): readonly Mistake[] {
  try {
    lay(text);
  } catch (error) {
    if (error instanceof PresetError) return error.mistakes;
    throw error;
  }
  return [];
}

const WIDE = 'grid: { rows: 3, columns: 3, pitch: 40 }\nleaf: { width: 30 }\n';

describe('an open margin is the greatest of all needs, and the reason names it', () => {
  test.for([
    { what: 'a plain grid', text: 'grid: { rows: 3, columns: 3, pitch: 22 }\n', want: 18, says: /finger/ },
    // 10 + .4 + 30 / 2; the outermost cell asks for 40 / 2 + 2.
    { what: 'wide mounts', text: WIDE, want: 25.4, says: /last mount, lowered beside the corner post/ },
    // 34 / 2 + 2.
    { what: 'wide cells', text: 'grid: { rows: 3, columns: 3, pitch: 34 }\n', want: 19, says: /outermost cell/ },
    // Sockets straddle 20 with .275 of play and walls of 1.3: 22.875 / 2 + 10.4 = 21.84, up to a tenth.
    {
      what: 'wide receivers',
      text: 'grid: { rows: 3, columns: 3, pitch: 30 }\nreceivers: { part: { base: three-leg, width: 20 } }\n',
      want: 21.9,
      says: /last receiver socket/,
    },
    // The collar on Ø15: 15 / 2 + 1 wall + 1.3 notch = 9.8; 20.2. The mount is 18.3 wide at least.
    {
      what: 'thick barrels',
      text: 'grid: { rows: 3, columns: 3, pitch: 30 }\nemitters: { part: { base: barrel-6x12, diameter: 15, length: 14 } }\naim: { tilt: 1 }\n',
      want: 20.2,
      says: /collar on the last barrel, 19\.6 mm wide/,
    },
    // M4: heads' rims of 2 + 2.48 + .1 = 4.58; sill behind 6 + .3 − 3 = 3.3, bracket 6 (M4 × 12 forms 6): screws at
    // 3.3 + 6 + 4.58 + .3 → 14.2 and 14.2 + 9.16 + .6 → 24, leg 24 + 4.58 + .5 → 29.1. Two and 1 between on two margins: 29.6.
    {
      what: 'a single line, held by M4',
      text: 'grid: { rows: 1, columns: 3, pitch: 22 }\nscrews: { fix: M4 }\n',
      want: 29.6,
      says: /two corner brackets/,
      axis: 1,
    },
  ] as const)('$what: $want', ({ text, want, says, ...rest }) => {
    const { value, why } = marginOf(text);
    const axis = 'axis' in rest ? rest.axis : 0;
    expect((value as readonly number[])[axis]).toBe(want);
    expect(why.split(axis === 0 ? /^/ : 'along y:').at(-1)).toMatch(says);
  });

  test('a cover far above the beams has wider openings: the margin grows with them', () => {
    const tall = (height: number) =>
      marginOf(
        `grid: { rows: 3, columns: 3, pitch: 26 }\nreceivers: { part: { base: three-leg, height: ${height} } }\n`,
      );
    const [low, high] = [tall(10), tall(20)].map(({ value }) => (value as readonly number[])[0]!);
    expect(tall(20).why).toMatch(/cover's openings/);
    // The key leans by half a notch of ten, 18°, and 1.5° of play: 10 higher, its way is 10 tan 19.5° wider.
    expect(high! - low!).toBeGreaterThan(3);
    expect(high! - low!).toBeLessThan(10 * Math.tan((19.5 * Math.PI) / 180) + 0.1);
  });
});

describe('a pinned margin', () => {
  test.for([
    { what: 'wide mounts', text: WIDE, least: 25.4 },
    {
      what: 'wide receivers',
      text: 'grid: { rows: 3, columns: 3, pitch: 30 }\nreceivers: { part: { base: three-leg, width: 20 } }\n',
      least: 21.9,
    },
    // 60 / 2, and 1 for the boundary's groove.
    { what: 'wide cells', text: 'grid: { rows: 3, columns: 3, pitch: 60 }\n', least: 31 },
  ])('$what: too small it is refused with the least that would do, which does', ({ text, least }) => {
    const at = (margin: number) => mistakesOf(`${text}frame: { margin: ${margin} }\n`);
    expect(at(least - 0.1)).toMatchObject([
      { code: 'preset/margin-too-small', path: 'frame.margin', hint: `at least ${least} mm` },
    ]);
    expect(at(least)).toEqual([]);
  });

  test('too small for two brackets it is no matter of the bed', () => {
    // One row: the field is two margins deep.
    const [mistake, ...more] = mistakesOf('grid: { rows: 1, columns: 1, pitch: 22 }\nframe: { margin: 20 }\n');
    expect(more).toEqual([]);
    expect(mistake).toMatchObject({ code: 'preset/margin-too-small', path: 'frame.margin' });
    expect(mistake!.message).toMatch(/two corner brackets/);
  });
});

describe('what the frame can’t be drawn around is refused with a figure that would do', () => {
  const GRID = 'grid: { rows: 2, columns: 3, pitch: 30 }\n';
  const receiver = (figures: string) => `receivers: { part: { base: three-leg, ${figures} } }\n`;
  test.for([
    {
      what: 'a body that reaches through its socket’s floor',
      text: (v: number) => receiver(`height: 20, sensor_from_top: ${v}`),
      bad: 15,
      path: 'receivers.part.sensor_from_top',
    },
    {
      what: 'an aperture into which the body slips',
      text: (v: number) => receiver(`width: 3, height: 3, sensor_from_top: 1.5, aperture_diameter: ${v}`),
      bad: 5,
      path: 'receivers.part.aperture_diameter',
    },
    {
      what: 'a beam that meets the socket’s screw',
      text: (v: number) =>
        `${receiver(`width: 12, height: 12, sensor_from_top: 6, aperture_diameter: ${v}`)}emitters: { part: { base: barrel-6x12, divergence_mrad: 200 } }\nbeam: { height: 8 }\nscrews: { fix: M4 }\n`,
      bad: 10,
      path: 'receivers.part.aperture_diameter',
    },
    {
      what: 'a beam that grazes the deck',
      text: (v: number) =>
        `beam: { height: ${v} }\nemitters: { part: { base: barrel-6x12, divergence_mrad: 100 } }\n${receiver('aperture_diameter: 6')}`,
      bad: 3,
      path: 'beam.height',
    },
    {
      what: 'wires as thick as their barrel',
      text: (v: number) => `emitters: { part: { base: barrel-6x12, wire_diameter: ${v} } }\n`,
      bad: 5.8,
      path: 'emitters.part.wire_diameter',
    },
    {
      what: 'walls thinner than the heads in them',
      text: (v: number) => `screws: { fix: M4 }\nframe: { wall: ${v} }\n`,
      bad: 1.4,
      path: 'frame.wall',
    },
    {
      what: 'a wide beam from a body too short for its seat',
      text: (v: number) =>
        `emitters: { part: { base: barrel-6x12, diameter: 4, length: ${v}, beam_diameter: 3.5 } }\naim: { tilt: 1 }\n${receiver('aperture_diameter: 3')}`,
      bad: 9,
      path: 'emitters.part.length',
    },
  ])('$what', ({ text, bad, path }) => {
    const [mistake, ...more] = mistakesOf(GRID + text(bad));
    expect(more).toEqual([]);
    expect(mistake).toMatchObject({ path });
    const would = Number(/at (?:least|most) ([\d.]+) mm/.exec(mistake!.hint!)![1]);
    expect(mistakesOf(GRID + text(would))).toEqual([]);
  });

  test('openings of neighbours that meet, under a cover far above the beams', () => {
    const tall = (pitch: number) =>
      mistakesOf(
        `grid: { rows: 2, columns: 3, pitch: ${pitch} }\nreceivers: { part: { base: three-leg, height: 20, width: 4 } }\n`,
      );
    const [mistake] = tall(13);
    expect(mistake).toMatchObject({ code: 'preset/pitch-too-small', path: 'grid.pitch' });
    expect(tall(Number(/at least ([\d.]+) mm/.exec(mistake!.hint!)![1]))).toEqual([]);
  });
});

test('straight barrels on a long rail: the tilt covers what warp may turn', () => {
  const text =
    'grid: { rows: 3, columns: 7, pitch: 30 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: 0.1 } }\nprinter: bed-300\n';
  const { value, why } = lay(text).solved.find(({ path }) => path === 'aim.tilt')!;
  // Warp .2 in 100, even curvature: 4 · .2 · 216 / 100² = .0173 rad = .99° over 216 = 2 · 18 + 6 · 30; 1.15 of it in half the tilt: 2.28°.
  expect(value).toBe(2.5);
  expect(why).toMatch(/216 mm long by 1°/);
});

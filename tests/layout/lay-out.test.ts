/** Layout figures worked out by hand on the plain 4 × 6 grid, pitch 22. */
import { describe, expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { layOut } from '../../src/layout/lay-out.js';
import { split } from '../../src/layout/split.js';
import { apply } from '../../src/solid/matrix.js';
import { readPreset } from '../../src/spec/read-preset.js';

const lay = (text: string) => layOut(readPreset(text, 'laid.yaml'));
const plain = lay('grid: { rows: 4, columns: 6, pitch: 22 }\nmaterial: petg\n');

test('beams stand a margin from the walls and a pitch apart', () => {
  // Margin 18: columns at 18, 40 … 128, field 2 · 18 + 5 · 22 = 146 wide, 2 · 18 + 3 · 22 = 102 deep.
  expect(plain.grid.columns).toEqual([18, 40, 62, 84, 106, 128]);
  expect(plain.grid.rows).toEqual([18, 40, 62, 84]);
  expect([plain.grid.width, plain.grid.depth]).toEqual([146, 102]);
  expect(plain.grid.columnEdges).toEqual([7, 29, 51, 73, 95, 117, 139]);
});

test('unequal cells: a beam at the middle of each', () => {
  const { grid } = lay('grid: { rows: 2, columns: [30, 20, 40], pitch: { y: 22 } }\nmaterial: petg\n');
  // Edges from the margin m less half the first cell: middles at m, m + 25, m + 55.
  const [first] = grid.columns;
  expect(grid.columns.map((x) => x - first!)).toEqual([0, 25, 55]);
});

describe('rails turn into place: each beam of a run stands where the grid has it', () => {
  for (const run of plain.runs)
    test(run.side, () => {
      for (const beam of run.beams) {
        const [x, y] = apply(run.matrix, [beam.at, 0, 0]);
        const want = beam.line === 'column' ? plain.grid.columns[beam.index] : plain.grid.rows[beam.index];
        expect(beam.line === 'column' ? x : y).toBeCloseTo(want!, 9);
        // Outward from the field wall is away from the field's middle.
        const [ox, oy] = apply(run.matrix, [beam.at, 1, 0]);
        expect(Math.hypot(ox - 73, oy - 51)).toBeGreaterThan(Math.hypot(x - 73, y - 51));
      }
    });
});

test('the axis of every barrel is at the beam height', () => {
  const { section } = plain.frame;
  expect(section.bottom + section.floor + plain.mount.axis).toBeCloseTo(5, 9);
  expect(section.bottom + section.floor + plain.socket.axis).toBeCloseTo(5, 9);
});

describe('split', () => {
  test('fits whole: no seam', () => expect(split({ length: 200, at: [100], longest: 210, shortest: 40 })).toEqual([]));
  test('the fewest pieces, as even as the places allow', () => {
    expect(split({ length: 500, at: [90, 170, 250, 330, 420], longest: 210, shortest: 50 })).toEqual([170, 330]);
  });
  test('no place will do: null', () => expect(split({ length: 300, at: [20], longest: 210, shortest: 50 })).toBeNull());
});

test('a pitch too small names the least, and that one is taken', () => {
  const ask = (pitch: number) => lay(`grid: { rows: 2, columns: 3, pitch: ${pitch} }\nmaterial: petg\n`);
  let least = 0;
  try {
    ask(9);
  } catch (error) {
    expect(error).toBeInstanceOf(PresetError);
    least = Number(/least pitch .* is ([\d.]+) mm/.exec((error as PresetError).mistakes[0]!.hint!)![1]);
  }
  expect(least).toBeGreaterThan(9);
  expect(ask(least).grid.leastPitch).toBeCloseTo(least, 9);
  expect(() => ask(least - 0.1)).toThrow(PresetError);
});

test('an emitter too short for its seat, or with a flange, gets a sleeve that holds it; one long enough gets none', () => {
  const sleeved = (part: string) => lay(`grid: { rows: 1, columns: 2, pitch: 25 }\nemitters: { part: ${part} }\n`);
  const led = sleeved('led-5-red');
  // Flange 5.9 and a free fit of .45, two walls of 1.2, up to a tenth: 8.8 across. The clamp's nut is 5 across flats (ISO 4032, M2.5).
  expect(2 * led.mount.barrel.radius).toBeCloseTo(8.8, 9);
  expect(led.mount.seat.length).toBeGreaterThan(5);
  // Light leaves at the sleeve's front: body 8.6 with its flange of 1 behind the cone's edge.
  const { coneFrom, rearBore, flange } = led.mount.sleeve!;
  expect(coneFrom! - (rearBore - flange!.radius)).toBeCloseTo(7.6, 9);
  expect(led.solved.find(({ path }) => path === 'emitters.sleeve')?.why).toMatch(/8\.6 mm long is too short/);
  expect(sleeved('{ base: led-5-red, length: 12 }').solved.find(({ path }) => path === 'emitters.sleeve')?.why).toMatch(
    /flange/,
  );
  expect(sleeved('barrel-6x12').mount.sleeve).toBeNull();
});

test('a bed too small to cut the rails for: the one that is named takes them, a millimetre less does not', () => {
  const on = (side: number) => {
    try {
      layOut(
        readPreset(
          `grid: { rows: [36, 55, 45, 43], columns: 6, pitch: { x: 20 } }\nprinter: { base: bed-180, bed_x: ${side + 10}, bed_y: ${side + 10} }\n`,
          'tried.yaml',
        ),
      );
    } catch (error) {
      return (error as PresetError).mistakes[0]!;
    }
    return null;
  };
  const named = Number(/a bed of at least (\d+) × \d+ mm/.exec(on(80)!.hint!)?.[1]);
  expect(named).toBeGreaterThan(80);
  expect(on(named - 1)?.code).toBe('preset/bed-too-small');
  expect(on(named)).toBeNull();
  // 90 takes pieces of 47 between two seams: plates reach 21 in from both, and a cover's screw with its boss of 6.9 would stand in them.
  expect(named).toBeGreaterThan(90);
});

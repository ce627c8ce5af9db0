/** Parts onto beds, and what they take. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastBeds, type Piece, packBeds, type Room } from '../../src/outputs/beds/pack.js';
import { filamentM, plasticVolume, printHours } from '../../src/outputs/beds/plastic.js';

const room: Room = { width: 100, depth: 80, spacing: 5 };
const datum = (value: number) => ({ value, source: 'this test' });

function spotsAreSound(pieces: readonly Piece[], at: Room): number {
  const beds = packBeds(pieces, at);
  const placed = beds.flat().map(({ id }) => id);
  expect([...placed].sort()).toEqual(pieces.map(({ id }) => id).sort());
  for (const bed of beds) {
    const boxes = bed.map(({ id, x, y, turned }) => {
      const { width, depth } = pieces.find((piece) => piece.id === id)!;
      return turned ? { x, y, w: depth, d: width } : { x, y, w: width, d: depth };
    });
    boxes.forEach((a, i) => {
      for (const [low, high, most] of [
        [a.x, a.x + a.w, at.width],
        [a.y, a.y + a.d, at.depth],
      ] as const) {
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(most + 1e-6);
      }
      for (const b of boxes.slice(i + 1)) {
        const apart = Math.max(b.x - a.x - a.w, a.x - b.x - b.w, b.y - a.y - a.d, a.y - b.y - b.d);
        expect(apart).toBeGreaterThanOrEqual(at.spacing - 1e-6);
      }
    });
  }
  return beds.length;
}

test('whatever the pieces: each on one bed, inside it, a spacing from its neighbours, never fewer beds than by area', () => {
  const piece = fc.record({ width: fc.integer({ min: 1, max: 80 }), depth: fc.integer({ min: 1, max: 80 }) });
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 25 }), (sizes) => {
      const pieces = sizes.map((size, i) => ({ id: String(i), ...size }));
      expect(spotsAreSound(pieces, room)).toBeGreaterThanOrEqual(leastBeds(pieces, room));
      expect(packBeds(pieces, room)).toEqual(packBeds(pieces, room));
    }),
    { seed: 7, numRuns: 60 },
  );
});

test.for([
  // By hand: four quarters of 47.5 × 37.5 with a cross of 5 between fill 100 × 80; a fifth needs a second bed.
  { what: 'four quarters', sizes: Array(4).fill([47.5, 37.5]), beds: 1 },
  { what: 'and a fifth', sizes: Array(5).fill([47.5, 37.5]), beds: 2 },
  { what: 'three strips that only fit turned', sizes: Array(3).fill([23, 95]), beds: 1 },
  { what: 'a strip as long as the bed, exactly', sizes: [[100, 80]], beds: 1 },
  { what: 'two that can never share one', sizes: Array(2).fill([60, 60]), beds: 2 },
  // A pinwheel of four around a hole, 37 + 5 + 58: no straight cut goes through it.
  { what: 'a pinwheel', sizes: Array(4).fill([58, 37]), beds: 1, at: { width: 100, depth: 100, spacing: 5 } },
])('$what: $beds', ({ sizes, beds, at = room }) => {
  const pieces = (sizes as [number, number][]).map(([width, depth], i) => ({ id: String(i), width, depth }));
  expect(spotsAreSound(pieces, at)).toBe(beds);
});

test('a piece larger than a bed is refused, with its size', () => {
  expect(() => packBeds([{ id: 'plank', width: 101, depth: 10 }], room)).toThrow(/plank, 101 × 10/);
});

test('plastic by hand: a block 20 × 30 × 10 with a skin of 3 × .45 and a fifth of the rest', () => {
  // 2 (600 + 200 + 300) = 2200 mm²; skin 2200 · 1.35 = 2970 of 6000 mm³; + .2 · 3030 = 3576.
  const printer = { lineWidth: datum(0.45), layer: datum(0.2) };
  expect(plasticVolume({ volume: 6000, area: 2200 }, printer)).toBeCloseTo(3576, 9);
  // A plate 1 thick is all skin.
  expect(plasticVolume({ volume: 600, area: 1300 }, printer)).toBe(600);
  // π/4 · 1.75² = 2.405282 mm²: 3576 mm³ are 1.486728 m.
  expect(filamentM(3576)).toBeCloseTo(1.486728, 5);
  // .45 · .2 · 60 · .6 = 3.24 mm³/s: 1103.70 s; 50 layers of 3 s; 10 min: .514917 h.
  expect(printHours({ plastic: 3576, height: 10 }, printer)).toBeCloseTo(0.514917, 5);
});

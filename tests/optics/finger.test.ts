import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockedShare, breadthAt, overlapFor, reach, reachByLight } from '../../src/optics/finger-block.js';
import { FINGERS, FINGERTIP, HAND, INDEX_FINGER, KEY_PITCH, TEST_FINGER } from '../../src/optics/finger-data.js';
import { type Hit, hitChance, hitKey, SCATTER, touchScatter } from '../../src/optics/finger-hit.js';
import { pitchFor } from '../../src/optics/finger-pitch.js';
import { normals, random } from './random.js';

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('share of the whole beam, w 2.5', () => {
  // Φ from tables: worked out for this project.
  test.for([
    { breadth: 12, offset: 0, want: 0.99999841 },
    { breadth: 12, offset: 6, want: 0.5 },
    { breadth: 12, offset: 7, want: 0.2118554 },
    { breadth: 2, offset: 0, want: 0.5762892 },
  ])('strip of $breadth at $offset: $want', ({ breadth, offset, want }) => {
    expect(blockedShare({ breadth, offset }, { w: 2.5 })).toBeCloseTo(want, 7);
    expect(blockedShare({ breadth, offset: -offset }, { w: 2.5 })).toBeCloseTo(want, 7);
  });
});

describe('share of what passes the aperture, R 1.5, w 2.5', () => {
  const lit = { w: 2.5, aperture: { radius: 1.5 } };
  test.for([
    { breadth: 12, offset: 7, want: 0.08894878 },
    { breadth: 12, offset: 5, want: 0.91105122 },
    { breadth: 12, offset: 7.5, want: 0 },
    { breadth: 12, offset: 0, want: 1 },
    { breadth: 40, offset: 20, want: 0.5 },
  ])('strip of $breadth at $offset: $want', ({ breadth, offset, want }) => {
    expect(blockedShare({ breadth, offset }, lit)).toBeCloseTo(want, 7);
  });

  /** The plain double sum over small squares, for any beam, aperture and strip. */
  function bySquares(
    strip: { breadth: number; offset: number },
    w: number,
    radius: number,
    off: readonly [number, number],
  ) {
    const n = 900;
    let [whole, taken] = [0, 0];
    for (let i = 0; i < n; i += 1)
      for (let j = 0; j < n; j += 1) {
        const [x, y] = [radius * ((2 * i + 1) / n - 1), radius * ((2 * j + 1) / n - 1)];
        if (x * x + y * y > radius * radius) continue;
        const [bx, by] = [x + off[0], y + off[1]];
        const light = Math.exp((-2 * (bx * bx + by * by)) / (w * w));
        whole += light;
        if (Math.abs(bx - strip.offset) < strip.breadth / 2) taken += light;
      }
    return taken / whole;
  }
  test('held to the double sum in two dimensions, beside the beam too', () => {
    const next = random(31);
    for (let i = 0; i < 12; i += 1) {
      const [w, radius] = [0.4 + 3 * next(), 0.3 + 2.5 * next()];
      const strip = { breadth: 0.5 + 4 * next(), offset: 4 * next() - 2 };
      const off = [1.4 * next() - 0.7, 1.4 * next() - 0.7] as const;
      const want = bySquares(strip, w, radius, off);
      expect(Math.abs(blockedShare(strip, { w, aperture: { radius, off } }) - want)).toBeLessThan(4e-3);
    }
  });
  test('held to rays drawn at random', () => {
    const next = random(77);
    const strip = { breadth: 3, offset: 1.2 };
    let [through, taken] = [0, 0];
    for (let i = 0; i < 150_000; i += 1) {
      const [x, y] = normals(next).map((z) => 1.25 * z) as [number, number];
      if (Math.hypot(x, y) > 1.5) continue;
      through += 1;
      if (Math.abs(x - strip.offset) < 1.5) taken += 1;
    }
    const want = blockedShare(strip, lit);
    expect(Math.abs(taken / through - want)).toBeLessThan(4 * Math.sqrt((want * (1 - want)) / through));
  });

  test('an aperture wider than the beam takes the whole of it, one of no size its middle', () => {
    const strip = { breadth: 1.7, offset: 0.9 };
    expect(blockedShare(strip, { w: 0.8, aperture: { radius: 40 } })).toBeCloseTo(blockedShare(strip, { w: 0.8 }), 9);
    expect(blockedShare(strip, { w: 0.8, aperture: { radius: 0.01 } })).toBe(0);
    expect(blockedShare({ breadth: 1.7, offset: 0.8 }, { w: 0.8, aperture: { radius: 0.01 } })).toBe(1);
  });

  test('a thin beam anywhere in a wide aperture is taken as the whole of it', () => {
    const strip = { breadth: 0.1, offset: 0.06 };
    for (const off of [
      [3, 0],
      [-3, 0],
      [0, 3],
      [0, -3],
    ] as const)
      expect(blockedShare(strip, { w: 0.2, aperture: { radius: 4, off } })).toBeCloseTo(
        blockedShare(strip, { w: 0.2 }),
        6,
      );
  });

  test('grows with breadth, falls with offset, lies from 0 to 1; two halves make the whole', () => {
    fc.assert(
      fc.property(figure(0, 30), figure(0, 12), figure(0.2, 6), figure(0.2, 4), (breadth, offset, w, radius) => {
        const of = { w, aperture: { radius } };
        const share = blockedShare({ breadth, offset }, of);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
        expect(blockedShare({ breadth: breadth + 0.3, offset }, of)).toBeGreaterThanOrEqual(share - 1e-9);
        expect(blockedShare({ breadth, offset: offset + 0.3 }, of)).toBeLessThanOrEqual(share + 1e-9);
        const half = (sign: number) =>
          blockedShare({ breadth: breadth / 2, offset: offset + (sign * breadth) / 4 }, of);
        expect(half(-1) + half(1)).toBeCloseTo(share, 8);
      }),
    );
  });
  test('refuses nonsense', () => {
    expect(() => blockedShare({ breadth: -1, offset: 0 }, lit)).toThrow('breadth');
    expect(() => blockedShare({ breadth: 1, offset: Number.NaN }, lit)).toThrow('offset');
    expect(() => blockedShare({ breadth: 1, offset: 0 }, { w: 0 })).toThrow('w must');
    expect(() => blockedShare({ breadth: 1, offset: 0 }, { w: 1, aperture: { radius: 0 } })).toThrow('radius');
  });
});

describe('round fingertip, and where a receiver flips', () => {
  test.for([
    { breadth: 16, height: 3, want: 12.489996 },
    { breadth: 12, height: 3, want: 10.392305 },
    { breadth: 12, height: 6, want: 12 },
    { breadth: 12, height: 9, want: 12 },
  ])('Ø$breadth at $height: $want (chord of a circle)', ({ breadth, height, want }) =>
    expect(breadthAt(breadth, height)).toBeCloseTo(want, 6),
  );
  test('by hand: 12.49 broad, overlap 2: 4.245 beside the beam; a finger narrower than 2 c never flips it', () => {
    expect(reach(12.489996, 2)).toBeCloseTo(4.244998, 6);
    expect(reach(4, 2)).toBeNull();
    expect(reach(10, -1)).toBe(6);
  });
  test('overlap by light: half the light is no overlap; 1 σ takes .841345 of the beam', () => {
    expect(overlapFor(0.5, { w: 2.5 })).toBeCloseTo(0, 9);
    expect(overlapFor(0.8413447460685429, { w: 2.5 })).toBeCloseTo(1.25, 8);
    // From the table: an edge 1 past the middle leaves .08894878 through R 1.5.
    expect(overlapFor(0.91105122, { w: 2.5, aperture: { radius: 1.5 } })).toBeCloseTo(1, 6);
    expect(overlapFor(0.08894878, { w: 2.5, aperture: { radius: 1.5 } })).toBeCloseTo(-1, 6);
  });
  test('a broad finger’s reach by light is f/2 − c; a narrow one’s is what the light says', () => {
    fc.assert(
      fc.property(figure(12, 24), figure(0.05, 0.99), figure(0.4, 3), figure(0.3, 2), (breadth, needed, w, radius) => {
        const lit = { w, aperture: { radius } };
        const c = overlapFor(needed, lit);
        // The far edge lies in the dark, so only one edge counts.
        expect(reachByLight(breadth, needed, lit)).toBeCloseTo(breadth / 2 - c, 6);
      }),
    );
    const narrow = reachByLight(2, 0.5, { w: 2.5 })!;
    expect(blockedShare({ breadth: 2, offset: narrow }, { w: 2.5 })).toBeCloseTo(0.5, 9);
    expect(reachByLight(2, 0.6, { w: 2.5 })).toBeNull();
  });
  test('refuses nonsense', () => {
    expect(() => overlapFor(1, { w: 1 })).toThrow('needed');
    expect(() => reachByLight(12, 0, { w: 1 })).toThrow('needed');
    expect(() => reachByLight(12, 0.5, { w: 1, aperture: { radius: 1, off: [0.2, 0] } })).toThrow('two different');
    expect(() => breadthAt(12, 0)).toThrow('height');
  });
});

describe('chance of hitting', () => {
  // Worked out for this project; the scatter of 1.84 only tests the formula.
  test.for([
    { pitch: 19, twice: 16, aimed: 0.99998625, double: 0, wrong: 0, none: 1.375e-5 },
    { pitch: 19, twice: 24, aimed: 0.99985782, double: 1.4218e-4, wrong: 0, none: 0 },
    { pitch: 15, twice: 16, aimed: 0.99985782, double: 1.2843e-4, wrong: 1.375e-5, none: 0 },
  ])('pitch $pitch, 2 b $twice', ({ pitch, twice, aimed, double, wrong, none }) => {
    const hit = hitChance({ pitch, reach: twice / 2, scatter: 1.84 });
    expect(hit.aimed).toBeCloseTo(aimed, 8);
    expect(hit.double).toBeCloseTo(double, 8);
    expect(hit.wrong).toBeCloseTo(wrong, 8);
    expect(hit.none).toBeCloseTo(none, 8);
  });

  const counts = (
    draw: () => number,
    { pitch, reach: b, lines }: { pitch: number; reach: number; lines: readonly number[] },
    n: number,
  ): Hit => {
    const seen = { aimed: 0, double: 0, wrong: 0, none: 0 };
    for (let i = 0; i < n; i += 1) {
      const x = draw();
      const flipped = lines.filter((k) => Math.abs(x - k * pitch) < b);
      if (flipped.length === 0) seen.none += 1 / n;
      else if (!flipped.includes(0)) seen.wrong += 1 / n;
      else if (flipped.length === 1) seen.aimed += 1 / n;
      else seen.double += 1 / n;
    }
    return seen;
  };
  test.for([
    { row: 'gaps', pitch: 19, reach: 6, scatter: 4, bias: 0, from: -4, to: 4, seed: 1 },
    { row: 'doubles', pitch: 12, reach: 8, scatter: 4, bias: 1.5, from: -6, to: 6, seed: 2 },
    { row: 'three at once', pitch: 7, reach: 9, scatter: 5, bias: -2, from: -9, to: 9, seed: 3 },
    { row: 'the last line', pitch: 10, reach: 7, scatter: 6, bias: 0, from: -9, to: 0, seed: 4 },
    { row: 'a single line', pitch: 10, reach: 7, scatter: 6, bias: 3, from: 0, to: 0, seed: 5 },
  ])('100 000 touches drawn at random: $row', ({ pitch, reach: b, scatter, bias, from, to, seed }) => {
    const next = random(seed);
    const lines = Array.from({ length: to - from + 1 }, (_, i) => from + i);
    const n = 100_000;
    const seen = counts(() => bias + scatter * normals(next)[0], { pitch, reach: b, lines }, n);
    const want = hitChance({ pitch, reach: b, scatter, bias, neighbours: [-from, to] });
    for (const outcome of ['aimed', 'double', 'wrong', 'none'] as const)
      expect(Math.abs(seen[outcome] - want[outcome])).toBeLessThan(
        4 * Math.sqrt((want[outcome] * (1 - want[outcome])) / n) + 1e-9,
      );
  });

  test('sums to 1; no double up to 2 b = p, no gap from there on', () => {
    fc.assert(
      fc.property(figure(5, 40), figure(0.5, 45), figure(0.3, 12), figure(-6, 6), (pitch, b, scatter, bias) => {
        const hit = hitChance({ pitch, reach: b, scatter, bias });
        expect(hit.aimed + hit.double + hit.wrong + hit.none).toBeCloseTo(1, 12);
        if (2 * b <= pitch) expect(hit.double).toBe(0);
        // The list of lines ends 9 s out: what lies beyond is no gap.
        if (2 * b > pitch) expect(hit.none).toBeLessThan(1e-15);
      }),
    );
  });
  test('a touch far beside its line finds the lines there: no gap, the wrong line', () => {
    const hit = hitChance({ pitch: 10, reach: 6, scatter: 0.5, bias: 60 });
    expect(hit.wrong).toBeCloseTo(1, 12);
  });
  test('both axes multiply: keys drawn at random', () => {
    const next = random(6);
    const x = { pitch: 12, reach: 8, scatter: 4 };
    const y = { pitch: 15, reach: 6, scatter: 5 };
    const seen = { aimed: 0, double: 0, wrong: 0, none: 0 };
    const n = 100_000;
    const lines = Array.from({ length: 15 }, (_, i) => i - 7);
    for (let i = 0; i < n; i += 1) {
      const [zx, zy] = normals(next);
      const columns = lines.filter((k) => Math.abs(4 * zx - k * 12) < 8);
      const rows = lines.filter((k) => Math.abs(5 * zy - k * 15) < 6);
      const keys = columns.length * rows.length;
      const right = columns.includes(0) && rows.includes(0);
      seen[keys === 0 ? 'none' : !right ? 'wrong' : keys === 1 ? 'aimed' : 'double'] += 1 / n;
    }
    const want = hitKey(hitChance(x), hitChance(y));
    expect(want.aimed + want.double + want.wrong + want.none).toBeCloseTo(1, 12);
    for (const outcome of ['aimed', 'double', 'wrong', 'none'] as const)
      expect(Math.abs(seen[outcome] - want[outcome])).toBeLessThan(
        4 * Math.sqrt((want[outcome] * (1 - want[outcome])) / n),
      );
  });
  test('refuses nonsense', () => {
    expect(() => hitChance({ pitch: 0, reach: 1, scatter: 1 })).toThrow('pitch');
    expect(() => hitChance({ pitch: 1, reach: 1, scatter: 1, neighbours: [0.5, 1] })).toThrow('neighbours');
    expect(() => hitChance({ pitch: 1, reach: 1, scatter: 1, bias: Infinity })).toThrow('bias');
  });
});

describe('touch scatter, Bi & Zhai 2013 as restated', () => {
  test('19 mm: 2.094636 across, 2.286657 along (by hand: √(.0075 · 361 + 1.68), √(.0108 · 361 + 1.33))', () => {
    expect(touchScatter(19, 'x')).toBeCloseTo(2.094636, 6);
    expect(touchScatter(19, 'y')).toBeCloseTo(2.286657, 6);
    expect(SCATTER.source).toMatch(/Bi & Zhai 2013/);
    expect(() => touchScatter(-1, 'x')).toThrow('size');
  });
});

describe('pitch', () => {
  const ask = {
    axis: 'x',
    breadths: [12, 16, 20],
    height: 5,
    overlap: 1,
    from: 8,
    to: 40,
    step: 0.5,
    wanted: 0.99,
  } as const;

  test('least and best are what trying each pitch by hand says', () => {
    // By hand: effective breadths at 5: 2 √(5 · 7), 2 √(5 · 11), 2 √(5 · 15); reach half of it less 1.
    const reaches = [2 * Math.sqrt(35), 2 * Math.sqrt(55), 2 * Math.sqrt(75)].map((f) => f / 2 - 1);
    const worst = (p: number) =>
      Math.min(...reaches.map((b) => hitChance({ pitch: p, reach: b, scatter: touchScatter(p, 'x') }).aimed));
    const pitches = Array.from({ length: 65 }, (_, i) => 8 + i / 2);
    const { least, best, sure } = pitchFor(ask)!;
    expect(least!.pitch).toBe(pitches.find((p) => worst(p) >= 0.99));
    expect(best.aimed).toBeCloseTo(Math.max(...pitches.map(worst)), 12);
    expect(worst(best.pitch)).toBeCloseTo(best.aimed, 12);
    expect(least!.pitch).toBeLessThan(best.pitch);
    // Doubles end at 2 b of the broadest, 15.32; gaps begin at that of the narrowest, 9.83: no pitch is sure for all three.
    expect(sure.from).toBeCloseTo(2 * reaches[2]!, 9);
    expect(sure.to).toBeCloseTo(2 * reaches[0]!, 9);
    expect(sure.from).toBeGreaterThan(sure.to);
  });
  test('neither end is best, and the finger that limits changes from the broadest to the narrowest', () => {
    const at = (p: number) => pitchFor({ ...ask, from: p, to: p })!.best;
    const { best } = pitchFor(ask)!;
    expect(at(8).aimed).toBeLessThan(best.aimed);
    expect(at(40).aimed).toBeLessThan(best.aimed);
    expect(at(12).worst).toBe(20);
    expect(at(40).worst).toBe(12);
  });
  test('every pitch up to the last is tried: a broad finger does best at the end', () => {
    // By hand: 30 broad at 20, above its middle; reach 14, so doubles fall all the way to 28.
    const broad = { ...ask, breadths: [30], height: 20, from: 20, to: 28, step: 0.5 };
    const { best, least } = pitchFor({ ...broad, wanted: 0.9999 })!;
    const at = (p: number) => hitChance({ pitch: p, reach: 14, scatter: touchScatter(p, 'x') }).aimed;
    const pitches = Array.from({ length: 17 }, (_, i) => 20 + i / 2);
    expect(best.aimed).toBeCloseTo(Math.max(...pitches.map(at)), 12);
    expect(at(best.pitch)).toBeCloseTo(best.aimed, 12);
    expect(best.pitch).toBeGreaterThan(24);
    expect(least!.pitch).toBe(pitches.find((p) => at(p) >= 0.9999));
  });
  test('one breadth has a pitch that is sure: p = 2 b', () => {
    const { sure } = pitchFor({ ...ask, breadths: [16] })!;
    expect(sure.from).toBe(sure.to);
  });
  test('none suffices: null; a finger that flips nothing: no answer', () => {
    expect(pitchFor({ ...ask, to: 10, wanted: 0.999999 })!.least).toBeNull();
    expect(pitchFor({ ...ask, overlap: 6 })).toBeNull();
  });
  test('refuses nonsense', () => {
    expect(() => pitchFor({ ...ask, to: 7 })).toThrow('upward');
    expect(() => pitchFor({ ...ask, breadths: [] })).toThrow('fingers');
    expect(() => pitchFor({ ...ask, wanted: 1 })).toThrow('wanted');
  });
});

test('breadths and pitches as tabled, each with its source', () => {
  const values = (of: readonly { readonly breadth: { readonly value: number } }[]) =>
    of.map(({ breadth }) => breadth.value);
  // FAA HFDS appendix B, second-hand; ANSUR II; Dandekar 2003; IEC 61032; ISO 9241-4.
  expect(values(INDEX_FINGER)).toEqual([19, 21, 23, 16, 18, 21]);
  expect(values(HAND)).toEqual([81, 88, 96, 72, 78, 85]);
  expect([FINGERTIP.least.value, FINGERTIP.most.value, TEST_FINGER.value]).toEqual([16, 20, 12]);
  expect(FINGERS.map(({ value }) => value)).toEqual([12, 16, 18, 20, 23]);
  expect([KEY_PITCH.main.value, KEY_PITCH.tolerance.value, KEY_PITCH.elsewhere.value]).toEqual([19, 1, 15]);
  const sources = [...INDEX_FINGER, ...HAND].map(({ breadth }) => breadth.source);
  for (const source of [...sources, ...FINGERS.map((f) => f.source), KEY_PITCH.main.source])
    expect(source).toMatch(/\w{3}.*\d/);
});

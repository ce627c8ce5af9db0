import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ScanLine, shareOut } from '../../src/optics/scan-channels.js';
import { leastPullUp, pullUpCurrent, settlingTime } from '../../src/optics/scan-electric.js';
import { planScan, type ScanAsk } from '../../src/optics/scan-plan.js';
import { random } from './random.js';

const some = (line: 'row' | 'column', count: number, board: string): ScanLine[] =>
  Array.from({ length: count }, (_, index) => ({ name: `${line}-${index}`, line, index, board }));
const ask = (lines: readonly ScanLine[], change: Partial<ScanAsk> = {}): ScanAsk => ({
  lines,
  channels: 8,
  address: 'shared',
  sparePins: 0,
  addressTime: 1e-6,
  settleTime: 10e-6,
  readTime: 12e-6,
  lightTime: 0,
  debounce: 3,
  pullUp: { resistance: 10_000, supply: 5, low: 0.5 },
  lowWhileLit: true,
  ...change,
});

describe('electric', () => {
  test('settling, Analog Devices AN-1024 as restated: 10 bits take 6.931472 R C', () => {
    expect(settlingTime({ resistance: 1, capacitance: 1, bits: 10 })).toBeCloseTo(6.931472, 6);
    // By hand: what is left after it, exp(−t/RC), is 2^−12.
    const t = settlingTime({ resistance: 4700, capacitance: 220e-12, bits: 12 });
    expect(Math.exp(-t / (4700 * 220e-12))).toBeCloseTo(2 ** -12, 15);
  });
  test('pull-up, by hand: 5 V, .5 V, 10 kΩ: .45 mA, and back', () => {
    expect(pullUpCurrent({ supply: 5, low: 0.5, resistance: 10_000 })).toBeCloseTo(0.45e-3, 12);
    expect(leastPullUp({ supply: 5, low: 0.5, current: 0.45e-3 })).toBeCloseTo(10_000, 8);
  });
  test('refuses a low level that is none', () => {
    expect(() => pullUpCurrent({ supply: 3, low: 3, resistance: 1 })).toThrow('low');
    expect(() => settlingTime({ resistance: 0, capacitance: 1, bits: 1 })).toThrow('resistance');
    expect(() => leastPullUp({ supply: 5, low: 1, current: 0 })).toThrow('current');
  });
});

describe('scan time', () => {
  test('worked: 24 lines, 8 channels, 1/10/12 µs, shared address: 376 µs', () => {
    const { scanTime, rate, addresses, multiplexers, pins } = planScan(ask(some('row', 24, 'a')));
    expect(scanTime).toBeCloseTo(376e-6, 12);
    expect(rate).toBeCloseTo(1 / 376e-6, 6);
    expect(addresses).toBe(8);
    expect(multiplexers).toEqual(['a', 'a', 'a']);
    expect(pins).toEqual({ address: 3, enable: 0, input: 3, direct: 0, all: 6 });
  });
  test('by hand: the same one line at a time: 24 · 23 µs; lit line by line at 200 µs, 24 · 223 µs', () => {
    const single = planScan(ask(some('row', 24, 'a'), { address: 'single' }));
    expect(single.scanTime).toBeCloseTo(24 * 23e-6, 12);
    expect(single.pins).toEqual({ address: 3, enable: 3, input: 1, direct: 0, all: 7 });
    const lit = planScan(ask(some('row', 24, 'a'), { address: 'single', lightTime: 200e-6 }));
    expect(lit.scanTime).toBeCloseTo(24 * 223e-6, 12);
  });
  test('by hand: 4 rows and 6 columns on their boards: 6 addresses, 10 readings', () => {
    const { scanTime, addresses } = planScan(ask([...some('column', 6, 'near'), ...some('row', 4, 'right')]));
    expect(addresses).toBe(6);
    expect(scanTime).toBeCloseTo(6 * 11e-6 + 10 * 12e-6, 12);
  });
  test('by hand: one at a time goes multiplexer by multiplexer, whatever the order of the lines', () => {
    const lines = [
      { name: 'a0', line: 'row', index: 0, board: 'a' },
      { name: 'b0', line: 'column', index: 0, board: 'b' },
      { name: 'a1', line: 'row', index: 1, board: 'a' },
    ] as const;
    const { table } = planScan(ask(lines, { address: 'single' }));
    expect(table.map(({ readAt }) => Math.round(1e6 * readAt))).toEqual([23, 69, 46]);
  });
  test('spare pins save the multiplexer of a rest: 9 lines, one pin', () => {
    const plan = planScan(ask(some('row', 9, 'a'), { sparePins: 3 }));
    expect(plan.multiplexers).toHaveLength(1);
    expect(plan.pins.direct).toBe(1);
    expect(plan.scanTime).toBeCloseTo(8 * 11e-6 + 9 * 12e-6, 12);
    expect(plan.table.at(-1)!.place).toEqual({ kind: 'pin', pin: 0 });
  });
  test('few lines need no multiplexer at all', () => {
    const plan = planScan(ask(some('row', 5, 'a'), { sparePins: 6 }));
    expect(plan.pins).toEqual({ address: 0, enable: 0, input: 0, direct: 5, all: 5 });
    expect(plan.scanTime).toBeCloseTo(5 * 12e-6, 12);
  });
  test('no more than n (t_addr + t_settle + B t_read), whatever the lines', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.constantFrom(8 as const, 16 as const), (count, channels) => {
        const { scanTime, multiplexers } = planScan(ask(some('row', count, 'a'), { channels }));
        expect(multiplexers).toHaveLength(Math.ceil(count / channels));
        expect(scanTime).toBeLessThanOrEqual(channels * (11e-6 + multiplexers.length * 12e-6) + 1e-12);
        if (count % channels === 0) expect(scanTime).toBeCloseTo(channels * (11e-6 + multiplexers.length * 12e-6), 12);
      }),
    );
  });
  test('the table says pull-up, polarity and when each line is read', () => {
    const { table, pullUpCurrent: sinks } = planScan(ask(some('row', 3, 'a')));
    expect(table.map(({ readAt }) => readAt)).toEqual([23e-6, 46e-6, 69e-6].map((t) => expect.closeTo(t, 12)));
    expect(table[1]).toMatchObject({
      pullUp: 10_000,
      lowWhileLit: true,
      place: { kind: 'multiplexer', multiplexer: 0, address: 1 },
    });
    expect(sinks).toBeCloseTo(0.45e-3, 12);
  });
  test('refuses nonsense', () => {
    expect(() => planScan(ask([]))).toThrow('lines');
    expect(() => planScan(ask(some('row', 2, 'a'), { debounce: 0 }))).toThrow('debounce');
    expect(() => planScan(ask(some('row', 2, 'a'), { debounce: 1.5 }))).toThrow('whole');
    expect(() => planScan(ask(some('row', 2, 'a'), { sparePins: -1 }))).toThrow('spare');
    expect(() => planScan(ask([...some('row', 2, 'a'), ...some('row', 1, 'b')]))).toThrow('unique');
  });
});

describe('channels', () => {
  const boards = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 4 });
  const size = fc.constantFrom(8 as const, 16 as const);
  const linesOf = (counts: readonly number[]) =>
    counts.flatMap((count, b) =>
      some(b % 2 ? 'row' : 'column', count, `board ${b}`).map((line) => ({ ...line, name: `${b}-${line.index}` })),
    );

  test('every line has a place of its own, on a multiplexer of its board, at an address that exists', () => {
    fc.assert(
      fc.property(boards, size, fc.integer({ min: 0, max: 30 }), (counts, channels, spare) => {
        const lines = linesOf(counts);
        const plan = shareOut(lines, channels, spare);
        expect(plan.channels.map(({ line }) => line)).toEqual(lines);
        expect(new Set(plan.channels.map(({ place }) => JSON.stringify(place))).size).toBe(lines.length);
        expect(plan.pins).toBeLessThanOrEqual(spare);
        const filled = plan.multiplexers.map(() => 0);
        for (const { line, place } of plan.channels) {
          if (place.kind === 'pin') continue;
          expect(plan.multiplexers[place.multiplexer]).toBe(line.board);
          expect(place.address).toBeGreaterThanOrEqual(0);
          expect(place.address).toBeLessThan(channels);
          filled[place.multiplexer]! += 1;
        }
        // Addresses are the first ones without a gap, and a board's multiplexers differ by one line at most.
        for (const [chip, count] of filled.entries()) {
          const used = plan.channels.flatMap(({ place }) =>
            place.kind === 'multiplexer' && place.multiplexer === chip ? [place.address] : [],
          );
          expect([...used].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
          const mates = filled.filter((_, other) => plan.multiplexers[other] === plan.multiplexers[chip]);
          expect(Math.max(...mates) - Math.min(...mates)).toBeLessThanOrEqual(1);
        }
        expect(shareOut(lines, channels, spare)).toEqual(plan);
      }),
    );
  });

  test('no other use of the spare pins saves more multiplexers (every use tried)', () => {
    fc.assert(
      fc.property(boards, size, fc.integer({ min: 0, max: 20 }), (counts, channels, spare) => {
        const fewest = (left: readonly number[], pins: number): number => {
          if (left.length === 0) return 0;
          const [count, ...rest] = left;
          let best = Infinity;
          for (let direct = 0; direct <= Math.min(pins, count!); direct += 1)
            best = Math.min(best, Math.ceil((count! - direct) / channels) + fewest(rest, pins - direct));
          return best;
        };
        expect(shareOut(linesOf(counts), channels, spare).multiplexers).toHaveLength(fewest(counts, spare));
      }),
      { numRuns: 40, seed: 9 },
    );
  });
});

describe('latency', () => {
  test('by hand: one row and one column, 46 µs a scan, both read after the address has settled', () => {
    // Sampled at 11 and 34 µs; k = 3: worst 3 · 46 + 46 − 11, mean 3 · 46 + 23 − 11.
    const { latency, scanTime } = planScan(ask([...some('column', 1, 'a'), ...some('row', 1, 'a')]));
    expect(scanTime).toBeCloseTo(46e-6, 12);
    expect(latency.worst).toBeCloseTo(173e-6, 12);
    expect(latency.mean).toBeCloseTo(150e-6, 12);
  });

  test.for([
    { columns: 6, rows: 4, change: {}, seed: 1 },
    { columns: 9, rows: 3, change: { address: 'single', debounce: 1, lightTime: 40e-6 } as const, seed: 2 },
    { columns: 12, rows: 5, change: { sparePins: 5, channels: 16, debounce: 2 } as const, seed: 3 },
    { columns: 7, rows: 0, change: {}, seed: 4 },
  ])('$columns × $rows: fingers that arrive at random, scan by scan', ({ columns, rows, change, seed }) => {
    const asked = ask([...some('column', columns, 'near'), ...some('row', rows, 'right')], change);
    const { table, scanTime, latency } = planScan(asked);
    const next = random(seed);
    const sampledAt = (line: 'row' | 'column', i: number) =>
      table.find((row) => row.line.line === line && row.line.index === i)!.readAt - asked.readTime;
    let [sum, worst] = [0, 0];
    const fingers = 40_000;
    for (let i = 0; i < fingers; i += 1) {
      const arrives = next() * scanTime;
      const samples = [sampledAt('column', Math.floor(next() * columns))];
      if (rows > 0) samples.push(sampledAt('row', Math.floor(next() * rows)));
      let equal = 0;
      let scan = 0;
      for (; equal < asked.debounce; scan += 1)
        equal = samples.every((at) => scan * scanTime + at >= arrives) ? equal + 1 : 0;
      const wait = scan * scanTime - arrives;
      sum += wait;
      worst = Math.max(worst, wait);
    }
    expect(worst).toBeLessThanOrEqual(latency.worst);
    expect(worst).toBeGreaterThan(latency.worst - 0.03 * scanTime);
    // The wait varies by less than a scan: four standard errors of its mean.
    expect(Math.abs(sum / fingers - latency.mean)).toBeLessThan((4 * scanTime) / Math.sqrt(fingers));
  });
});

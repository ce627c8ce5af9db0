import { describe, expect, test } from 'vitest';
import { alignable } from '../../src/optics/aim.js';
import { exceeds } from '../../src/optics/boresight.js';
import { bankChance, channelChance, enough, tiltChance, tiltFor, toBuy, yawChance } from '../../src/optics/chance.js';
import { bestWedge, leanedChance, leanedTail, tiltForLeaned } from '../../src/optics/wedge.js';
import { normals, random } from './random.js';

const reach = (tilt: number, tolerance = 0, slide = 0) => ({ tilt: [-tilt, tilt] as const, tolerance, slide });

describe('one channel, degrees; worked out for this project by quadrature to eight digits', () => {
  test.for([
    { se: 1, sx: 0.5, sy: 0.5, tilt: 2, tolerance: 0, rayleigh: 0.83448855, half: 0.68656999 },
    { se: 1, sx: 0.5, sy: 0.5, tilt: 3, tolerance: 0.2864789, rayleigh: 0.95836224, half: 0.86649878 },
    { se: 0.3, sx: 0.5, sy: 0.5, tilt: 3, tolerance: 0.2864789, rayleigh: 0.78360814, half: 0.67771075 },
    { se: 1, sx: 0.3, sy: 0.6, tilt: 2, tolerance: 0.2, rayleigh: 0.9513686, half: 0.91882632 },
  ])(
    'boresight $se, yaw $sx, tilt $sy, ±$tilt, tolerance $tolerance',
    ({ se, sx, sy, tilt, tolerance, rayleigh, half }) => {
      const mounting = { yaw: sx, tilt: sy };
      expect(channelChance({ kind: 'rayleigh', sigma: se }, mounting, reach(tilt, tolerance))).toBeCloseTo(rayleigh, 7);
      expect(channelChance({ kind: 'half-normal', sigma: se }, mounting, reach(tilt, tolerance))).toBeCloseTo(half, 7);
    },
  );
  test('±1° alone', () => {
    expect(channelChance({ kind: 'rayleigh', sigma: 1 }, { yaw: 0.5, tilt: 0.5 }, reach(1))).toBeCloseTo(0.54212148, 7);
  });
});

describe('closed forms', () => {
  test.for([
    [1, 0.5, 2],
    [0.4, 0.7, 1],
    [2, 0.3, 0.6],
  ] as const)('Rayleigh %f, mounts %f, ±%f: yaw times tilt is the integral', ([se, sm, tilt]) => {
    const p = (se / Math.hypot(se, sm)) * tiltChance({ se, sm, tilt });
    expect(channelChance({ kind: 'rayleigh', sigma: se }, { yaw: sm, tilt: sm }, reach(tilt))).toBeCloseTo(p, 8);
  });
  test('with all the tilt one could want only the yaw decides', () => {
    for (const tolerance of [0.01, 0.3, 1])
      expect(channelChance({ kind: 'rayleigh', sigma: 1 }, { yaw: 0.5, tilt: 0.5 }, reach(20, tolerance))).toBeCloseTo(
        yawChance({ kind: 'rayleigh', sigma: 1 }, 0.5, tolerance),
        7,
      );
    // Half-normal: (2/π) atan(σe/σm).
    expect(channelChance({ kind: 'half-normal', sigma: 1 }, { yaw: 0.5, tilt: 0.5 }, reach(20))).toBeCloseTo(
      (2 / Math.PI) * Math.atan(2),
      6,
    );
  });
  test.for([
    [0.5, 0.805186],
    [0.9, 1.814331],
    [0.95, 2.127034],
    [0.99, 2.73269],
  ] as const)('tilt that is enough for %f of the channels (1, .5): %f°', ([share, want]) => {
    expect(tiltFor(share, { se: 1, sm: 0.5 })).toBeCloseTo(want, 5);
  });
});

describe('drawn channels', () => {
  test('slide, one-sided tilt and a shared yaw agree with 400 000 draws', () => {
    const cases = [
      { mounting: { yaw: 0.4, tilt: 0.6 }, reach: { tilt: [-1, 1.5] as const, tolerance: 0.15, slide: 0.4 } },
      { mounting: { yaw: 0.5, tilt: 0.3, shared: 0.7 }, reach: { tilt: [-2, 2] as const, tolerance: 0.1, slide: 0.2 } },
    ];
    for (const one of cases) {
      const [next, n] = [random(3), 400_000];
      let good = 0;
      for (let i = 0; i < n; i += 1) {
        const [a, b] = normals(next);
        const [c, d] = normals(next);
        const { from, to } = alignable(
          [(one.mounting.shared ?? 0) + one.mounting.yaw * c, one.mounting.tilt * d],
          one.reach,
        );
        const error = Math.hypot(a, b);
        if (error >= from && error <= to) good += 1;
      }
      const p = channelChance({ kind: 'rayleigh', sigma: 1 }, one.mounting, one.reach);
      expect(Math.abs(good / n - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / n));
    }
  });
});

describe('a whole rail', () => {
  const bank = {
    count: 12,
    law: { kind: 'rayleigh', sigma: 1 },
    mounting: { yaw: 0.5, tilt: 0.5 },
    reach: reach(3, 0.2, 0.3),
  } as const;
  test('without a shared yaw it is the power of one', () => {
    expect(bankChance(bank)).toBeCloseTo(channelChance(bank.law, bank.mounting, bank.reach) ** 12, 12);
    expect(bankChance({ ...bank, count: 0 })).toBe(1);
  });
  test('a yaw that all share makes the channels’ luck one: better than as many independent ones with that scatter', () => {
    const shared = bankChance({ ...bank, railYaw: 0.5 });
    const apart = channelChance(bank.law, { yaw: Math.hypot(0.5, 0.5), tilt: 0.5 }, bank.reach) ** 12;
    expect(shared).toBeGreaterThan(apart + 0.01);
    expect(shared).toBeLessThan(bankChance(bank));
    // One channel alone does not know the two apart.
    expect(bankChance({ ...bank, count: 1, railYaw: 0.5 })).toBeCloseTo(
      channelChance(bank.law, { yaw: Math.hypot(0.5, 0.5), tilt: 0.5 }, bank.reach),
      4,
    );
  });
});

describe('spares', () => {
  test.for([
    [19, 0.445252],
    [21, 0.944992],
    [23, 0.997744],
  ] as const)('19 lines at .958309 each, %d bought: %f', ([bought, want]) => {
    expect(enough(19, bought, 0.958309)).toBeCloseTo(want, 6);
  });
  test('to buy: the first number that is enough', () => {
    expect(toBuy(19, { chance: 0.958309, confidence: 0.94 })).toBe(21);
    expect(toBuy(19, { chance: 0.958309, confidence: 0.95 })).toBe(22);
    expect(toBuy(5, { chance: 1, confidence: 0.99 })).toBe(5);
    expect(toBuy(5, { chance: 0, confidence: 0.5 })).toBeNull();
  });
  test('of two, by hand', () => {
    expect(enough(1, 2, 0.7)).toBeCloseTo(1 - 0.3 ** 2, 12);
    expect(enough(3, 2, 0.7)).toBe(0);
    expect(enough(200, 400, 0.5)).toBeCloseTo(0.5199, 3);
  });
});

describe('a seat that leans', () => {
  test.for([
    [0, Math.SQRT1_2],
    [1, 0.9103],
    [2, 0.9902],
    [3, 0.748],
  ] as const)('errors of .5° each, ±3°, lean %d°: %f', ([wedge, want]) => {
    const law = { kind: 'rice', sigma: 0.5, wedge } as const;
    expect(channelChance(law, { yaw: 0.5, tilt: 0.5 }, reach(3))).toBeCloseTo(want, 3);
  });
  test('the best is found, and none is taken where none helps', () => {
    const best = bestWedge({ sigma: 0.5, mounting: { yaw: 0.5, tilt: 0.5 }, reach: reach(3), step: 0.5, most: 3 });
    expect(best.without).toBeCloseTo(Math.SQRT1_2, 4);
    expect(best.wedge).toBeGreaterThanOrEqual(1.5);
    expect(best.chance).toBeGreaterThan(0.98);
    const none = bestWedge({ sigma: 1, mounting: { yaw: 0.1, tilt: 0.1 }, reach: reach(4, 0.5), step: 0.5, most: 3 });
    expect(none.wedge).toBe(0);
  });
  test('the tabled tail of Rice’s law: above the lean itself (1 + e^−a² I0(a²)) / 2 of all, a = lean / σ', () => {
    // e^−x I0(x) at 1 and at 4: 0.4657596, 0.2070019 (Abramowitz & Stegun, table 9.8).
    expect(leanedTail(1.5, 1.5)(1.5)).toBeCloseTo((1 + 0.4657596) / 2, 4);
    expect(leanedTail(0.25, 0.5)(0.5)).toBeCloseTo((1 + 0.2070019) / 2, 4);
    expect(leanedTail(0.8, 0)(1)).toBeCloseTo(Math.exp(-0.78125), 12);
    for (const at of [0.02, 0.3, 3.7, 3.95, 4, 4.1, 4.6])
      expect(leanedTail(0.1, 4)(at)).toBeCloseTo(exceeds({ kind: 'rice', sigma: 0.1, wedge: 4 }, at), 4);
  });
  test('a barrel truer than can be, leaned by two of its mount’s σ, undoes 95.45 % of its yaws', () => {
    // Two-sided normal table at z = 2, and at z = 1: 0.68269.
    const chance = (wedge: number) =>
      leanedChance({ sigma: 0.004, wedge }, { yaw: 0.8, tilt: 0.8, points: 6 }, reach(9));
    expect(chance(1.6)).toBeCloseTo(0.9545, 4);
    expect(chance(0.8)).toBeCloseTo(0.68269, 4);
  });
  test('tilt that a lean asks for: without one Rayleigh’s, with one as true as the mount is, all of it', () => {
    expect(tiltForLeaned(0.99, { sigma: 1, wedge: 0, sm: 0.5 })).toBeCloseTo(tiltFor(0.99, { se: 1, sm: 0.5 }), 3);
    // Mount and barrel without error: what leans by 2° is tilted by 2°.
    expect(tiltForLeaned(0.99, { sigma: 0.001, wedge: 2, sm: 0.002 })).toBeCloseTo(2, 2);
    // Drawn: yaw rolled out where the error is as large, then the smaller of the two tilts that are left.
    const [sigma, wedge, sm] = [0.2, 1.5, 0.8];
    const tilt = tiltForLeaned(0.99, { sigma, wedge, sm });
    const next = random(31);
    let [rolled, tilted] = [0, 0];
    for (let i = 0; i < 200_000; i += 1) {
      const [[a, b], [c, d]] = [normals(next), normals(next)];
      const [error, mx, my] = [Math.hypot(wedge + sigma * a, sigma * b), sm * c, sm * d];
      if (Math.abs(mx) > error) continue;
      rolled += 1;
      if (Math.abs(Math.abs(my) - Math.sqrt(error ** 2 - mx ** 2)) <= tilt) tilted += 1;
    }
    // Four standard errors: 4 √(0.99 · 0.01 / 187 000).
    expect(Math.abs(tilted / rolled - 0.99)).toBeLessThan(0.00092);
  });
  test('laws: half of the Rayleigh errors exceed σ √(2 ln 2), a third of the half-normal ones σ', () => {
    expect(exceeds({ kind: 'rayleigh', sigma: 2 }, 2 * Math.sqrt(2 * Math.LN2))).toBeCloseTo(0.5, 12);
    expect(exceeds({ kind: 'half-normal', sigma: 2 }, 2)).toBeCloseTo(0.3173105, 7);
    expect(exceeds({ kind: 'rice', sigma: 1, wedge: 0 }, 1.5)).toBeCloseTo(Math.exp(-1.125), 10);
  });
});
